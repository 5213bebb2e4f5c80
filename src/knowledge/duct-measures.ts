import { z } from 'zod';
import type { Estimate } from '#quantity/estimate.ts';
import { toSi } from '#quantity/unit-factors.ts';
import {
  kilogramsPerCubicMetre,
  metres,
  metresPerSecond,
  pascals,
  ratio,
  squareMetreKelvinsPerWatt,
} from '#quantity/units.ts';
import { type Citation, cite, type SourceId } from './sources.ts';

/** How the units printed in the duct files are written for the converter. */
const printedUnits = {
  ft: { unit: 'ft', si: 'm' },
  in: { unit: 'in', si: 'm' },
  mm: { unit: 'mm', si: 'm' },
  cfm: { unit: 'cfm', si: 'm^3/s' },
  fpm: { unit: 'fpm', si: 'm/s' },
  'in wg': { unit: 'inH2O', si: 'Pa' },
  'lb/ft3': { unit: 'lb/ft^3', si: 'kg/m^3' },
  R: { unit: 'Rvalue', si: 'm^2 K/W' },
  RSI: { unit: 'RSI', si: 'm^2 K/W' },
  deg: { unit: 'deg', si: 'rad' },
  '%': { unit: '0.01', si: '1' },
} as const;

type PrintedUnit = keyof typeof printedUnits;

export const inSi = (value: number, unit: PrintedUnit): number =>
  toSi(value, printedUnits[unit].unit, printedUnits[unit].si);

/** A printed figure of one kind of unit, read into SI. */
const measure = <const Unit extends PrintedUnit, Q>(units: readonly Unit[], make: (value: number) => Q) =>
  z.strictObject({ value: z.number(), unit: z.enum(units) }).transform(({ value, unit }) => make(inSi(value, unit)));

export const length = measure(['ft', 'in', 'mm'], metres);
export const speed = measure(['fpm'], metresPerSecond);
export const pressure = measure(['in wg'], pascals);
export const density = measure(['lb/ft3'], kilogramsPerCubicMetre);
export const thermalResistance = measure(['R', 'RSI'], squareMetreKelvinsPerWatt);

/** Fall or sag for each length along, both in the same unit in the end. */
export const slope = z
  .strictObject({ value: z.number(), unit: z.literal('in/ft') })
  .transform(({ value }) => ratio(inSi(value, 'in') / inSi(1, 'ft')));

export const inOrder = ({ low, typical, high }: Estimate): boolean => low <= typical && typical <= high;
export const outOfOrder = 'low, typical and high must rise in that order';

const bare = { low: z.number(), typical: z.number(), high: z.number() };

/** A printed range of one kind of unit, read into SI. */
const range = <const Unit extends PrintedUnit, Q extends number>(units: readonly Unit[], make: (value: number) => Q) =>
  z
    .strictObject({ ...bare, unit: z.enum(units) })
    .refine(inOrder, outOfOrder)
    .transform(
      ({ low, typical, high, unit }): Estimate<Q> => ({
        low: make(inSi(low, unit)),
        typical: make(inSi(typical, unit)),
        high: make(inSi(high, unit)),
      }),
    );

/** The least and most printed for a length, without a middle. */
export const lengthBounds = z
  .strictObject({ low: z.number(), high: z.number(), unit: z.enum(['ft', 'mm']) })
  .transform(({ low, high, unit }) => ({ low: metres(inSi(low, unit)), high: metres(inSi(high, unit)) }));

export const lengthRange = range(['ft', 'in', 'mm'], metres);
export const shareRange = range(['%'], ratio);
/** Radians. */
export const angleRange = range(['deg'], (value) => value);

/** Low, typical and high of a number without a unit. */
export const ratioRange = z
  .strictObject(bare)
  .refine(inOrder, outOfOrder)
  .transform(({ low, typical, high }) => ({ low: ratio(low), typical: ratio(typical), high: ratio(high) }));

export interface Cited {
  readonly citation: Citation;
  readonly note?: string;
}

/** An entry with its citation fields gathered into one, ready to stand beside a figure. */
export function cited<
  Entry extends { source: SourceId; where?: string | undefined; verified: boolean; note?: string | undefined },
>(entry: Entry): Omit<Entry, 'source' | 'where' | 'verified' | 'note'> & Cited {
  const { source, where, verified, note, ...rest } = entry;
  return { ...rest, citation: cite({ source, where, verified }), ...(note === undefined ? {} : { note }) };
}
