import { z } from 'zod';
import { toSi } from '#quantity/unit-factors.ts';
import { pascals, ratio, seconds } from '#quantity/units.ts';
import fieldFile from '../../knowledge/airflow/field-methods.json' with { type: 'json' };
import { checked } from './checked.ts';
import { cited } from './duct-measures.ts';
import { printedValue } from './figure.ts';
import { citationFields } from './sources.ts';

const citedValue = <Q extends number>(si: string, make: (value: number) => Q) =>
  z
    .strictObject({ value: z.number(), unit: z.string(), ...citationFields })
    .transform(({ value, unit, ...entry }) => ({ value: make(percent(value, unit, si)), ...cited(entry) }));

const citedShareRange = z
  .strictObject({ low: z.number(), typical: z.number(), high: z.number(), unit: z.literal('%'), ...citationFields })
  .refine(({ low, typical, high }) => low <= typical && typical <= high, 'low, typical and high must rise')
  .transform(({ low, typical, high, unit, ...entry }) => {
    const at = (value: number) => ratio(percent(value, unit, '1'));
    return { estimate: { low: at(low), typical: at(typical), high: at(high) }, ...cited(entry) };
  });

const count = z.strictObject({ value: z.int(), ...citationFields }).transform(cited);

const percent = (value: number, unit: string, si: string): number => toSi(value, unit === '%' ? '0.01' : unit, si);

const share = citedValue('1', ratio);
const time = citedValue('s', seconds);

const field = checked(
  'knowledge/airflow/field-methods.json',
  z.strictObject({
    bag: z.strictObject({
      reaction: time,
      shortestTime: time,
      fewestReadings: count,
      widestSpread: share,
      fullness: citedShareRange,
      emptyingDelay: time,
    }),
    box: z.strictObject({
      constant: citedValue('m/s', (value) => value),
      pressure: z
        .strictObject({ low: z.number(), high: z.number(), unit: z.literal('Pa'), ...citationFields })
        .transform(({ low, high, unit: _pascals, ...entry }) => ({
          low: pascals(low),
          high: pascals(high),
          ...cited(entry),
        })),
      error: share,
      gauge: z
        .strictObject({ least: printedValue('Pa', pascals), share: printedValue('1', ratio), ...citationFields })
        .transform(cited),
    }),
    traverse: z.strictObject({ openShare: citedShareRange, error: share, fewestReadings: count }),
    hood: z.strictObject({ powered: share, unpowered: share }),
    comparison: z.strictObject({ widestTelling: share }),
  }),
  fieldFile,
);

/** How each way of measuring at the grille is taken to err, with the citation of each figure. */
export const fieldMethods = field;

/** The same as bare figures, the shape the engine takes. */
export const methodTrust = {
  bag: {
    reaction: field.bag.reaction.value,
    shortestTime: field.bag.shortestTime.value,
    fewestReadings: field.bag.fewestReadings.value,
    widestSpread: field.bag.widestSpread.value,
  },
  box: {
    constant: field.box.constant.value,
    error: field.box.error.value,
    gaugeError: field.box.gauge.least,
    gaugeShare: field.box.gauge.share,
    leastPressure: field.box.pressure.low,
    mostPressure: field.box.pressure.high,
  },
  traverse: { error: field.traverse.error.value, fewestReadings: field.traverse.fewestReadings.value },
  hood: { powered: field.hood.powered.value, unpowered: field.hood.unpowered.value },
};
