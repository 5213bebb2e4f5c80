import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { backupsIn } from './backups.ts';
import { type Every, everyByTheClock, type Report } from './upkeep.ts';

/** How a connection to the platform is. */
export interface ShardHealth {
  readonly id: number;
  readonly ready: boolean;
  /** When the platform last answered a heartbeat; `null` before the first. */
  readonly lastHeartbeat: string | null;
}

/** How the program is, as it says so itself. */
export interface Vitals {
  /** `away` while a connection is being made anew. */
  readonly state: 'starting' | 'ready' | 'away';
  readonly servers: number;
  readonly shards: readonly ShardHealth[];
}

/** What stands in the health file. */
export interface Health extends Omit<Vitals, 'state'> {
  readonly state: Vitals['state'] | 'ended';
  /** When this was written. */
  readonly at: string;
  readonly since: string;
  /** When the state last was `ready`; `null` when it never was. */
  readonly lastReady: string | null;
  readonly pid: number;
  readonly version: string;
  readonly lastBackup: string | null;
}

/** Milliseconds between two writings. */
const between = 15_000;
/** A file older than this was not written by a program that is well. */
const oldest = 60_000;
/** So long the platform may be out of reach before a fresh start is worth trying; starting again mends no outage. */
const longestAway = 15 * 60_000;

interface Given {
  readonly file: string;
  readonly version: string;
  readonly backups: string;
  readonly look: () => Vitals;
  readonly report: Report;
  readonly now?: () => Date;
  readonly every?: Every;
}

/** Writes down every few seconds how the program is, for whoever watches over it. */
export function healthFile({ file, version, backups, look, report, ...rest }: Given) {
  const { now = () => new Date(), every = everyByTheClock } = rest;
  const since = now().toISOString();
  let lastReady: string | null = null;
  let failed = false;

  const write = (state?: 'ended'): void => {
    const vitals = look();
    const at = now().toISOString();
    if (vitals.state === 'ready') lastReady = at;
    const lastBackup = backupsIn(backups)[0]?.at.toISOString() ?? null;
    const health: Health = {
      ...vitals,
      state: state ?? vitals.state,
      at,
      since,
      lastReady,
      pid: process.pid,
      version,
      lastBackup,
    };
    try {
      // In one move, so that nobody ever reads half of it.
      writeFileSync(`${file}.part`, `${JSON.stringify(health)}\n`);
      renameSync(`${file}.part`, file);
      failed = false;
    } catch (error) {
      rmSync(`${file}.part`, { force: true });
      if (!failed) report('error', 'the health file cannot be written', { file, message: String(error) });
      failed = true;
    }
  };

  write();
  const stop = every(between, write);
  return {
    /** Writes at once, where something has changed. */
    write: () => write(),
    end(): void {
      stop();
      write('ended');
    },
  };
}

/** Whether the program is well, in a sentence. */
export function wellness(file: string, now: Date): { readonly well: boolean; readonly says: string } {
  const health = readHealth(file);
  if (health === undefined) {
    return { well: false, says: `There is no health file at ${file}, so start the program and look again.` };
  }
  const age = (since: string) => now.getTime() - Date.parse(since);
  const seconds = Math.round(age(health.at) / 1000);
  if (health.state === 'ended') return { well: false, says: `The program ended at ${health.at}, so start it again.` };
  if (age(health.at) > oldest) {
    return { well: false, says: `Nothing was heard of the program for ${seconds} seconds, so start it again.` };
  }
  if (health.state !== 'ready' && age(health.lastReady ?? health.since) > longestAway) {
    const says = `The program has not reached Discord since ${health.lastReady ?? health.since}, so check the network and start it again.`;
    return { well: false, says };
  }
  return { well: true, says: `The program is ${health.state}: process ${health.pid}, ${health.servers} servers.` };
}

function readHealth(file: string): Health | undefined {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as Health;
  } catch {
    return undefined;
  }
}
