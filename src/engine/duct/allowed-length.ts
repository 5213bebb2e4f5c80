import type { Air } from '#engine/air/air.ts';
import { type CubicMetresPerSecond, type Metres, metres, type Pascals, ratio } from '#quantity/units.ts';
import { frictionLoss } from './run.ts';

/** `any`: the printed table sets no limit. `none`: this size is not allowed at any length. */
export type LengthLimit = 'any' | 'none' | Metres;

/** A printed table of how long an exhaust duct may be for a fan of a given airflow. */
export interface DuctLengthTable<Duct extends string> {
  /** Heads of the columns, rising. */
  readonly airflows: readonly CubicMetresPerSecond[];
  /** Rising in diameter within each kind of duct; the widest stands for every wider one. A cell may be left out in print. */
  readonly rows: readonly {
    readonly duct: Duct;
    readonly diameter: Metres;
    readonly cells: readonly (LengthLimit | undefined)[];
  }[];
  /** Elbows the printed lengths already count. */
  readonly elbowsIncluded: number;
  /** Taken off for each elbow beyond those. */
  readonly lengthPerElbow: Metres;
}

export type AllowedDuctLength =
  | {
      readonly found: true;
      readonly allowed: LengthLimit;
      /** As printed, before elbows. */
      readonly printed: LengthLimit;
      /** The head of the column used, the next at or above the airflow asked. */
      readonly column: CubicMetresPerSecond;
      /** The row used, the next at or under the diameter asked. */
      readonly row: Metres;
    }
  | {
      readonly found: false;
      readonly why:
        | 'kind not in the table'
        | 'narrower than the table'
        | 'more air than the table'
        | 'cell not printed';
    };

/**
 * Pipe sold as 100 mm is the metric twin of 4 in and 1.6 % narrower; 125, 150 and 200 mm likewise. They read the same row.
 */
const metricTwin = 0.984;
/** Rounding in unit conversion, so that 80 cfm reads the 80 column. */
const rounding = 1 + 1e-6;

/**
 * The longest duct the printed table allows for a fan, elbows taken off.
 *
 * L = printed(next column at or above Q, next row at or under D) − per elbow · (elbows − included)
 *
 * A fan between two columns reads the one with more air, a duct between two rows the narrower. When the elbows use up the
 * whole length the size is not allowed with that many.
 *
 * @source IRC Table M1504.2 and notes a to e
 */
export function allowedDuctLength<Duct extends string>({
  table,
  duct,
  diameter,
  airflow,
  elbows,
}: {
  readonly table: DuctLengthTable<Duct>;
  readonly duct: Duct;
  readonly diameter: Metres;
  readonly airflow: CubicMetresPerSecond;
  readonly elbows: number;
}): AllowedDuctLength {
  const ofKind = table.rows.filter((row) => row.duct === duct);
  if (ofKind.length === 0) return { found: false, why: 'kind not in the table' };
  const row = ofKind.findLast((candidate) => diameter >= candidate.diameter * metricTwin);
  if (row === undefined) return { found: false, why: 'narrower than the table' };
  const index = table.airflows.findIndex((head) => airflow <= head * rounding);
  const column = table.airflows[index];
  if (column === undefined) return { found: false, why: 'more air than the table' };
  const printed = row.cells[index];
  if (printed === undefined) return { found: false, why: 'cell not printed' };
  const found = { found: true, printed, column, row: row.diameter } as const;
  if (typeof printed === 'string') return { ...found, allowed: printed };
  const left = printed - table.lengthPerElbow * Math.max(0, elbows - table.elbowsIncluded);
  return { ...found, allowed: left > 0 ? metres(left) : 'none' };
}

/**
 * The length at which straight duct plus a fixed allowance uses up a given pressure: how the printed table was evidently made.
 *
 * L = p / (Δp per metre at Q) − allowance
 *
 * Negative when the allowance alone takes more than the pressure. Nothing here is measured on a hood or an elbow.
 *
 * @source own working, fitted to IRC Table M1504.2; Darcy–Weisbach with Colebrook–White
 */
export function modelledDuctLength({
  pressure,
  allowance,
  diameter,
  roughness,
  airflow,
  air,
}: {
  readonly pressure: Pascals;
  readonly allowance: Metres;
  readonly diameter: Metres;
  readonly roughness: Metres;
  readonly airflow: CubicMetresPerSecond;
  readonly air: Air;
}): Metres {
  const oneMetre = { diameter, roughness, length: metres(1), pressureFactor: ratio(1) };
  return metres(pressure / frictionLoss({ duct: oneMetre, airflow, air }) - allowance);
}
