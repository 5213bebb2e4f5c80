import PDFDocument from 'pdfkit';
import type { Block, Paper } from '#findings/paper.ts';
import { faceFiles } from './type-face.ts';

/** A4 would leave a strip on letter paper and the other way round; letter is what the crews' printers hold. */
const page = { size: 'LETTER', margin: 54 } as const;
const ink = '#1d2b33';
const soft = '#51626b';
const line = '#c9d2d6';

type Document = PDFKit.PDFDocument;

/** What a printer or a phone can draw: no control characters, no characters the font lacks a place for. */
const printable = (text: string): string =>
  [...text.normalize('NFC')].filter((character) => character >= ' ' && character !== '\u007f').join('');

/** Sets a paper as PDF. The same paper makes the same bytes. */
export function paperPdf(paper: Paper): Promise<Uint8Array> {
  const document = new PDFDocument({
    ...page,
    bufferPages: true,
    info: {
      Title: paper.title,
      CreationDate: paper.made,
      ModDate: paper.made,
      Producer: 'Fanwright',
      Creator: 'Fanwright',
    },
  });
  document.registerFont('plain', faceFiles().regular);
  document.registerFont('bold', faceFiles().bold);
  const bytes = collected(document);
  document.font('bold').fontSize(20).fillColor(ink).text(printable(paper.title));
  if (paper.under) document.moveDown(0.2).font('plain').fontSize(10).fillColor(soft).text(printable(paper.under));
  document.moveDown(0.6);
  for (const block of paper.blocks) setBlock(document, block);
  setFeet(document, paper.foot);
  document.end();
  return bytes;
}

function collected(document: Document): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', () => resolve(Buffer.concat(chunks)));
    document.on('error', reject);
  });
}

const width = (document: Document): number => document.page.width - 2 * page.margin;
const bottom = (document: Document): number => document.page.height - page.margin - 24;

/** Starts a new page where what comes next would not fit on this one. */
function makeRoom(document: Document, height: number): void {
  if (document.y + height > bottom(document)) document.addPage();
}

function setBlock(document: Document, block: Block): void {
  document.x = page.margin;
  switch (block.kind) {
    case 'heading':
      makeRoom(document, 48);
      document.moveDown(0.5).font('bold').fontSize(12.5).fillColor(ink).text(printable(block.text)).moveDown(0.25);
      return;
    case 'text':
      makeRoom(document, 30);
      document.font('plain').fontSize(10.5).fillColor(ink).text(printable(block.text), { lineGap: 2 }).moveDown(0.4);
      return;
    case 'list':
      for (const item of block.items) setItem(document, item);
      document.moveDown(0.3);
      return;
    case 'warning':
      setWarning(document, block);
      return;
    case 'figures':
      setFigures(document, block.figures);
      return;
    case 'table':
      setTable(document, block);
      return;
    case 'picture':
      makeRoom(document, block.height + 12);
      document.image(Buffer.from(block.png), page.margin, document.y, {
        fit: [width(document), block.height],
        align: 'center',
      });
      document.y += block.height + 8;
      return;
  }
}

function setItem(document: Document, item: string): void {
  document.font('plain').fontSize(10.5).fillColor(ink);
  const text = printable(item);
  makeRoom(document, document.heightOfString(text, { width: width(document) - 16 }) + 4);
  const { y } = document;
  document.text('–', page.margin, y, { width: 12 });
  document.text(text, page.margin + 16, y, { width: width(document) - 16, lineGap: 2 });
  document.moveDown(0.2);
  document.x = page.margin;
}

function setWarning(document: Document, { title, lines }: Extract<Block, { kind: 'warning' }>): void {
  const inner = width(document) - 24;
  document.font('plain').fontSize(10.5);
  const heights = lines.map((text) => document.heightOfString(printable(text), { width: inner, lineGap: 2 }) + 4);
  const height = heights.reduce((sum, each) => sum + each, 0) + 34;
  makeRoom(document, height + 6);
  const top = document.y + 2;
  document.lineWidth(1.6).strokeColor(ink).roundedRect(page.margin, top, width(document), height, 4).stroke();
  document
    .font('bold')
    .fontSize(11)
    .fillColor(ink)
    .text(printable(title), page.margin + 12, top + 9, { width: inner });
  document.font('plain').fontSize(10.5);
  let y = top + 27;
  lines.forEach((text, index) => {
    document.text(printable(text), page.margin + 12, y, { width: inner, lineGap: 2 });
    y += heights[index] ?? 0;
  });
  document.y = top + height + 10;
}

function setFigures(document: Document, figures: Extract<Block, { kind: 'figures' }>['figures']): void {
  makeRoom(document, 62);
  const share = width(document) / Math.max(1, figures.length);
  const top = document.y;
  figures.forEach(({ number, says }, index) => {
    const x = page.margin + index * share;
    document
      .font('bold')
      .fontSize(19)
      .fillColor(ink)
      .text(printable(number), x, top, { width: share - 10 });
    document
      .font('plain')
      .fontSize(9.5)
      .fillColor(soft)
      .text(printable(says), x, top + 25, { width: share - 10 });
  });
  document.y = top + 58;
}

function setTable(document: Document, { columns, widths, rows }: Extract<Block, { kind: 'table' }>): void {
  const full = width(document);
  const places = widths.map(
    (_, index) => page.margin + widths.slice(0, index).reduce((sum, each) => sum + each, 0) * full,
  );
  const setRow = (cells: readonly string[], font: 'plain' | 'bold', size: number) => {
    document.font(font).fontSize(size);
    const texts = cells.map(printable);
    const heights = texts.map((text, index) =>
      document.heightOfString(text, { width: (widths[index] ?? 0) * full - 8 }),
    );
    const height = Math.max(...heights) + 6;
    if (document.y + height > bottom(document)) {
      document.addPage();
      if (font === 'plain') setRow(columns, 'bold', 9);
      document.font(font).fontSize(size);
    }
    const top = document.y;
    texts.forEach((text, index) => {
      document
        .fillColor(font === 'bold' ? soft : ink)
        .text(text, places[index] ?? page.margin, top + 3, { width: (widths[index] ?? 0) * full - 8 });
    });
    document.y = top + height;
    document
      .lineWidth(0.6)
      .strokeColor(line)
      .moveTo(page.margin, document.y)
      .lineTo(page.margin + full, document.y)
      .stroke();
  };
  setRow(columns, 'bold', 9);
  for (const row of rows) setRow(row, 'plain', 9);
  document.x = page.margin;
  document.moveDown(0.6);
}

/** The foot of every page, once all pages are known. */
function setFeet(document: Document, foot: string): void {
  const { start, count } = document.bufferedPageRange();
  for (let index = 0; index < count; index += 1) {
    document.switchToPage(start + index);
    // The foot stands inside the margin, where text would start a new page by itself.
    document.page.margins.bottom = 0;
    const y = document.page.height - page.margin + 8;
    document.font('plain').fontSize(8).fillColor(soft);
    document.text(printable(foot), page.margin, y, { width: width(document) - 70, lineBreak: false, ellipsis: true });
    document.text(`${index + 1} of ${count}`, page.margin, y, {
      width: width(document),
      align: 'right',
      lineBreak: false,
    });
  }
}
