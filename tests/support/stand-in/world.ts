import type { APIApplicationCommand, APIUser } from 'discord.js';
import type { Problem } from '../payload-judge/problem.ts';
import { type Clock, snowflakes } from './clock.ts';
import type { Fault } from './faults.ts';
import { apiUser, type Channel, type Guild } from './fixtures.ts';
import type { Interaction } from './interactions.ts';
import type { StoredFile, StoredMessage } from './messages.ts';
import { type Signal, signal } from './signal.ts';

/** One request of the bot, as it is kept for a test to read. */
export interface Logged {
  readonly method: string;
  /** Without prefix, version and query. */
  readonly path: string;
  readonly query: string;
  readonly body: unknown;
  readonly files: readonly { readonly field: string; readonly name: string; readonly size: number }[];
  readonly problems: readonly Problem[];
  /** What was answered; 0 while it is not. */
  readonly status: number;
  /** When it came, by the stand-in's clock. */
  readonly at: number;
}

/** One time the bot told the platform its commands. */
export interface Registration {
  /** A server's id, or `global`. */
  readonly scope: string;
  readonly commands: readonly APIApplicationCommand[];
}

/** Everything the stand-in knows. */
export interface World {
  readonly clock: Clock;
  readonly nextId: () => string;
  readonly signal: Signal;
  readonly bot: APIUser;
  readonly token: string;
  readonly judging: boolean;
  readonly fileLimit: number;
  readonly shards: number;
  readonly guilds: Map<string, Guild>;
  readonly channels: Map<string, Channel>;
  readonly users: Map<string, APIUser>;
  readonly messages: Map<string, StoredMessage>;
  readonly files: Map<string, StoredFile>;
  /** The paths of the files that were fetched, oldest first. */
  readonly fetched: string[];
  /** By id and by token. */
  readonly interactions: Map<string, Interaction>;
  readonly interactionsByToken: Map<string, Interaction>;
  /** By scope, the newest registration. */
  readonly commands: Map<string, readonly APIApplicationCommand[]>;
  readonly registrations: Registration[];
  readonly requests: Logged[];
  readonly violations: string[];
  readonly faults: Fault[];
  /** What the bot lacks in a channel, by channel id. */
  readonly withheld: Map<string, ReadonlySet<string>>;
  /** `http://127.0.0.1:<port>`; known once the stand-in listens. */
  origin: string;
  /** Tells the bot something over the gateway. */
  dispatch: (event: string, data: unknown, guildId?: string) => void;
}

export interface WorldOptions {
  readonly clock: Clock;
  readonly judging: boolean;
  readonly fileLimit: number;
  readonly shards: number;
  readonly token: string | undefined;
}

export function emptyWorld({ clock, judging, fileLimit, shards, token }: WorldOptions): World {
  const nextId = snowflakes(clock);
  const botId = nextId();
  const bot = apiUser(botId, 'bot', true);
  return {
    clock,
    nextId,
    signal: signal(),
    bot,
    // Shaped as the platform's: the id of the bot, then two parts nobody can guess. These two anybody can.
    token: token ?? `${Buffer.from(botId).toString('base64url')}.stand-in.not-a-secret`,
    judging,
    fileLimit,
    shards,
    guilds: new Map(),
    channels: new Map(),
    users: new Map([[botId, bot]]),
    messages: new Map(),
    files: new Map(),
    fetched: [],
    interactions: new Map(),
    interactionsByToken: new Map(),
    commands: new Map(),
    registrations: [],
    requests: [],
    violations: [],
    faults: [],
    withheld: new Map(),
    origin: '',
    dispatch: () => undefined,
  };
}
