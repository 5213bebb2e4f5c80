import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Paper } from '#findings/paper.ts';
import { chartPng } from '#pictures/chart-png.ts';
import { paperPdf } from '#pictures/paper-pdf.ts';
import { drawnHouse, madeFrom, pictureFolder, sourceSum, sum } from './drawn-house.ts';

// `npm run pictures` makes the pictures of the README anew from the demo house.

/** Pixels: sharp enough on a page of text, and small files. */
const width = 900;
const pageWidth = 700;

/** The first page of a paper as PNG. Turning pages into pictures takes pdftoppm, a program of its own. */
async function pagePng(paper: Paper): Promise<Uint8Array> {
  const folder = mkdtempSync(join(tmpdir(), 'fanwright-page-'));
  try {
    writeFileSync(join(folder, 'page.pdf'), await paperPdf(paper));
    const size = ['-scale-to-x', String(pageWidth), '-scale-to-y', '-1'];
    execFileSync('pdftoppm', ['-png', '-gray', '-singlefile', ...size, 'page.pdf', 'page'], { cwd: folder });
    return readFileSync(join(folder, 'page.png'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

mkdirSync(pictureFolder, { recursive: true });
const sums: Record<string, { readonly source: string; readonly picture: string }> = {};
for (const [name, drawn] of Object.entries(drawnHouse())) {
  const bytes = 'chart' in drawn ? await chartPng(drawn.chart, { width }) : await pagePng(drawn.paper);
  writeFileSync(join(pictureFolder, name), bytes);
  sums[name] = { source: sourceSum(drawn), picture: sum(bytes) };
  process.stdout.write(`${name}: ${Math.round(bytes.length / 1024)} kB\n`);
}
writeFileSync(join(pictureFolder, madeFrom), `${JSON.stringify(sums, null, 2)}\n`);
