import type { Reading, UnitSystem } from '#interview/question.ts';
import { plain } from '#interview/words.ts';
import { leading } from '#quantity/units.ts';
import { fanCurve } from '../questions/fan.ts';
import { labelQuestions } from '../questions/shelf.ts';
import { type NewShelfFan, readFanName, readLabel, type ShelfFan } from './shelf.ts';
import { csvRows, csvText } from './shelf-csv.ts';

/** The head of the list, as it is written; read in any order and any letters. */
const columns = ['name', ...labelQuestions.map(({ id }) => id), 'units', 'invented'] as const;

/** The shelf as a list for a spreadsheet, which `fansFromCsv` reads back. */
export const csvOfFans = (fans: readonly ShelfFan[]): string =>
  csvText([
    columns,
    ...fans.map(({ name, label, units, demo }) => [
      name,
      ...labelQuestions.map(({ id }) => label[id] ?? ''),
      units,
      demo ? 'yes' : '',
    ]),
  ]);

/** One thing that was wrong, and in which row; the head is row 1. */
export interface RowTrouble {
  readonly row: number;
  readonly says: string;
}

export interface FanList {
  readonly fans: readonly NewShelfFan[];
  readonly troubles: readonly RowTrouble[];
}

const headOf = (cell: string): string =>
  plain(cell)
    .replace(/[\s_]+/g, '-')
    .slice(0, 40);

/** Reads a list of fans row by row: good rows become fans, of each bad one it is told why. */
export function fansFromCsv(text: string, crewUnits: UnitSystem): Reading<FanList> {
  const rows = csvRows(text);
  if ('rejected' in rows) return rows;
  const [head = [], ...body] = rows.value;
  const named = head.map(headOf);
  const lacking = ['name', fanCurve.id].filter((column) => !named.includes(column));
  if (lacking.length > 0) {
    return {
      rejected: `The first row must name the columns; ${lacking.join(' and ')} must be there. It may name ${columns.join(', ')}.`,
    };
  }
  const twice = named.find((column, index) => column !== '' && named.indexOf(column) !== index);
  if (twice !== undefined) return { rejected: `The first row names ${twice} twice.` };
  const strange = named.filter((column) => column !== '' && !(columns as readonly string[]).includes(column));
  const troubles: RowTrouble[] = strange.map((column) => ({
    row: 1,
    says: `The column ${column} is left out: nothing here is called that.`,
  }));
  const fans = new Map<string, { fan: NewShelfFan; row: number }>();
  for (const [index, cells] of body.entries()) {
    const row = index + 2;
    if (cells.every((cell) => cell === '')) continue;
    const read = fanFrom(new Map(named.map((column, at) => [column, cells[at] ?? ''])), crewUnits);
    troubles.push(...read.problems.map((says) => ({ row, says })));
    if (!read.fan) continue;
    const key = read.fan.name.toLowerCase();
    const earlier = fans.get(key);
    if (earlier)
      troubles.push({ row, says: `${read.fan.name} stands in row ${earlier.row} already; that one is taken.` });
    else fans.set(key, { fan: read.fan, row });
  }
  return { value: { fans: [...fans.values()].map(({ fan }) => fan), troubles } };
}

function fanFrom(
  cells: ReadonlyMap<string, string>,
  crewUnits: UnitSystem,
): { readonly fan?: NewShelfFan; readonly problems: readonly string[] } {
  const name = readFanName(cells.get('name') ?? '');
  const said = plain(cells.get('units') ?? '');
  const units = said === '' ? leading(crewUnits) : said === 'metric' || said === 'inch-pound' ? said : undefined;
  const given = Object.fromEntries(labelQuestions.map(({ id }) => [id, cells.get(id)]));
  const { label, problems: unread } = readLabel(given, units ?? crewUnits);
  const problems = [
    ...('rejected' in name ? [name.rejected] : []),
    ...(units === undefined ? ['units: say inch-pound or metric.'] : []),
    ...unread,
    ...(unread.length === 0 && label[fanCurve.id] === undefined ? [`${fanCurve.id}: give ${fanCurve.accepts}.`] : []),
  ];
  if (problems.length > 0 || 'rejected' in name || units === undefined) return { problems };
  const demo = ['yes', 'y', 'true', '1'].includes(plain(cells.get('invented') ?? ''));
  return { fan: { name: name.value, label, units, demo }, problems };
}
