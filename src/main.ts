import { systemUser } from '#chat/terminal/system-user.ts';
import { commands } from '#commands/index.ts';
import { type Report, upkeep } from '#operation/upkeep.ts';
import { openStore } from '#store/store.ts';
import { StoreTrouble } from '#store/trouble.ts';
import { languageTold } from '#words/language.ts';
import { operated } from './operating.ts';
import { backupPlanOf, settingsFrom } from './settings.ts';
import { StartTrouble } from './start-trouble.ts';

/** Picks Discord, the terminal or a single answer, opens the store and hands over the commands. */
async function main(words: readonly string[]): Promise<number> {
  const done = await operated(words, { commands, output: process.stdout });
  if (done !== undefined) return done;
  const settings = settingsFrom();
  const { told, rest } = languageTold(words);
  const language = told ?? settings.FANWRIGHT_LANGUAGE;
  const here = { commands, who: systemUser(), environment: process.env, language };
  if (rest.length > 0) {
    const { answerOnce } = await import('#chat/terminal/once.ts');
    return answerOnce(words, { ...here, settings, output: process.stdout });
  }
  const plan = backupPlanOf(settings);
  const store = openStore(settings.FANWRIGHT_DB);
  try {
    if (settings.DISCORD_TOKEN) {
      const { discord } = await import('#chat/discord/discord.ts');
      return await discord({ store, commands, plan, settings: { ...settings, DISCORD_TOKEN: settings.DISCORD_TOKEN } });
    }
    const { terminal } = await import('#chat/terminal/terminal.ts');
    const streams = { input: process.stdin, output: process.stdout };
    const care = upkeep({ store, plan, report: complain });
    return await terminal({ ...here, store: store.scoped('terminal') }, streams).finally(() => care.stop());
  } finally {
    store.close();
  }
}

/** In the terminal only what went wrong is told. */
const complain: Report = (level, what, { message = '' } = {}) => {
  if (level === 'error') process.stderr.write(`${what}: ${message}\n`);
};

// Whoever reads along may leave early, as `head` does; that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    const known = error instanceof StoreTrouble || error instanceof StartTrouble;
    const message = error instanceof Error ? error.message : String(error);
    process.stderr.write(`${known ? message : `Something of ours went wrong: ${message}`}\n`);
    process.exitCode = 1;
  },
);
