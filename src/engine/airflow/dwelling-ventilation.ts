import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type Ratio,
  ratio,
  type SquareMetres,
} from '#quantity/units.ts';

export interface Dwelling {
  readonly floorArea: SquareMetres;
  readonly bedrooms: number;
}

/**
 * Whole-house ventilation, running all the time, by formula.
 *
 * Q = a A + b (N + 1)
 *
 * Q in m³/s, A floor area in m², N bedrooms, a in m³/(s·m²) and b in m³/s as the code or standard in force prints them.
 *
 * @source ASHRAE 62.2, equation 4.1; IRC 2021 and 2024, equation 15-1, which has the same form and a smaller a
 */
export const dwellingVentilation = ({
  dwelling,
  perArea,
  perPerson,
}: {
  dwelling: Dwelling;
  perArea: number;
  perPerson: CubicMetresPerSecond;
}): CubicMetresPerSecond => cubicMetresPerSecond(perArea * dwelling.floorArea + perPerson * (dwelling.bedrooms + 1));

/** Rows by floor area, columns by bedrooms; the last of each is open-ended. */
export interface DwellingVentilationTable {
  /** The largest floor area of each row but the last, rising. */
  readonly areaUpTo: readonly SquareMetres[];
  /** The most bedrooms of each column but the last, rising. */
  readonly bedroomsUpTo: readonly number[];
  readonly airflow: readonly (readonly CubicMetresPerSecond[])[];
}

/**
 * Whole-house ventilation, running all the time, as the code tabulates it.
 *
 * Q = table(A, N)
 *
 * Q in m³/s, A floor area in m², N bedrooms. A floor area at a row's limit belongs to that row. Nothing when the table has a
 * hole there, which a checked table has not.
 *
 * @source IRC Table M1505.4.3(1); Table M1507.3.3(1) in 2015
 */
export function dwellingVentilationByTable({
  dwelling,
  table,
}: {
  dwelling: Dwelling;
  table: DwellingVentilationTable;
}): CubicMetresPerSecond | undefined {
  const row = binOf(dwelling.floorArea, table.areaUpTo);
  const column = binOf(dwelling.bedrooms, table.bedroomsUpTo);
  return table.airflow[row]?.[column];
}

/** A floor area typed in one unit and kept in another must not slip over a limit it equals. */
const conversionAllowance = 1e-9;

const binOf = (value: number, limits: readonly number[]): number => {
  const bin = limits.findIndex((limit) => value <= limit * (1 + conversionAllowance));
  return bin === -1 ? limits.length : bin;
};

export type IntermittentFactor =
  | { readonly found: true; readonly factor: Ratio }
  | { readonly found: false; readonly why: 'runs too little' | 'no such share' };

/**
 * How much more air a whole-house fan must move when it runs only part of the time.
 *
 * f = f_1 + (f_2 − f_1) (r − r_1) / (r_2 − r_1)
 *
 * f factor on the continuous airflow, r share of each four hours that it runs, 1 and 2 the neighbouring columns. From the
 * least share in the table to 1: in between it is interpolated, below it never extrapolated.
 *
 * @source IRC Table M1505.4.3(2) with its note; Table M1507.3.3(2) in 2015
 */
export function intermittentFactor({
  runShare,
  table,
}: {
  runShare: Ratio;
  table: readonly { readonly runShare: Ratio; readonly factor: Ratio }[];
}): IntermittentFactor {
  const columns = table.toSorted((a, b) => a.runShare - b.runShare);
  const above = columns.findIndex((column) => column.runShare >= runShare);
  const [from, to] = [columns[above - 1], columns[above]];
  if (to === undefined) return { found: false, why: 'no such share' };
  if (to.runShare === runShare) return { found: true, factor: to.factor };
  if (from === undefined) return { found: false, why: 'runs too little' };
  const along = (runShare - from.runShare) / (to.runShare - from.runShare);
  return { found: true, factor: ratio(from.factor + along * (to.factor - from.factor)) };
}
