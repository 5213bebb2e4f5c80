import { z } from 'zod';
import type { Estimate } from '#quantity/estimate.ts';
import { toSi } from '#quantity/unit-factors.ts';
import { type Citation, citationFields, cite } from './sources.ts';

/** A low, typical and high value for something nobody measured, with the reason and where the values come from. */
export interface Default<Q extends number = number> {
  readonly name: string;
  readonly estimate: Estimate<Q>;
  readonly reason: string;
  readonly citation: Citation;
  readonly note?: string;
}

/** One number a calculation uses, in SI. */
export interface Figure<Q extends number = number> {
  readonly name: string;
  readonly value: Q;
  readonly citation: Citation;
  readonly note?: string;
}

/** A figure for looking up, in the unit its source prints: one value, or a low and a high. */
export interface PrintedFigure {
  readonly name: string;
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly unit: string;
  readonly citation: Citation;
  readonly note?: string;
}

/** A sentence for people, own words, with what it rests on. */
export interface CitedSentence {
  readonly says: string;
  readonly citation: Citation;
  readonly note?: string;
}

const noteOf = ({ note }: { note?: string | undefined }) => (note === undefined ? {} : { note });

/** The number in SI; a percentage becomes a share. */
const inSi = (value: number, unit: string, si: string): number => toSi(value, unit === '%' ? '0.01' : unit, si);

const amountSchema = z
  .strictObject({ low: z.number(), typical: z.number(), high: z.number(), unit: z.string() })
  .refine(({ low, typical, high }) => low <= typical && typical <= high, 'low, typical and high must be in that order');

/** The schema of an airflow, length or the like with a low, typical and high value, read into SI. */
export const amount = <Q extends number>(si: string, make: (value: number) => Q) =>
  amountSchema.transform(
    ({ low, typical, high, unit }): Estimate<Q> => ({
      low: make(inSi(low, unit, si)),
      typical: make(inSi(typical, unit, si)),
      high: make(inSi(high, unit, si)),
    }),
  );

/** The schema of a printed value with its unit, read into SI. */
export const printedValue = <Q extends number>(si: string, make: (value: number) => Q) =>
  z.strictObject({ value: z.number(), unit: z.string() }).transform(({ value, unit }) => make(inSi(value, unit, si)));

/** The schema of a `Default` read into SI. */
export const assumed = <Q extends number>(si: string, make: (value: number) => Q) =>
  z
    .strictObject({ name: z.string(), amount: amount(si, make), reason: z.string().min(1), ...citationFields })
    .transform(
      (entry): Default<Q> => ({
        name: entry.name,
        estimate: entry.amount,
        reason: entry.reason,
        citation: cite(entry),
        ...noteOf(entry),
      }),
    );

/** The schema of a `Figure` read into SI. */
export const figure = <Q extends number>(si: string, make: (value: number) => Q) =>
  z.strictObject({ name: z.string(), value: z.number(), unit: z.string(), ...citationFields }).transform(
    (entry): Figure<Q> => ({
      name: entry.name,
      value: make(inSi(entry.value, entry.unit, si)),
      citation: cite(entry),
      ...noteOf(entry),
    }),
  );

const oneOrTwo = { value: z.number().optional(), low: z.number().optional(), high: z.number().optional() };

/** The schema of a table of figures for looking up, as printed. */
export const printedFigures = z.record(
  z.string(),
  z
    .strictObject({ name: z.string().min(1), ...oneOrTwo, unit: z.string(), ...citationFields })
    .refine(
      ({ value, low, high }) =>
        value === undefined ? low !== undefined && high !== undefined && low <= high : (low ?? high) === undefined,
      'give one value, or a low and a high',
    )
    .transform(
      ({ name, value, low, high, unit, ...entry }): PrintedFigure => ({
        name,
        ...(value === undefined ? {} : { value }),
        ...(low === undefined ? {} : { low }),
        ...(high === undefined ? {} : { high }),
        unit,
        citation: cite(entry),
        ...noteOf(entry),
      }),
    ),
);

/** The schema of one sentence for people. */
export const sentence = z
  .strictObject({ says: z.string().endsWith('.'), ...citationFields })
  .transform((entry): CitedSentence => ({ says: entry.says, citation: cite(entry), ...noteOf(entry) }));

/** The schema of a table of methods: which publication a calculation follows. */
export const method = z
  .strictObject({ name: z.string().min(1), ...citationFields })
  .transform((entry): { readonly name: string; readonly citation: Citation; readonly note?: string } => ({
    name: entry.name,
    citation: cite(entry),
    ...noteOf(entry),
  }));
