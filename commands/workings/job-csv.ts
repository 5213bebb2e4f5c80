import type { Desk } from '#chat/command.ts';
import { briefOf, howWords, saidOf } from './job-sheets.ts';
import { csvText } from './shelf-csv.ts';

const columns = ['part', 'what', 'answer', 'how known', 'by', 'when', 'entered', 'list', 'note'];

/** A value as a person reads it in one cell: "volts: 0; tester: proving-unit". */
const inOneCell = (value: unknown): string => {
  if (value === null || value === undefined) return '';
  if (typeof value !== 'object') return String(value);
  if (Array.isArray(value)) return value.map(inOneCell).join(', ');
  return Object.entries(value)
    .map(([key, inner]) => `${key}: ${inOneCell(inner)}`)
    .join('; ');
};

/**
 * Everything on a job as rows for a spreadsheet, in the order of its parts: the sheet itself, answers, what happened on its
 * lists, photos. Whoever the crew knows by a name is told by it. Instants are in UTC, as the records keep them.
 */
export function jobCsv(desk: Desk, number: number): string {
  const { events, facts, walkEvents, photos } = desk.store.sheetAsJson(number);
  const names = new Map(desk.store.members().map(({ who, name }) => [who, name]));
  const nameOf = (who: string): string => names.get(who) ?? who;
  return csvText([
    columns,
    ...events
      .filter(({ what }) => what !== 'used')
      .map(({ what, detail, who, at }) => ['sheet', what, detail ?? '', '', nameOf(who), at, at, '', '']),
    ...facts.map((fact) => [
      'answer',
      briefOf(desk, fact.fact),
      saidOf(fact),
      howWords[fact.how],
      nameOf(fact.who),
      fact.at,
      fact.enteredAt,
      '',
      fact.retracted ? `taken back by ${nameOf(fact.retracted.who)}, ${fact.retracted.at}` : '',
    ]),
    ...walkEvents.map(({ list, step, what, value, who, standing, at, enteredAt }) => [
      'list',
      [step, what].filter(Boolean).join(' '),
      inOneCell(value),
      '',
      standing.name ?? nameOf(who),
      at,
      enteredAt,
      list,
      standing.kinds.join(', '),
    ]),
    ...photos.map(({ list, step, message, checksum, size, who, at }) => [
      'photo',
      step ?? '',
      message,
      '',
      nameOf(who),
      at,
      at,
      list,
      `${size} bytes, checksum ${checksum}`,
    ]),
  ]);
}
