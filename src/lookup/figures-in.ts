import { type Amount, type FigureRow, inWords } from './entry.ts';
import { gridIn, gridKeys } from './grids.ts';
import { citedBy, isRecord, type Raw, textAt } from './raw.ts';

/** Keys that are words about an entry, or choose a rule inside the program; they are no figures. */
const wordKeys = new Set(
  'source where verified note name names says means reason kind rank bound tableColumn includesExit carriesOver awg stop grounds spread'.split(
    ' ',
  ),
);

const amountKeys = new Set('value values low typical high unit'.split(' '));

/** Units that stand in the name of a key. */
const unitInKey: Readonly<Record<string, readonly [what: string, unit: string]>> = {
  cfm: ['Airflow', 'cfm'],
  litresPerSecond: ['Airflow, as printed in metric', 'L/s'],
  cfmPerSquareFoot: ['For each square foot', 'cfm'],
  litresPerSecondPerSquareMetre: ['For each square meter', 'L/s'],
  shortestPrinted: ['Shortest length printed', 'ft'],
  longestPrinted: ['Longest length printed', 'ft'],
  leastSones: ['Least loudness it holds for', 'sone'],
};

const number = (value: unknown): value is number => typeof value === 'number';

/** The figure an object is: a value, or a low and a high, or several, with the unit; none where it is something else. */
export function amountOf(node: unknown): Amount | undefined {
  if (!isRecord(node)) return undefined;
  const { value, low, typical, high, values, unit = '1' } = node;
  if (typeof unit !== 'string') return undefined;
  if (number(value)) return { value, unit };
  if (Array.isArray(value) && value.every(number)) return { values: value, unit };
  if (Array.isArray(values) && values.every((each) => number(each))) return { values, unit };
  if (number(low) && number(high)) return { low, ...(number(typical) ? { typical } : {}), high, unit };
  return undefined;
}

/** Every figure in an entry, each under the words of the keys that lead to it. */
export function figuresIn(node: Raw, before: readonly string[] = []): readonly FigureRow[] {
  const grid = gridIn(node);
  const own = amountOf(node);
  const bound = textAt(node, 'bound');
  const rows = Object.entries(node)
    .filter(([key]) => !(wordKeys.has(key) || (own && amountKeys.has(key)) || (grid && gridKeys.has(key))))
    .flatMap(([key, value]) => under(key, value, before));
  if (grid) return [...rows, ...grid];
  const all = own ? [{ what: labelled(before), amount: own }, ...rows] : rows;
  return bound === undefined ? all : all.map((row) => ({ ...row, bound }));
}

const labelled = (path: readonly string[]): string => (path.length === 0 ? 'Figure' : inWords(path.join(', ')));

/** Keys that only hold what is under them. */
const holders = new Set(['amount', 'anyDiameter', 'byDiameter']);

function under(key: string, value: unknown, before: readonly string[]): readonly FigureRow[] {
  const path = holders.has(key) ? before : [...before, /^\d+$/.test(key) ? `${key} in duct` : key];
  const what = labelled(path);
  if (isRecord(value)) {
    const citation = citedBy(value);
    const within = figuresIn(value, path);
    return citation ? within.map((row) => ({ citation, ...row })) : within;
  }
  if (Array.isArray(value)) {
    return value.length === 0 ? [] : [{ what, amount: value.map((item) => listed(item, key)).join('; ') }];
  }
  if (typeof value === 'string') return [{ what, amount: value }];
  if (typeof value === 'boolean') return [{ what, amount: value ? 'yes' : 'no' }];
  if (typeof value !== 'number') return [];
  const [label, unit] = unitInKey[key] ?? [];
  return [{ what: label === undefined ? what : labelled([...before, label]), amount: { value, unit: unit ?? '1' } }];
}

/** One of a list: a number or word as it is; a step of a fan efficacy table as "below 90 cfm at least 2.8 cfm/W". */
function listed(item: unknown, key: string): string {
  if (!isRecord(item)) return String(item);
  const { below, least, most } = item;
  const to = below === undefined ? '' : `below ${below} cfm `;
  if (most !== undefined) return `${to}at most ${most} sones`;
  return `${to}at least ${least}${key === 'airflowKept' ? ' %' : ' cfm/W'}`;
}
