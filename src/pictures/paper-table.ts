import type { Block } from '#findings/paper.ts';
import { type Desk, frame, ink, makeRoom, printable, soft, thinRule, widthOf } from './paper-page.ts';

type Table = Extract<Block, { kind: 'table' }>;
type Row = readonly string[];

const size = 9;
/** A cell holds no more; the whole of it is in the export. */
const longestCell = 400;

const clipped = (text: string): string => (text.length > longestCell ? `${text.slice(0, longestCell)} …` : text);

/** A row of one cell runs over the whole width, as a heading of the rows under it. */
const widthsFor = (desk: Desk, { widths }: Table, row: Row): readonly number[] =>
  row.length === 1 ? [widthOf(desk)] : widths.map((share) => share * widthOf(desk));

function rowHeight(desk: Desk, table: Table, row: Row, font: 'plain' | 'bold'): number {
  const { document, scale } = desk;
  document.font(font).fontSize(size * scale);
  const widths = widthsFor(desk, table, row);
  const heights = row.map((text, index) =>
    document.heightOfString(printable(clipped(text)), { width: (widths[index] ?? 0) - 8 }),
  );
  return Math.max(...heights, 0) + (row.length === 1 ? 10 : 6);
}

const fontOf = (row: Row): 'plain' | 'bold' => (row.length === 1 ? 'bold' : 'plain');

/** The head of a table with the first rows under it, which stand together. */
export function firstRowHeight(desk: Desk, table: Table): number {
  const [first = [], second = []] = table.rows;
  const kept = first.length === 1 ? [first, second] : [first];
  return kept.reduce(
    (sum, row) => sum + rowHeight(desk, table, row, fontOf(row)),
    rowHeight(desk, table, table.columns, 'bold'),
  );
}

export function setTable(desk: Desk, table: Table): void {
  const { document } = desk;
  makeRoom(desk, firstRowHeight(desk, table));
  setHead(desk, table);
  table.rows.forEach((row, index) => {
    const height = rowHeight(desk, table, row, fontOf(row));
    const next = row.length === 1 ? table.rows[index + 1] : undefined;
    // The last row never stands alone on a page, nor a heading without a row.
    const last = index === table.rows.length - 2 ? table.rows[index + 1] : undefined;
    const company = next ?? last;
    const more = company === undefined ? 0 : rowHeight(desk, table, company, fontOf(company));
    if (makeRoom(desk, height + more)) setHead(desk, table);
    setRow(desk, table, row, fontOf(row));
  });
  document.x = frame.margin;
  document.moveDown(0.6);
}

function setHead(desk: Desk, table: Table): void {
  setRow(desk, table, table.columns, 'bold', soft);
}

function setRow(desk: Desk, table: Table, row: Row, font: 'plain' | 'bold', colour = ink): void {
  const { document, scale } = desk;
  const height = rowHeight(desk, table, row, font);
  const widths = widthsFor(desk, table, row);
  const top = document.y;
  let x = frame.margin;
  document
    .font(font)
    .fontSize(size * scale)
    .fillColor(colour);
  row.forEach((text, index) => {
    const width = widths[index] ?? 0;
    document.text(printable(clipped(text)), x, top + (row.length === 1 ? 6 : 3), { width: width - 8 });
    x += width;
  });
  document.y = top + height;
  thinRule(desk);
}
