import { z } from 'zod';
import { toSi } from '#quantity/unit-factors.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, pascals, ratio, type Sones, sones } from '#quantity/units.ts';
import efficacyFile from '../../knowledge/airflow/fan-efficacy.json' with { type: 'json' };
import shapesFile from '../../knowledge/airflow/fan-shapes.json' with { type: 'json' };
import { checked } from './checked.ts';
import { cited } from './duct-measures.ts';
import { amount, printedValue } from './figure.ts';
import { citationFields, cite } from './sources.ts';

/** Kinds of fan a crew can tell apart, from the weakest to one that holds its airflow. */
export type FanKindId = keyof typeof shapesFile.kinds;

const shares = amount('1', ratio);
const pressure = printedValue('Pa', pascals);

const shapes = checked(
  'knowledge/airflow/fan-shapes.json',
  z.strictObject({
    rating: z.strictObject({ low: pressure, high: pressure, ...citationFields }).transform(cited),
    bow: z.strictObject({ value: z.number().positive(), ...citationFields }).transform(cited),
    kinds: z.record(
      z.string(),
      z
        .strictObject({
          name: z.string().min(1),
          strength: shares,
          reach: shares,
          longestTail: pressure,
          droop: shares,
          ...citationFields,
        })
        .transform(cited),
    ),
    heldTo: z
      .strictObject({ low: z.number(), typical: z.number(), high: z.number(), unit: z.string(), ...citationFields })
      .transform(({ low, typical, high, unit, ...entry }) => {
        const at = (value: number) => pascals(toSi(value, unit, 'Pa'));
        return { estimate: { low: at(low), typical: at(typical), high: at(high) }, ...cited(entry) };
      }),
  }),
  shapesFile,
);

const same = <Q extends number>(value: Q) => ({ low: value, typical: value, high: value });

const kindOf = ({ name, strength, reach, longestTail, droop, citation, note }: (typeof shapes.kinds)[string]) => ({
  name,
  /** The guesses about its curve, in the shape the engine takes. */
  shape: {
    bow: same(ratio(shapes.bow.value)),
    reach,
    longestTail: same(longestTail),
    strength,
    droop,
    strengthFrom: shapes.rating.low,
    strengthTo: shapes.rating.high,
  },
  citation,
  ...(note === undefined ? {} : { note }),
});

/** What each kind of fan's curve is taken to look like where the label is silent. */
export const fanKinds = Object.fromEntries(
  Object.entries(shapes.kinds).map(([id, kind]) => [id, kindOf(kind)]),
) as Readonly<Record<FanKindId, ReturnType<typeof kindOf>>>;

/** The two static pressures bath fans are rated at; the carton number is the airflow at the lower one. */
export const ratingPressures = shapes.rating;

/** How far a constant-flow fan holds its airflow when the label does not say. */
export const usualHeldTo = shapes.heldTo;

/** Codes and programmes that ask for airflow by the watt. */
export type EfficacyEditionId = keyof typeof efficacyFile.editions;

/** Airflows up to and not including this; a limit without it has no upper end. */
const below = z
  .number()
  .optional()
  .transform(
    (cfm): CubicMetresPerSecond =>
      cubicMetresPerSecond(cfm === undefined ? Number.POSITIVE_INFINITY : toSi(cfm, 'cfm', 'm^3/s')),
  );

/** The least efficacy, printed in cfm per watt, read into m³/s per watt. */
const limits = z.array(
  z.strictObject({ below, least: z.number().transform((cfmPerWatt) => toSi(cfmPerWatt, 'cfm/W', 'm^3/s/W')) }),
);

const edition = z
  .strictObject({
    name: z.string().min(1),
    bath: limits,
    inLine: limits,
    rangeHood: limits,
    heatRecovery: limits.optional(),
    airHandler: limits.optional(),
    sones: z.array(z.strictObject({ below, most: z.number().transform((value): Sones => sones(value)) })).optional(),
    airflowKept: z
      .array(z.strictObject({ below, least: z.number().transform((percent) => ratio(percent / 100)) }))
      .optional(),
    ...citationFields,
  })
  .transform(cited);

const efficacy = checked(
  'knowledge/airflow/fan-efficacy.json',
  z.strictObject({
    judgedAt: z.strictObject({ bath: pressure, inLine: pressure, ...citationFields }),
    editions: z.record(z.string(), edition),
  }),
  efficacyFile,
);

/** How much air a fan must move for each watt, how quiet it must be and how much it must keep, by code or programme. */
export const fanEfficacyEditions = efficacy.editions as Readonly<Record<EfficacyEditionId, z.output<typeof edition>>>;

/** The static pressure at which efficacy is judged, at least. */
export const efficacyJudgedAt = {
  bath: efficacy.judgedAt.bath,
  inLine: efficacy.judgedAt.inLine,
  citation: cite(efficacy.judgedAt),
};
