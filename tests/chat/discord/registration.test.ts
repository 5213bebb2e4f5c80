import { describe, expect, it, onTestFinished } from 'vitest';
import type { AnswerCommand } from '#chat/command.ts';
import { register } from '#chat/discord/register.ts';
import { registeredCommands } from '#chat/discord/registration.ts';
import { commands } from '#commands/index.ts';
import size from '#commands/size.ts';
import { StartTrouble } from '../../../src/start-trouble.ts';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { startBot } from './bot.ts';
import { quickly } from './stage.ts';

async function scene() {
  const standIn = await startStandIn();
  const bot = await startBot(standIn, { draw: quickly });
  onTestFinished(async () => {
    await bot.stop();
    await standIn.close();
    expect(standIn.violations).toEqual([]);
    expect(bot.logged).toEqual([]);
  });
  const again = (guild?: string, these = commands) =>
    register(bot.client, { store: bot.store, commands: these, guild, log: () => undefined });
  return { standIn, bot, again, guild: standIn.guild() };
}

describe('the commands are told to the platform', () => {
  it('once, and again only when they changed', async () => {
    const { standIn, again } = await scene();
    expect(standIn.registrations.map(({ scope }) => scope)).toEqual(['global']);
    await again();
    expect(standIn.registrations).toHaveLength(1);
    await again(undefined, commands.slice(1));
    expect(standIn.registrations).toHaveLength(2);
    expect(standIn.commands().map(({ name }) => name)).toEqual(commands.slice(1).map(({ name }) => name));
  });

  it('in one place: when the place changes they are taken away from the one before', async () => {
    const { standIn, again, guild } = await scene();
    await again(guild.id);
    expect(standIn.commands(guild)).toHaveLength(commands.length);
    expect(standIn.commands()).toEqual([]);
    await again(guild.id);
    expect(standIn.registrations).toHaveLength(3);
    await again();
    expect(standIn.commands(guild)).toEqual([]);
    expect(standIn.commands()).toHaveLength(commands.length);
  });

  it('never for a server the bot is not in', async () => {
    const { standIn, again } = await scene();
    await expect(again('123456789012345678')).rejects.toThrow(StartTrouble);
    expect(standIn.registrations).toHaveLength(1);
  });

  it('even where the place before can no longer be reached', async () => {
    const { standIn, again, guild } = await scene();
    await again(guild.id);
    standIn.removeGuild(guild);
    await again();
    expect(standIn.commands()).toHaveLength(commands.length);
  });
});

describe('each command', () => {
  it('is offered in servers only, to everybody there', () => {
    for (const command of registeredCommands(commands)) {
      expect(command).toMatchObject({ contexts: [0], integration_types: [0] });
      expect(command).not.toHaveProperty('default_member_permissions');
    }
  });

  it('takes each of its questions as an option, with what will do in its description', () => {
    const [told] = registeredCommands([size as AnswerCommand<unknown>]);
    const options = told && 'options' in told ? (told.options ?? []) : [];
    expect(options.map(({ name }) => name)).toEqual(size.takes.map(({ id }) => id));
    expect(options[0]?.description).toBe('Room length: a length, such as 8 ft 6 in or 2.6 m');
    const compartment = options.find(({ name }) => name === 'toilet-compartment');
    expect(compartment).toMatchObject({
      choices: [
        { name: 'Yes', value: 'yes' },
        { name: 'No', value: 'no' },
        { name: "Don't know", value: "don't know" },
      ],
    });
  });
});
