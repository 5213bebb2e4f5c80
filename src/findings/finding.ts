import type { Citation } from '#knowledge/sources.ts';

/** How much a finding matters. `stop` always comes first and means: do not go on. */
export type Weight = 'good' | 'advice' | 'caution' | 'stop';

/** One line of working, so that a person with a calculator can follow it to the printed number. */
export interface Step {
  /** What this line works out: "Velocity in the 4 in duct". */
  readonly what: string;
  /** The sum with its numbers in it: "73 cfm ÷ 0.0873 sq ft". Absent for a value that was given or looked up. */
  readonly how?: string;
  /** The result with its unit: "836 fpm". */
  readonly value: string;
  readonly source?: Citation;
}

/** A result in SI (cubic inches for box fill), with the likely band, and as a person reads it. */
export interface Value {
  /** `null` where the honest answer is that there is no number, as for a duct that stays dry. */
  readonly number: number | null;
  readonly unit: string;
  readonly low?: number;
  readonly high?: number;
  readonly shown: string;
}

export interface Table {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Its cells repeat what people typed, so no number in it is said in other units. */
  readonly asTyped?: true;
}

/**
 * One thing we tell a person. `says` is one plain sentence, verb first when something must be done.
 */
export interface Finding {
  readonly id: string;
  readonly weight: Weight;
  readonly says: string;
  readonly value?: Value;
  readonly working: readonly Step[];
  readonly sources: readonly Citation[];
  readonly table?: Table;
  /** Callback findings only: the cause meant, by its id in knowledge/causes. */
  readonly cause?: string;
  /** The next check only: what to look for, by its id in knowledge/causes/findings.json. */
  readonly check?: string;
}
