import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import type { Channel, Guild } from '../../support/stand-in/fixtures.ts';
import type { Person } from '../../support/stand-in/person.ts';
import type { Seen } from '../../support/stand-in/seen.ts';
import { type StandIn, type StandInOptions, startStandIn } from '../../support/stand-in/stand-in.ts';
import { photo } from '../../support/stand-in/uploads.ts';
import { listenForWarnings } from '../../support/stand-in/warnings.ts';
import { type Bot, type BotOptions, startBot } from './bot.ts';

/** A crew of its own for each test, so that no job sheet is shared. */
export interface Crew {
  readonly guild: Guild;
  readonly channel: Channel;
  readonly ann: Person;
  readonly ben: Person;
}

export interface Stage {
  readonly standIn: StandIn;
  readonly bot: Bot;
  crew(): Crew;
}

/** A chart drawn in no time, for tests that are about something else. */
export const quickly = async (): Promise<Uint8Array> => photo().bytes;

/**
 * The platform and the bot for the tests of one file. After each test nothing may have been sent that the platform would
 * not take, nothing logged as going wrong, and nothing warned of.
 */
export function stage(options: { readonly platform?: StandInOptions; readonly bot?: BotOptions } = {}): Stage {
  const warnings = listenForWarnings();
  let crews = 0;
  let standIn: StandIn;
  let bot: Bot;
  beforeAll(async () => {
    standIn = await startStandIn(options.platform);
    bot = await startBot(standIn, { draw: quickly, ...options.bot });
  });
  afterEach(() => {
    expect(standIn.violations).toEqual([]);
    expect(bot.logged).toEqual([]);
    expect(warnings.said).toEqual([]);
  });
  afterAll(async () => {
    await bot.stop();
    await standIn.close();
    warnings.stop();
  });
  return {
    get standIn() {
      return standIn;
    },
    get bot() {
      return bot;
    },
    crew() {
      crews += 1;
      const guild = standIn.addGuild({ name: `Crew ${crews}`, channels: ['general', 'jobs'] });
      const channel = standIn.channel('general', guild);
      return {
        guild,
        channel,
        ann: standIn.user({ name: 'Ann', guild, channel }),
        ben: standIn.user({ name: 'Ben', guild, channel }),
      };
    },
  };
}

/** The one form a message's button opens, filled in and sent. */
export async function answer(person: Person, message: Seen, values: Readonly<Record<string, string>>): Promise<Seen> {
  const button = message.buttons.find(({ label }) => label === 'Answer' || label === 'Type it');
  const form = await person.pressExpectingForm(message, button?.label ?? 'Answer');
  return person.submit(form, values);
}

export const labels = ({ buttons }: Seen): readonly string[] => buttons.map(({ label }) => label);

/** The question a message asks: its line in bold. */
export const question = ({ content }: Seen): string =>
  content
    .split('\n')
    .filter((line) => line.startsWith('**'))
    .join('\n');
