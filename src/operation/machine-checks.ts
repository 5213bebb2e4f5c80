import { existsSync, statfsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { type Check, fix, good, note } from './check.ts';

/** What the machine says of itself; handed in so that every answer can be tried. */
export interface Machine {
  /** As Node says it, without the "v". */
  readonly node: string;
  /** The time zone asked for, if one is. */
  readonly zoneAsked: string | undefined;
  readonly zone: string;
}

export const thisMachine = (): Machine => ({
  node: process.versions.node,
  zoneAsked: process.env['TZ'],
  zone: new Intl.DateTimeFormat().resolvedOptions().timeZone,
});

/** Node's version against a range such as ">=20.19 <25". */
export function nodeCheck({ node }: Machine, range: string): Check {
  const [, least = '', below = ''] = /^>=(\S+) <(\S+)$/.exec(range) ?? [];
  const fits = compared(node, least) >= 0 && compared(node, below) < 0;
  return fits
    ? good('node', `Node ${node}.`)
    : fix('node', `Install Node ${least} or newer, below ${below}: this is ${node}.`);
}

function compared(version: string, other: string): number {
  const [ones, others] = [version, other].map((text) => text.split('.').map(Number));
  for (const [index, theirs] of (others ?? []).entries()) {
    const difference = (ones?.[index] ?? 0) - theirs;
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Days and times in records are the crew's own setting; the machine's zone is what logs are read by. */
export function zoneCheck({ zoneAsked, zone }: Machine): Check {
  if (zoneAsked && !isZone(zoneAsked)) {
    return fix('time zone', `Set TZ to a zone such as America/New_York: “${zoneAsked}” is none, so UTC is used.`);
  }
  return good('time zone', `The machine is in ${zone}. A crew sets its own with /crew set.`);
}

function isZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

const megabyte = 1024 * 1024;
/** Common practice, no source: enough for weeks of records and charts. */
const leastFree = 200 * megabyte;

/** Room on the disk the records are on. Writing the file anew after an erasing takes twice its size for a moment. */
export function diskCheck(database: string, free = freeBytes(database)): Check {
  const size = statSync(database, { throwIfNoEntry: false })?.size ?? 0;
  const wanted = leastFree + 3 * size;
  const has = `${Math.floor(free / megabyte)} MB free where the records are`;
  return free >= wanted
    ? good('disk', `${has}.`)
    : fix('disk', `Free some disk space: ${has}, and ${Math.ceil(wanted / megabyte)} MB are wanted.`);
}

function freeBytes(file: string): number {
  let folder = dirname(file);
  while (!existsSync(folder) && dirname(folder) !== folder) folder = dirname(folder);
  const { bavail, bsize } = statfsSync(folder);
  return bavail * bsize;
}

/** A file with the token or with people's names in it is nobody else's to read. */
export function secretsCheck(file: string, keeps = 'the token'): readonly Check[] {
  const mode = statSync(file, { throwIfNoEntry: false })?.mode;
  if (mode === undefined || process.platform === 'win32') return [];
  return (mode & 0o077) === 0
    ? [good('secrets', `${file} can be read by its owner alone.`)]
    : [note('secrets', `Keep ${keeps} to yourself: chmod 600 ${file}`)];
}
