import PDFDocument from 'pdfkit';
import type { Paper } from '#findings/paper.ts';
import { headingsKept, setBlock } from './paper-blocks.ts';
import { type Desk, frame, ink, printable, soft, thinRule } from './paper-page.ts';
import { faceFiles } from './type-face.ts';

/** How large the type is against the usual, the largest first, where a paper must stay on one page. */
const scales = [1, 0.9, 0.8, 0.75] as const;

/** Sets a paper as PDF. The same paper makes the same bytes. */
export function paperPdf(paper: Paper): Promise<Uint8Array> {
  const desk = paper.onePage ? setOnOnePage(paper) : setPaper(paper, 1);
  setFeet(desk, paper.foot);
  const bytes = collected(desk.document);
  desk.document.end();
  return bytes;
}

/** What does not fit in the smallest type goes on over a second page: nothing is left out. */
function setOnOnePage(paper: Paper): Desk {
  const [largest, ...smaller] = scales;
  let desk = setPaper(paper, largest);
  for (const scale of smaller) {
    if (desk.document.bufferedPageRange().count === 1) break;
    desk = setPaper(paper, scale);
  }
  return desk;
}

function setPaper(paper: Paper, scale: number): Desk {
  const document = new PDFDocument({
    size: 'LETTER',
    margin: frame.margin,
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
  const desk = { document, scale };
  document
    .font('bold')
    .fontSize(20 * scale)
    .fillColor(ink)
    .text(printable(paper.title));
  if (paper.under) {
    document
      .moveDown(0.2)
      .font('plain')
      .fontSize(10 * scale)
      .fillColor(soft)
      .text(printable(paper.under));
  }
  document.moveDown(0.5);
  thinRule(desk);
  document.moveDown(0.6);
  for (const block of headingsKept(paper.blocks)) setBlock(desk, block);
  return desk;
}

function collected(document: Desk['document']): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', () => resolve(Buffer.concat(chunks)));
    document.on('error', reject);
  });
}

/** The foot of every page, once all pages are known. */
function setFeet({ document }: Desk, foot: string): void {
  const { start, count } = document.bufferedPageRange();
  const width = document.page.width - 2 * frame.margin;
  for (let index = 0; index < count; index += 1) {
    document.switchToPage(start + index);
    // The foot stands inside the margin, where text would start a new page by itself.
    document.page.margins.bottom = 0;
    const y = document.page.height - frame.margin + 8;
    document.font('plain').fontSize(8).fillColor(soft);
    document.text(printable(foot), frame.margin, y, { width: width - 50, lineBreak: false, ellipsis: true });
    document.text(`${index + 1} / ${count}`, frame.margin, y, { width, align: 'right', lineBreak: false });
  }
}
