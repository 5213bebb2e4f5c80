import { z } from 'zod';
import type { Reading } from '#interview/question.ts';
import { parsedSafely } from './json-file.ts';

/** What a job file calls itself, and the form it is written in. A change of form gets the next number. */
const format = 'fanwright-job';
const version = 1;

/** More of each than any job has. */
const most = { events: 1000, facts: 5000, walkEvents: 5000, photos: 2000 } as const;

const text = (longest: number) => z.string().max(longest);
const who = text(200).min(1);

/** An instant as the records write it, such as 2027-03-31T14:05:00.000Z. */
const instant = z.string().refine((said) => {
  const at = new Date(said);
  return !Number.isNaN(at.getTime()) && at.toISOString() === said && at.getUTCFullYear() >= 2000;
});

/** Anything JSON can hold, but something. */
const kept = z.unknown().refine((value): boolean => value !== undefined);

const how = z.enum(['measured', 'label', 'estimated', 'told', 'unknown']);

const standing = z.strictObject({
  name: text(200).nullable(),
  kinds: z.array(z.enum(['lead', 'apprentice', 'office'])).max(3),
  qualifications: z
    .array(
      z.strictObject({
        kind: z.enum(['electrically-qualified', 'licensed-electrician', 'certified-renovator', 'combustion-tester']),
        number: text(200),
        expires: text(40),
        lapsed: z.boolean(),
      }),
    )
    .max(20),
});

const jobFile = z.strictObject({
  format: z.literal(format),
  version: z.literal(version),
  job: z.strictObject({
    name: text(300).nullable(),
    state: z.enum(['open', 'closed']),
    openedAt: instant,
    openedBy: who,
    closedAt: instant.nullable(),
    closedBy: who.nullable(),
  }),
  /** What happened to the sheet as a whole, without the channels it lay open in. */
  events: z
    .array(
      z.strictObject({
        what: z.enum(['opened', 'renamed', 'closed', 'reopened', 'imported']),
        detail: text(300).nullable(),
        who,
        at: instant,
      }),
    )
    .max(most.events),
  facts: z
    .array(
      z.strictObject({
        fact: z.string().regex(/^[a-z0-9-]{1,80}$/),
        // What is typed is read anew at every look at the job, so a long text would keep everybody waiting each time.
        typed: text(1000),
        units: z.enum(['inch-pound', 'metric']),
        value: kept,
        how,
        who,
        at: instant,
        enteredAt: instant,
        retracted: z.strictObject({ who, at: instant }).nullable(),
      }),
    )
    .max(most.facts),
  walkEvents: z
    .array(
      z.strictObject({
        id: text(200).min(1),
        list: text(120).min(1),
        step: text(300).nullable(),
        what: text(40).min(1),
        value: kept,
        who,
        standing,
        at: instant,
        enteredAt: instant,
      }),
    )
    .max(most.walkEvents),
  photos: z
    .array(
      z.strictObject({
        list: text(120).min(1),
        step: text(300).nullable(),
        message: text(1000).min(1),
        checksum: text(200),
        size: z.int().nonnegative(),
        who,
        at: instant,
      }),
    )
    .max(most.photos),
});

/** A job as it travels from one crew to another. */
export type JobFile = z.output<typeof jobFile>;

export const jobFileHead = { format, version } as const;

const oneDay = 24 * 60 * 60 * 1000;

/**
 * A job file as it was typed in or handed over, or why it will not do in one sentence. Whatever is in it, nothing is done
 * with it here.
 *
 * @param now This moment: a file that speaks of days to come is refused.
 */
export function readJobFile(given: string, now: Date): Reading<JobFile> {
  const parsed = parsedSafely(given);
  if ('rejected' in parsed) return parsed;
  const head = z.looseObject({ format: z.literal(format), version: z.number() }).safeParse(parsed.value);
  if (!head.success) return { rejected: 'This is no job file. /job export makes one.' };
  if (head.data.version !== version) {
    return { rejected: `This job file is of form ${head.data.version}, and only form ${version} can be read here.` };
  }
  const file = jobFile.safeParse(parsed.value);
  if (!file.success) return { rejected: troubleAt(file.error.issues[0]) };
  const trouble = contradictionIn(file.data, now);
  return trouble === undefined ? { value: file.data } : { rejected: trouble };
}

/** "In walkEvents, entry 3, standing: something is missing, unknown or of the wrong kind." */
function troubleAt(issue: z.core.$ZodIssue | undefined): string {
  const place = (issue?.path ?? []).map((part) => (typeof part === 'number' ? `entry ${part + 1}` : String(part)));
  const where = place.length === 0 ? 'At its top' : `In ${place.join(', ')}`;
  return `${where}, something is missing, unknown or of the wrong kind.`;
}

/** What each field may say alone and the file may not say as a whole. */
function contradictionIn({ job, events, facts, walkEvents, photos }: JobFile, now: Date): string | undefined {
  const ids = walkEvents.map(({ id }) => id);
  if (new Set(ids).size < ids.length) return 'Two things in walkEvents have the same id.';
  const sent = photos.map(({ list, step, message, checksum }) => JSON.stringify([list, step ?? '', message, checksum]));
  if (new Set(sent).size < sent.length) return 'The same photo is in it twice on one step.';
  const isClosed = job.state === 'closed';
  if (isClosed !== (job.closedAt !== null) || isClosed !== (job.closedBy !== null)) {
    return 'It does not say the same in all places of whether the job is closed.';
  }
  if (job.closedAt !== null && job.closedAt < job.openedAt) return 'The job is closed before it is opened.';
  const moments = [
    job,
    ...events,
    ...facts,
    ...facts.flatMap(({ retracted }) => retracted ?? []),
    ...walkEvents,
    ...photos,
  ].flatMap((each) =>
    ['at', 'enteredAt', 'openedAt', 'closedAt'].map((key) => (each as Readonly<Record<string, unknown>>)[key]),
  );
  const latest = new Date(now.getTime() + oneDay).toISOString();
  return moments.some((moment) => typeof moment === 'string' && moment > latest)
    ? 'It speaks of a day that is still to come.'
    : undefined;
}
