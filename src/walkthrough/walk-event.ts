/** What can happen on a walk-through. */
export const happenings = [
  'done',
  'signed',
  'overridden',
  'undone',
  'photo',
  'photo-back',
  'noted',
  'fact',
  'paused',
  'resumed',
  'joined',
  'left',
  'box',
] as const;

/** What somebody is in the crew, and qualified for, at the moment of an event. A stranger is nothing and may do nothing. */
export interface Standing {
  readonly name: string | null;
  readonly kinds: readonly string[];
  readonly qualifications: readonly {
    readonly kind: string;
    /** Of the licence, the certificate or the training record. Empty: not known, and so it does not count. */
    readonly number: string;
    /** The last day it holds, such as 2027-03-31. Anything else: not known, and so it does not count. */
    readonly expires: string;
    readonly lapsed: boolean;
  }[];
}

/** Something that happened on a walk-through, as it is kept. Events are appended, never changed; undoing is an event too. */
export interface WalkEvent {
  /** One for each thing that happened: reported twice, it happens once. */
  readonly id: string;
  /** Id of a step on the list, such as `sign-dead@fan`; `null` for what happens to the list as a whole. */
  readonly step: string | null;
  readonly what: string;
  /** Depends on `what`, see `values` in this file. Anything else is refused, never believed. */
  readonly value: unknown;
  readonly who: string;
  readonly standing: Standing;
  /** When it was so. */
  readonly at: string;
  /** When it was entered: later than `at` for what was done where there is no signal. */
  readonly enteredAt: string;
}

/**
 * An answer to a step: for each part of its evidence the id of a choice, a number in the part's SI unit, `true` for a tick,
 * where a photo lies, or words. A tester proof is `proving-unit` or the volts of the live point.
 */
export type StepValue = Readonly<Record<string, string | number | boolean>>;

/** A box that is opened on the job. */
export interface Box<Kind extends string = string> {
  readonly id: string;
  readonly kind: Kind;
  /** As the crew calls it: "switch by the door". */
  readonly name: string;
}

/** Somebody at work on the site. */
export interface Person {
  readonly who: string;
  readonly name: string;
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value of `done` and `signed`; `null` where it is none. Nothing at all stands for an answer without parts. */
export function stepValue(value: unknown): StepValue | null {
  if (value === null || value === undefined) return {};
  if (!isObject(value)) return null;
  const sound = Object.values(value).every(
    (part) =>
      typeof part === 'string' || typeof part === 'boolean' || (typeof part === 'number' && Number.isFinite(part)),
  );
  return sound ? (value as StepValue) : null;
}

/** A field of a value that has to be words. */
export function words(value: unknown, field: string): string | null {
  const said = isObject(value) ? value[field] : value;
  return typeof said === 'string' && said.trim() !== '' ? said.trim() : null;
}

/** The name somebody is shown by. */
export const nameOf = ({ who, standing }: Pick<WalkEvent, 'who' | 'standing'>): string => standing.name ?? who;
