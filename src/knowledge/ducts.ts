import { z } from 'zod';
import type { Estimate } from '#quantity/estimate.ts';
import { type Metres, metres, type Ratio, ratio } from '#quantity/units.ts';
import fittingsFile from '../../knowledge/ducts/fittings.json' with { type: 'json' };
import flexFile from '../../knowledge/ducts/flex.json' with { type: 'json' };
import methodsFile from '../../knowledge/ducts/methods.json' with { type: 'json' };
import roughnessFile from '../../knowledge/ducts/roughness.json' with { type: 'json' };
import { checked } from './checked.ts';
import {
  angleRange,
  type Cited,
  cited,
  inOrder,
  inSi,
  length,
  lengthBounds,
  lengthRange,
  outOfOrder,
  ratioRange,
  shareRange,
} from './duct-measures.ts';
import { citationFields } from './sources.ts';

/** Kinds of duct a crew names. */
export type DuctKind = keyof typeof roughnessFile.kinds;
/** Materials in the handbook's roughness table. */
export type DuctMaterialId = keyof typeof roughnessFile.materials;
/** How slack wire-helix flexible duct lies. */
export type FlexLay = keyof typeof flexFile.compression;
/** How slack foil flexible duct lies. */
export type FoilFlexLay = keyof typeof flexFile.foilCompression;
export type FittingId = keyof typeof fittingsFile.losses;
/** Cones between two diameters. */
export type ConeId = keyof typeof fittingsFile.cones;
/** Methods the duct engine works by, for the sources beside an answer. */
type DuctMethodId = keyof typeof methodsFile;

export interface Duct extends Cited {
  readonly name: string;
  /** The column of the code's length table that this kind reads. */
  readonly tableColumn: 'smooth' | 'flex';
  /** Height of the roughness of the wall; flexible duct pulled tight. */
  readonly roughness: Estimate<Metres>;
}

export interface DuctMaterial extends Cited {
  readonly name: string;
  readonly roughness: Metres;
  readonly printedRange?: { readonly low: Metres; readonly high: Metres } | undefined;
}

export interface Lay extends Cited {
  readonly name: string;
  /** How much shorter than pulled tight, 0 to 1. */
  readonly amount: Estimate<Ratio>;
}

/** A loss coefficient on the velocity pressure at the fitting's own diameter. */
export interface FittingLoss extends Estimate<Ratio>, Cited {}

export interface Fitting {
  readonly name: string;
  /** What people call it, in small letters, the plainest last. */
  readonly names: readonly string[];
  /** True where the coefficient already holds the velocity pressure lost in the open. */
  readonly includesExit: boolean;
  /** One loss for every diameter, or one for each printed diameter, rising. */
  readonly losses: readonly { readonly diameter: Metres | 'any'; readonly loss: FittingLoss }[];
}

export interface ConeFitting extends Cited {
  readonly name: string;
  /** Radians. */
  readonly includedAngle: Estimate;
  /** How far other published formulas lie from the one used, as a factor on it. */
  readonly spread: Estimate<Ratio>;
}

interface DuctMethod extends Cited {
  readonly name: string;
}

const named = { name: z.string().min(1), ...citationFields };
const entries = <Schema extends z.ZodType>(schema: Schema) => z.record(z.string(), schema);
const layEntries = entries(z.strictObject({ ...named, amount: shareRange }).transform(cited));

const roughness = checked(
  'knowledge/ducts/roughness.json',
  z.strictObject({
    kinds: entries(
      z.strictObject({ ...named, tableColumn: z.enum(['smooth', 'flex']), roughness: lengthRange }).transform(cited),
    ),
    materials: entries(
      z.strictObject({ ...named, roughness: length, printedRange: lengthBounds.optional() }).transform(cited),
    ),
  }),
  roughnessFile,
);

const flex = checked(
  'knowledge/ducts/flex.json',
  z.strictObject({ compression: layEntries, foilCompression: layEntries }),
  flexFile,
);

