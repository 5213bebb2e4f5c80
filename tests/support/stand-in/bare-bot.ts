/**
 * The least a bot can be: it registers nothing and answers every slash command with the same line. Benchmarks measure
 * it beside the real one, to tell the cost of the chat library from the cost of the work.
 */
import { env } from 'node:process';
import { Client, Events, GatewayIntentBits } from 'discord.js';

const { DISCORD_API_BASE: api, DISCORD_TOKEN: token } = env;
const client = new Client({
  intents: [GatewayIntentBits.Guilds],
  allowedMentions: { parse: [] },
  ...(api === undefined ? {} : { rest: { api } }),
});

client.on(Events.InteractionCreate, (interaction) => {
  if (!interaction.isChatInputCommand()) return;
  interaction.reply('Here.').catch((error: unknown) => client.emit('error', error as Error));
});
client.on(Events.Error, ({ message }) => process.stderr.write(`${message}\n`));
process.on('SIGTERM', () => client.destroy().finally(() => process.exit()));

await client.login(token);
