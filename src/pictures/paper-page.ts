/** A4 would leave a strip on letter paper and the other way round; letter is what the crews' printers hold. */
export const frame = { margin: 54, foot: 20 } as const;
export const ink = '#1d2b33';
export const soft = '#51626b';
const rule = '#c9d2d6';

/** A page being set: the document with its pen, and how large the type is against the usual. */
export interface Desk {
  readonly document: PDFKit.PDFDocument;
  readonly scale: number;
}

/** What a printer or a phone can draw: no control characters, no characters the font lacks a place for. */
export const printable = (text: string): string =>
  [...text.normalize('NFC')]
    .filter((character) => character >= ' ' && character !== '\u007f')
    .join('')
    // A number and its unit stay on one line.
    .replace(/(?<=\d) (?=[\p{L}%°])/gu, '\u00a0');

export const widthOf = ({ document }: Desk): number => document.page.width - 2 * frame.margin;

/** Starts a new page where what comes next would not fit on this one. True when it did. */
export function makeRoom({ document }: Desk, height: number): boolean {
  const fits = document.y + height <= document.page.height - frame.margin - frame.foot;
  if (!fits && document.y > frame.margin) document.addPage();
  return !fits;
}

export function thinRule(desk: Desk): void {
  const { document } = desk;
  document.lineWidth(0.6).strokeColor(rule);
  document
    .moveTo(frame.margin, document.y)
    .lineTo(frame.margin + widthOf(desk), document.y)
    .stroke();
}
