import type { FigureRow, Steps } from './entry.ts';
import { isRecord, type Raw } from './raw.ts';

const numbersAt = (node: unknown, key: string): readonly number[] => {
  const values = isRecord(node) ? node[key] : undefined;
  return Array.isArray(values) ? values.filter((value) => typeof value === 'number') : [];
};

/** Keys of a table with two ways in that are told row by row, or say how it is laid out. */
export const gridKeys = new Set(
  'airflows lengths lengthUnit diameterUnit editions widest areaUpTo bedroomsUpTo airflow'.split(' '),
);

/** The rows of a printed table with two ways in; nothing where an entry is not one. */
export function gridIn(node: Raw): readonly FigureRow[] | undefined {
  if (isRecord(node['lengths'])) return ductLengths(node, node['lengths']);
  if (isRecord(node['areaUpTo']) && isRecord(node['airflow'])) return houseAirflows(node, node['airflow']);
  return undefined;
}

/** What the length table prints where there is no length. */
const inPlaceOfLength: Readonly<Record<string, string>> = { X: 'not allowed', NL: 'no limit' };

/** A row for each kind of duct and each diameter, by the airflow on the label. */
function ductLengths(node: Raw, lengths: Raw): readonly FigureRow[] {
  const airflows = numbersAt(node['airflows'], 'values');
  const stepsOf = (cells: readonly unknown[]): Steps =>
    cells.flatMap((cell, index): Steps => {
      const at = { value: airflows[index] ?? Number.NaN, unit: 'cfm' };
      if (typeof cell === 'number') return [{ at, is: { value: cell, unit: 'ft' } }];
      const says = inPlaceOfLength[String(cell)];
      return says === undefined ? [] : [{ at, is: says }];
    });
  return Object.entries(lengths).flatMap(([kind, byDiameter]) =>
    Object.entries(isRecord(byDiameter) ? byDiameter : {}).map(([diameter, cells]) => ({
      what: `${kind === 'flex' ? 'Flex' : 'Smooth'} duct, ${diameter} in`,
      amount: Array.isArray(cells) ? stepsOf(cells) : [],
    })),
  );
}

/** A row for each floor area, by the number of bedrooms up to which it holds. */
function houseAirflows(node: Raw, airflow: Raw): readonly FigureRow[] {
  const areas = numbersAt(node['areaUpTo'], 'values');
  const bedrooms = numbersAt(node, 'bedroomsUpTo');
  const rows = Array.isArray(airflow['values']) ? airflow['values'] : [];
  return rows.map((cells, row) => ({
    what: areas[row] === undefined ? `Over ${areas.at(-1)} sq ft` : `Up to ${areas[row]} sq ft`,
    amount: (Array.isArray(cells) ? cells : []).map((cell, column) => ({
      at: bedrooms[column] === undefined ? 'more bedrooms' : `up to ${bedrooms[column]} bedrooms`,
      is: { value: Number(cell), unit: 'cfm' },
    })),
  }));
}