const lossSchema = z
  .strictObject({ low: z.number().min(0), typical: z.number(), high: z.number(), ...citationFields })
  .refine(inOrder, outOfOrder)
  .transform((entry): FittingLoss => {
    const { low, typical, high, ...rest } = cited(entry);
    return { low: ratio(low), typical: ratio(typical), high: ratio(high), ...rest };
  });

const fittingSchema = z
  .strictObject({
    name: z.string().min(1),
    names: z.array(z.string().regex(/^[a-z0-9° -]+$/)).min(1),
    includesExit: z.boolean(),
    anyDiameter: lossSchema.optional(),
    /** By inside diameter in inches. */
    byDiameter: entries(lossSchema).optional(),
  })
  .refine(
    ({ anyDiameter, byDiameter }) => (anyDiameter === undefined) === Object.keys(byDiameter ?? {}).length > 0,
    'give either anyDiameter or byDiameter',
  )
  .transform(({ anyDiameter, byDiameter, ...fitting }): Fitting => {
    if (anyDiameter) return { ...fitting, losses: [{ diameter: 'any', loss: anyDiameter }] };
    const losses = Object.entries(byDiameter ?? {}).map(([inches, loss]) => ({
      diameter: metres(inSi(Number(inches), 'in')),
      loss,
    }));
    return { ...fitting, losses: losses.sort((one, other) => one.diameter - other.diameter) };
  });

const fittingsAndCones = checked(
  'knowledge/ducts/fittings.json',
  z.strictObject({
    losses: entries(fittingSchema),
    cones: entries(z.strictObject({ ...named, includedAngle: angleRange, spread: ratioRange }).transform(cited)),
  }),
  fittingsFile,
);

export const ducts = roughness.kinds as Readonly<Record<DuctKind, Duct>>;
export const ductMaterials = roughness.materials as Readonly<Record<DuctMaterialId, DuctMaterial>>;
export const flexLays = flex.compression as Readonly<Record<FlexLay, Lay>>;
export const foilFlexLays = flex.foilCompression as Readonly<Record<FoilFlexLay, Lay>>;
/** Every fitting by id, the ones with the longer names first. */
export const fittings = fittingsAndCones.losses as Readonly<Record<FittingId, Fitting>>;
export const fittingIds = Object.keys(fittings) as readonly FittingId[];
export const cones = fittingsAndCones.cones as Readonly<Record<ConeId, ConeFitting>>;
export const ductMethods = checked(
  'knowledge/ducts/methods.json',
  entries(z.strictObject(named).transform(cited)),
  methodsFile,
) as Readonly<Record<DuctMethodId, DuctMethod>>;

const between = (low: number, high: number, share: number): Ratio => ratio(low + (high - low) * share);

/**
 * Loss coefficient of a fitting at a diameter: as printed, on a straight line between two printed diameters, or the
 * nearest printed one beyond them. The citation is that of the nearer printed diameter.
 */
export function fittingLoss(id: FittingId, diameter: Metres): FittingLoss {
  const { losses } = fittings[id];
  const inches = (entry: (typeof losses)[number]) => (entry.diameter === 'any' ? diameter : entry.diameter);
  const above = losses.find((entry) => inches(entry) >= diameter) ?? losses.at(-1);
  const under = losses.findLast((entry) => inches(entry) <= diameter) ?? losses[0];
  if (above === undefined || under === undefined) throw new TypeError(`${id} has no loss coefficient`);
  const gap = inches(above) - inches(under);
  if (!(gap > 0)) return under.loss;
  const share = (diameter - inches(under)) / gap;
  return {
    ...(share < 0.5 ? under : above).loss,
    low: between(under.loss.low, above.loss.low, share),
    typical: between(under.loss.typical, above.loss.typical, share),
    high: between(under.loss.high, above.loss.high, share),
  };
}
