import { z } from 'zod';
import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type KilogramsPerCubicMetre,
  type Metres,
  metres,
  type Pascals,
  pascals,
} from '#quantity/units.ts';
import modelFile from '../../knowledge/ducts/duct-length-model.json' with { type: 'json' };
import tableFile from '../../knowledge/ducts/duct-length-table.json' with { type: 'json' };
import { checked } from './checked.ts';
import { type Cited, cited, density, inSi, length, pressure, speed } from './duct-measures.ts';
import { citationFields } from './sources.ts';

export type DuctLengthTableId = keyof typeof tableFile;
export type DuctColumn = 'smooth' | 'flex';
/** `any`: no limit is printed. `none`: not allowed at any length. */
export type LengthLimit = 'any' | 'none' | Metres;

/** A printed table of how long an exhaust duct may be, ready for the look-up in the duct engine. */
export interface PrintedDuctLengths extends Cited {
  readonly name: string;
  /** Where each edition prints it. */
  readonly editions: Readonly<Record<string, { readonly table: string; readonly section: string }>>;
  /** The columns are fan airflows rated at this pressure. */
  readonly ratingPressure: Pascals;
  readonly airflows: readonly CubicMetresPerSecond[];
  readonly rows: readonly {
    readonly duct: DuctColumn;
    readonly diameter: Metres;
    /** `undefined` where the table prints no cell. */
    readonly cells: readonly (LengthLimit | undefined)[];
  }[];
  /** How the widest row is headed in print. */
  readonly widest: string;
  /** Elbows the printed lengths already count. */
  readonly elbowsIncluded: number;
  readonly lengthPerElbow: Metres;
}

/** What makes straight duct reproduce the printed table. */
export interface DuctLengthModel extends Cited {
  readonly name: string;
  readonly pressure: Pascals;
  readonly allowance: Metres;
  readonly roughness: Readonly<Record<DuctColumn, Metres>>;
  /** The air the handbook's formulas were drawn for. */
  readonly air: { readonly density: KilogramsPerCubicMetre; readonly kinematicViscosity: number };
  /** Anything shorter is printed as not allowed. */
  readonly shortestPrinted: Metres;
  /** Anything longer is printed as no limit. */
  readonly longestPrinted: Metres;
}

const limits = { X: 'none', NL: 'any' } as const;
const feet = (value: number): Metres => metres(inSi(value, 'ft'));
/** A cell as printed: feet, X, NL, or nothing. */
const cell = z
  .union([z.number().positive(), z.enum(['X', 'NL']), z.null()])
  .transform((printed): LengthLimit | undefined => {
    if (printed === null) return undefined;
    return typeof printed === 'number' ? feet(printed) : limits[printed];
  });
const column = z.record(z.string(), z.array(cell));

const tableSchema = z
  .strictObject({
    name: z.string(),
    editions: z.record(z.string(), z.strictObject({ table: z.string(), section: z.string() })),
    ratingPressure: pressure,
    airflows: z.strictObject({ values: z.array(z.number()), unit: z.literal('cfm') }),
    lengthUnit: z.literal('ft'),
    diameterUnit: z.literal('in'),
    lengths: z.strictObject({ smooth: column, flex: column }),
    widest: z.string(),
    elbowsIncluded: z.int().min(0),
    lengthPerElbow: length,
    ...citationFields,
  })
  .refine(
    ({ airflows, lengths }) =>
      Object.values(lengths).every((rows) =>
        Object.values(rows).every((cells) => cells.length === airflows.values.length),
      ),
    'every row needs one cell for each airflow',
  )
  .transform(({ airflows, lengths, lengthUnit: _ft, diameterUnit: _in, ...entry }): PrintedDuctLengths => {
    const rows = (duct: DuctColumn) =>
      Object.entries(lengths[duct]).map(([inches, cells]) => ({
        duct,
        diameter: metres(inSi(Number(inches), 'in')),
        cells,
      }));
    return {
      ...cited(entry),
      airflows: airflows.values.map((cfm) => cubicMetresPerSecond(inSi(cfm, 'cfm'))),
      rows: [...rows('smooth'), ...rows('flex')].sort((one, other) => one.diameter - other.diameter),
    };
  });

const modelSchema = z
  .strictObject({
    name: z.string(),
    /** The handbook's inch of water, (V/4005)², is 0.18 % under the conventional one; three cells round on it. */
    pressure: z.strictObject({ value: z.number(), oneInchIsVelocityPressureAt: speed }),
    allowance: length,
    roughness: z.strictObject({ smooth: length, flex: length }),
    air: z.strictObject({
      density,
      /** Re = this · D in inches · V in feet a minute. */
      reynoldsPerInchFpm: z.number(),
    }),
    shortestPrinted: length,
    longestPrinted: length,
    ...citationFields,
  })
  .transform(({ air, pressure: printed, ...entry }): DuctLengthModel => {
    const inchFpm = inSi(1, 'in') * inSi(1, 'fpm');
    const oneInch = (air.density * printed.oneInchIsVelocityPressureAt ** 2) / 2;
    return {
      ...cited(entry),
      pressure: pascals(printed.value * oneInch),
      air: { density: air.density, kinematicViscosity: inchFpm / air.reynoldsPerInchFpm },
    };
  });

export const ductLengthTables = checked(
  'knowledge/ducts/duct-length-table.json',
  z.record(z.string(), tableSchema),
  tableFile,
) as Readonly<Record<DuctLengthTableId, PrintedDuctLengths>>;

export const ductLengthModel: DuctLengthModel = checked(
  'knowledge/ducts/duct-length-model.json',
  modelSchema,
  modelFile,
);
