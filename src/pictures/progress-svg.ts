import { doneIn, type Progress, progressWords, type StepMark } from '#findings/progress.ts';
import { escaped, ink } from './chart-svg.ts';
import { pictureSize, titleSetting } from './frame.ts';
import { drawableText, lineSpacing, type Setting, textWidth, wrapped } from './lettering.ts';
import { faceFamily } from './type-face.ts';

const { width } = pictureSize;
const margin = 36;
const nameSetting: Setting = { face: 'regular', size: 34 };
const countSetting: Setting = { face: 'bold', size: 34 };
const rowHeight = 50;
const cellHeight = 34;
const nameWidth = 420;
const countWidth = 170;
const mostRemarks = 4;
const tenths = (pixels: number): string => String(Math.round(pixels * 10) / 10);

interface Words {
  readonly words: string;
  readonly x: number;
  readonly baseline: number;
  readonly setting: Setting;
  readonly anchor?: 'start' | 'end';
  readonly colour?: string;
}

const lettering = ({ words, x, baseline, setting, anchor = 'start', colour = ink.text }: Words): string =>
  `<text x="${tenths(x)}" y="${tenths(baseline)}" text-anchor="${anchor}" font-size="${setting.size}" font-weight="${setting.face === 'bold' ? 700 : 400}" fill="${colour}">${escaped(words)}</text>`;

/** Text on one line no wider than this. */
const fitted = (text: string, room: number, setting: Setting): string =>
  wrapped(drawableText(text), { width: room, lines: 1 }, setting)[0] ?? '';

interface Cell {
  readonly left: number;
  readonly top: number;
  readonly wide: number;
}

/** Each kind of step is a shape of its own, so that the picture reads without colour. */
function cellShape(mark: StepMark, { left, top, wide }: Cell): string {
  const [x, y, w, h] = [left + 1.5, top + 1.5, wide - 3, cellHeight - 3].map(tenths);
  const box = (fill: string, thick: number) =>
    `<rect class="${mark}" x="${x}" y="${y}" width="${w}" height="${h}" fill="${fill}" stroke="${ink.axis}" stroke-width="${thick}"/>`;
  const [middle, level] = [left + wide / 2, top + cellHeight / 2];
  const reach = Math.min(wide, cellHeight) / 2;
  switch (mark) {
    case 'done':
      return box('#14507a', 2);
    case 'passed':
      return box('url(#passed)', 2);
    case 'open':
      return box(ink.paper, 2);
    case 'hold':
      return `${box(ink.paper, 2)}<circle cx="${tenths(middle)}" cy="${tenths(level)}" r="${tenths(reach * 0.62)}" fill="${ink.text}"/>`;
    case 'stopped': {
      const arm = reach * 0.66;
      const [west, east, north, south] = [middle - arm, middle + arm, level - arm, level + arm].map(tenths);
      return `${box(ink.paper, 2)}<path d="M${west},${north}L${east},${south}M${west},${south}L${east},${north}" stroke="#9c2f26" stroke-width="6"/>`;
    }
  }
}

/** The kinds of step there are in this list, each drawn once with its name: as many lines as it takes. */
function keyRows(progress: Progress): readonly (readonly { readonly mark: StepMark; readonly x: number }[])[] {
  const { marks: named } = progress.words ?? progressWords;
  const present = new Set(progress.stages.flatMap(({ marks }) => marks));
  const rows: { mark: StepMark; x: number }[][] = [[]];
  let x = margin;
  for (const mark of Object.keys(named) as StepMark[]) {
    if (!present.has(mark)) continue;
    const wide = cellHeight + 12 + textWidth(named[mark], nameSetting) + 34;
    if (x + wide > width && x > margin) {
      rows.push([]);
      x = margin;
    }
    rows.at(-1)?.push({ mark, x });
    x += wide;
  }
  return rows;
}

/**
 * How far a list is: a row for each stage with a cell for each step, what the cells mean, and what is waited for. On white, 1200
 * pixels wide and as high as it needs. The same progress always gives the same text.
 */
export function progressSvg({ title, alt, progress }: { title: string; alt: string; progress: Progress }): string {
  const parts: string[] = [];
  const said = progress.words ?? progressWords;
  let y = margin;
  for (const words of wrapped(drawableText(title), { width: width - 2 * margin, lines: 2 }, titleSetting)) {
    y += titleSetting.size * lineSpacing;
    parts.push(lettering({ words, x: margin, baseline: y - 10, setting: titleSetting }));
  }
  y += 14;
  const most = Math.max(1, ...progress.stages.map(({ marks }) => marks.length));
  const wide = Math.min(cellHeight + 6, (width - 2 * margin - nameWidth - countWidth) / most);
  for (const { label, marks } of progress.stages) {
    const baseline = y + cellHeight - 6;
    const count = `${doneIn(marks)} ${said.of} ${marks.length}`;
    parts.push(
      lettering({ words: fitted(label, nameWidth - 16, nameSetting), x: margin, baseline, setting: nameSetting }),
    );
    parts.push(
      ...marks.map((mark, index) => cellShape(mark, { left: margin + nameWidth + index * wide, top: y, wide })),
      lettering({ words: count, x: width - margin, baseline, setting: countSetting, anchor: 'end' }),
    );
    y += rowHeight;
  }
  parts.push(`<path d="M${margin},${tenths(y + 2)}H${width - margin}" stroke="${ink.axis}" stroke-width="2"/>`);
  y += 20;
  for (const row of keyRows(progress)) {
    for (const { mark, x } of row) {
      parts.push(
        cellShape(mark, { left: x, top: y, wide: cellHeight }),
        lettering({
          words: said.marks[mark],
          x: x + cellHeight + 12,
          baseline: y + cellHeight - 6,
          setting: nameSetting,
          colour: ink.soft,
        }),
      );
    }
    y += rowHeight;
  }
  const shown = progress.remarks.slice(0, mostRemarks);
  const more = progress.remarks.length - shown.length;
  for (const remark of [...shown, ...(more > 0 ? [`and ${more} more`] : [])]) {
    for (const words of wrapped(drawableText(remark), { width: width - 2 * margin, lines: 2 }, nameSetting)) {
      y += nameSetting.size * lineSpacing;
      parts.push(lettering({ words, x: margin, baseline: y - 6, setting: nameSetting }));
    }
    y += 6;
  }
  const height = Math.ceil(y + margin);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" font-family="${faceFamily}">`,
    `<title>${escaped(drawableText(title))}</title>`,
    `<desc>${escaped(drawableText(alt))}</desc>`,
    '<defs><pattern id="passed" width="12" height="12" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="12" height="12" fill="#ffffff"/><path d="M0,0V12" stroke="#1f2a33" stroke-width="8"/></pattern></defs>',
    `<rect width="${width}" height="${height}" fill="${ink.paper}"/>`,
    ...parts,
    '</svg>',
  ].join('\n');
}
