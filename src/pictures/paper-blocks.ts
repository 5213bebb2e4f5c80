import type { Block } from '#findings/paper.ts';
import { type Desk, frame, ink, makeRoom, printable, soft, widthOf } from './paper-page.ts';
import { firstRowHeight, setTable } from './paper-table.ts';

/** A block, and for a heading what must stand on the same page with it. */
type Kept = readonly [block: Block, next: Block | undefined];

export const headingsKept = (blocks: readonly Block[]): readonly Kept[] =>
  blocks.map((block, index) => [block, block.kind === 'heading' ? blocks[index + 1] : undefined]);

export function setBlock(desk: Desk, [block, next]: Kept): void {
  const { document, scale } = desk;
  document.x = frame.margin;
  switch (block.kind) {
    case 'heading':
      makeRoom(desk, 30 * scale + (next ? leastHeight(desk, next) : 0));
      if (document.y > frame.margin) document.moveDown(0.5);
      written(desk, 'bold', 12.5).text(printable(block.text)).moveDown(0.25);
      return;
    case 'text':
      makeRoom(desk, textHeight(desk, block.text) + 4);
      written(desk, 'plain', 10.5)
        .text(printable(block.text), { lineGap: leading(desk) })
        .moveDown(0.4);
      return;
    case 'list':
      for (const item of block.items) setItem(desk, item);
      document.moveDown(0.3);
      return;
    case 'warning':
      setWarning(desk, block);
      return;
    case 'figures':
      setFigures(desk, block.figures);
      return;
    case 'table':
      setTable(desk, block);
      return;
    case 'blanks':
      setBlanks(desk, block.labels);
      return;
    case 'picture':
      makeRoom(desk, block.height + 12);
      document.image(Buffer.from(block.png), frame.margin, document.y, {
        fit: [widthOf(desk), block.height],
        align: 'center',
      });
      document.y += block.height + 8;
      return;
  }
}

const written = ({ document, scale }: Desk, font: 'plain' | 'bold', size: number): PDFKit.PDFDocument =>
  document
    .font(font)
    .fontSize(size * scale)
    .fillColor(ink);

/** Room between lines, in points: small type goes without before it gets smaller. */
const leading = ({ scale }: Desk): number => Math.max(0, 2 - 8 * Math.max(0, 1 - scale));

const textHeight = (desk: Desk, text: string, width = widthOf(desk)): number =>
  written(desk, 'plain', 10.5).heightOfString(printable(text), { width, lineGap: leading(desk) });

/** The least of a block that may stand under its heading at the foot of a page. */
function leastHeight(desk: Desk, block: Block): number {
  switch (block.kind) {
    case 'text':
      return textHeight(desk, block.text);
    case 'list':
      return block.items.slice(0, 2).reduce((sum, item) => sum + itemHeight(desk, item), 0);
    case 'table':
      return firstRowHeight(desk, block);
    case 'picture':
      return block.height;
    default:
      return 60;
  }
}

/** How far the words of a point stand in, behind its dash. */
const hang = 16;

const itemHeight = (desk: Desk, item: string): number => textHeight(desk, item, widthOf(desk) - hang) + 4;

function setItem(desk: Desk, item: string): void {
  const { document } = desk;
  makeRoom(desk, itemHeight(desk, item));
  const { y } = document;
  written(desk, 'plain', 10.5).text('–', frame.margin, y, { width: 12 });
  document.text(printable(item), frame.margin + hang, y, { width: widthOf(desk) - hang, lineGap: leading(desk) });
  document.moveDown(0.2);
  document.x = frame.margin;
}

function setWarning(desk: Desk, { title, lines }: Extract<Block, { kind: 'warning' }>): void {
  const { document, scale } = desk;
  const inner = widthOf(desk) - 24;
  const heights = lines.map((text) => textHeight(desk, text, inner) + 4);
  const titleHeight = written(desk, 'bold', 11).heightOfString(printable(title), { width: inner }) + 5;
  const height = heights.reduce((sum, each) => sum + each, titleHeight) + 16 * scale;
  makeRoom(desk, height + 8);
  const top = document.y + 2;
  document
    .lineWidth(1.6 * scale)
    .strokeColor(ink)
    .roundedRect(frame.margin, top, widthOf(desk), height, 4)
    .stroke();
  written(desk, 'bold', 11).text(printable(title), frame.margin + 12, top + 9, { width: inner });
  written(desk, 'plain', 10.5);
  let y = top + 9 + titleHeight;
  lines.forEach((text, index) => {
    document.text(printable(text), frame.margin + 12, y, { width: inner, lineGap: leading(desk) });
    y += heights[index] ?? 0;
  });
  document.y = top + height + 10 * scale;
  document.x = frame.margin;
}

/** Numbers side by side, as large as the widest of them allows, each with what it is. */
function setFigures(desk: Desk, figures: Extract<Block, { kind: 'figures' }>['figures']): void {
  const { document, scale } = desk;
  const share = widthOf(desk) / Math.max(1, figures.length);
  const room = share - 12;
  const widest = Math.max(
    ...figures.map(({ number }) => written(desk, 'bold', 19).widthOfString(printable(number))),
    1,
  );
  const size = Math.max(10, 19 * Math.min(1, room / widest));
  makeRoom(desk, 62 * scale);
  const top = document.y + 4;
  figures.forEach(({ number, says }, index) => {
    const x = frame.margin + index * share;
    written(desk, 'bold', size).text(printable(number), x, top, { width: room });
    written(desk, 'plain', 9.5)
      .fillColor(soft)
      .text(printable(says), x, top + size * 1.35 * scale, { width: room });
  });
  document.y = top + (size * 1.35 + 30) * scale;
  document.x = frame.margin;
}

function setBlanks(desk: Desk, labels: readonly string[]): void {
  const { document, scale } = desk;
  const share = widthOf(desk) / Math.max(1, labels.length);
  makeRoom(desk, 34 * scale);
  const base = document.y + 26 * scale;
  labels.forEach((label, index) => {
    const x = frame.margin + index * share;
    written(desk, 'plain', 9.5).fillColor(soft);
    const start = x + document.widthOfString(printable(label)) + 8;
    document.text(printable(label), x, base - 10 * scale, { lineBreak: false });
    document
      .lineWidth(0.8)
      .strokeColor(soft)
      .moveTo(start, base)
      .lineTo(x + share - 14, base)
      .stroke();
  });
  document.y = base + 8;
  document.x = frame.margin;
}
