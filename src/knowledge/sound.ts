import { z } from 'zod';
import { toSi } from '#quantity/unit-factors.ts';
import { cubicMetresPerSecond, metres, metresPerSecond, pascals, sones } from '#quantity/units.ts';
import soundFile from '../../knowledge/airflow/sound.json' with { type: 'json' };
import { checked } from './checked.ts';
import { cited } from './duct-measures.ts';
import { printedValue } from './figure.ts';
import { citationFields } from './sources.ts';

const loudness = printedValue('sone', sones);

const citedRange = <Q extends number>(si: string, make: (value: number) => Q) =>
  z
    .strictObject({ low: z.number(), typical: z.number(), high: z.number(), unit: z.string(), ...citationFields })
    .refine(({ low, typical, high }) => low <= typical && typical <= high, 'low, typical and high must rise')
    .transform(({ low, typical, high, unit, ...entry }) => {
      const at = (value: number) => make(toSi(value, unit, si));
      return { estimate: { low: at(low), typical: at(typical), high: at(high) }, ...cited(entry) };
    });

const decibels = citedRange('dB', (value) => value);

const sound = checked(
  'knowledge/airflow/sound.json',
  z.strictObject({
    limits: z
      .strictObject({
        continuous: loudness,
        demand: loudness,
        exemptFrom: printedValue('m^3/s', cubicMetresPerSecond),
        remoteDuct: printedValue('m', metres),
        ...citationFields,
      })
      .transform(cited),
    ratedAt: z
      .strictObject({ value: z.number(), unit: z.string(), ...citationFields })
      .transform(({ value, unit, ...entry }) => ({ pressure: pascals(toSi(value, unit, 'Pa')), ...cited(entry) })),
    meter: z
      .strictObject({
        atOneSone: z.number(),
        perDecade: z.number(),
        accuracy: z.number(),
        leastSones: z.number().transform(sones),
        ...citationFields,
      })
      .transform(cited),
    allowances: z.strictObject({
      asInstalled: decibels,
      perPressureDecade: decibels,
      airNoiseFrom: citedRange('m/s', metresPerSecond),
      perVelocityDecade: decibels,
    }),
  }),
  soundFile,
);

/** The loudest a fan's rating may be, for continuous running and on demand, and which fans are exempt. */
export const soundLimits = sound.limits;

/** The static pressure at which sones are rated. */
export const soundRatedAt = sound.ratedAt;

/** The rule of thumb between sones and a sound meter, in the shape the engine takes, with its citation. */
export const meterRule = sound.meter;

/** What is taken about noise away from the rated point, with the citation of each. */
export const soundAllowances = sound.allowances;

/** The same as bare ranges, the shape the engine takes. */
export const soundAllowanceRanges = {
  asInstalled: sound.allowances.asInstalled.estimate,
  perPressureDecade: sound.allowances.perPressureDecade.estimate,
  airNoiseFrom: sound.allowances.airNoiseFrom.estimate,
  perVelocityDecade: sound.allowances.perVelocityDecade.estimate,
};

/** Where each of those ranges is from. */
export const soundAllowanceCitations = {
  asInstalled: sound.allowances.asInstalled.citation,
  perPressureDecade: sound.allowances.perPressureDecade.citation,
  perVelocityDecade: sound.allowances.perVelocityDecade.citation,
};
