import { area, line } from 'd3-shape';
import type { Chart, Line } from '#findings/reply.ts';
import { type ChartLayout, chartLayout, type PlacedLabel, ringRadius } from './chart-layout.ts';
import type { DrawnBand } from './drawing.ts';
import { axisSetting, type Lettering, pictureSize, titleSetting } from './frame.ts';
import { between, bottom, distance, right, type Spot } from './geometry.ts';
import { lineSpacing } from './lettering.ts';
import { faceFamily } from './type-face.ts';

export const ink = {
  text: '#1f2a33',
  soft: '#4a555d',
  grid: '#e4e8ea',
  axis: '#4a555d',
  paper: '#ffffff',
  level: '#2d6a4f',
} as const;

/** Weight and dash tell the roles apart in black and white; colour only helps. */
const strokes: Record<Line['role'], { readonly colour: string; readonly width: number; readonly dash?: string }> = {
  main: { colour: '#14507a', width: 9 },
  other: { colour: '#66717a', width: 4 },
  system: { colour: '#7d5212', width: 6, dash: '24 15' },
  limit: { colour: '#9c2f26', width: 7, dash: '0.1 15' },
  guess: { colour: '#14507a', width: 6, dash: '8 12' },
};
const levelDash = '34 9 4 9';

const linePath = line<Spot>().digits(1);
const areaPath = area<readonly [Spot, Spot]>(
  ([upper]) => upper[0],
  ([, lower]) => lower[1],
  ([upper]) => upper[1],
).digits(1);

/**
 * The chart as a whole SVG picture on white, 1200 by 800 pixels, needing nothing outside itself but the face its text is
 * set in. The same chart always gives the same text.
 */
export function chartSvg(chart: Chart): string {
  const layout = chartLayout(chart);
  const { frame } = layout;
  const { width, height } = pictureSize;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" font-family="${faceFamily}">`,
    `<title>${escaped(frame.title.map(({ words }) => words).join(' '))}</title>`,
    `<desc>${escaped(layout.alt)}</desc>`,
    '<defs>',
    `<clipPath id="plot">${rectangle(frame.plot)}</clipPath>`,
    ...layout.bands.map((_, index) => hatch(index)),
    '</defs>',
    `<rect width="${width}" height="${height}" fill="${ink.paper}"/>`,
    grid(layout),
    '<g clip-path="url(#plot)">',
    ...layout.bands.map(bandShape),
    ...layout.levels.map(
      (ends) =>
        `<path d="${linePath([...ends]) ?? ''}" fill="none" stroke="${ink.level}" stroke-width="5" stroke-dasharray="${levelDash}"/>`,
    ),
    ...inDrawingOrder(layout.lines).flatMap(({ role, pieces }) => pieces.map((piece) => lineShape(role, piece))),
    '</g>',
    axes(layout),
    ...layout.labels.map(leaderShape),
    ...layout.marks.map(ringShape),
    ...layout.labels.map(labelShape),
    '</svg>',
  ]
    .filter((part) => part !== '')
    .join('\n');
}

const drawingOrder: Record<Line['role'], number> = { guess: 0, other: 1, limit: 2, system: 3, main: 4 };

const inDrawingOrder = (lines: ChartLayout['lines']): ChartLayout['lines'] =>
  [...lines].sort((a, b) => drawingOrder[a.role] - drawingOrder[b.role]);

function lineShape(role: Line['role'], piece: readonly Spot[]): string {
  const { colour, width, dash } = strokes[role];
  const [only] = piece;
  if (only !== undefined && piece.length === 1) {
    return `<circle cx="${tenths(only[0])}" cy="${tenths(only[1])}" r="${width}" fill="${colour}"/>`;
  }
  const caps = role === 'system' || role === 'guess' ? 'butt' : 'round';
  const dashes = dash === undefined ? '' : ` stroke-dasharray="${dash}"`;
  return `<path class="${role}" d="${linePath([...piece]) ?? ''}" fill="none" stroke="${colour}" stroke-width="${width}" stroke-linecap="${caps}" stroke-linejoin="round"${dashes}/>`;
}

/** A light tint with thin hatching, leaning the other way for every second area, so that areas survive a grey printer. */
function hatch(index: number): string {
  const turn = index % 2 === 0 ? 45 : -45;
  return [
    `<pattern id="hatch${index}" width="16" height="16" patternUnits="userSpaceOnUse" patternTransform="rotate(${turn})">`,
    '<rect width="16" height="16" fill="#f1f3f2"/><path d="M0,0V16" stroke="#c9d0d0" stroke-width="4"/></pattern>',
  ].join('');
}

const bandShape = ({ spans }: DrawnBand, index: number): string =>
  spans.length === 0
    ? ''
    : `<path class="band" d="${areaPath([...spans]) ?? ''}" fill="url(#hatch${index})" stroke="#aab4b6" stroke-width="2"/>`;

function grid({ frame: { plot, grid: lines } }: ChartLayout): string {
  const across = lines.y.map((y) => `M${tenths(plot.left)},${tenths(y)}H${tenths(right(plot))}`);
  const upright = lines.x.map((x) => `M${tenths(x)},${tenths(plot.top)}V${tenths(bottom(plot))}`);
  return `<path class="grid" d="${[...across, ...upright].join('')}" stroke="${ink.grid}" stroke-width="2"/>`;
}

function axes({ frame }: ChartLayout): string {
  const { plot } = frame;
  const corner = `M${tenths(plot.left)},${tenths(plot.top)}V${tenths(bottom(plot))}H${tenths(right(plot))}`;
  return [
    `<path class="axes" d="${corner}" fill="none" stroke="${ink.axis}" stroke-width="3"/>`,
    ...frame.title.map((part) =>
      lettering(part, `font-size="${titleSetting.size}" font-weight="700" fill="${ink.text}"`),
    ),
    ...[...frame.axisLabels, ...frame.numbers].map((part) =>
      lettering(part, `font-size="${axisSetting.size}" fill="${ink.soft}"`),
    ),
  ].join('\n');
}

export const lettering = ({ words, at: [x, y], anchor }: Lettering, style: string): string =>
  `<text x="${tenths(x)}" y="${tenths(y)}" text-anchor="${anchor}" ${style}>${escaped(words)}</text>`;

const ringShape = ([x, y]: Spot): string =>
  `<g class="mark"><circle cx="${tenths(x)}" cy="${tenths(y)}" r="${ringRadius}" fill="${ink.paper}" stroke="${ink.text}" stroke-width="5"/><circle cx="${tenths(x)}" cy="${tenths(y)}" r="5" fill="${ink.text}"/></g>`;

/** A leader stops short of the line it points at, so that it is not taken for part of the curve. */
function leaderShape({ leader, kind }: PlacedLabel): string {
  if (leader === undefined) return '';
  const [from, to] = leader;
  const start = kind === 'mark' ? from : between(from, to, Math.min(1, 4 / Math.max(distance(from, to), 4)));
  const dot =
    kind === 'band' ? `<circle cx="${tenths(from[0])}" cy="${tenths(from[1])}" r="5" fill="${ink.soft}"/>` : '';
  return `<path class="leader" d="${linePath([start, to]) ?? ''}" fill="none" stroke="${ink.soft}" stroke-width="2.5"/>${dot}`;
}

const labelColour = (kind: PlacedLabel['kind']): string => {
  if (kind === 'mark') return ink.text;
  if (kind === 'band') return ink.soft;
  return kind === 'level' ? ink.level : strokes[kind].colour;
};

function labelShape({ box, words, align, kind, setting, padding }: PlacedLabel): string {
  const x = align === 'start' ? box.left + padding : align === 'end' ? right(box) - padding : box.left + box.width / 2;
  const frameBox =
    kind === 'mark' ? `<rect ${edges(box)} rx="6" fill="${ink.paper}" stroke="${ink.text}" stroke-width="2.5"/>` : '';
  const halo =
    kind === 'mark' ? '' : ` stroke="${ink.paper}" stroke-width="9" stroke-linejoin="round" paint-order="stroke"`;
  const style = `font-size="${setting.size}"${setting.face === 'bold' ? ' font-weight="700"' : ''} fill="${labelColour(kind)}"${halo}`;
  const lines = words.map((line, index) =>
    lettering(
      { words: line, at: [x, box.top + padding + (index * lineSpacing + 0.95) * setting.size], anchor: align },
      style,
    ),
  );
  return `<g class="label ${kind}">${frameBox}${lines.join('')}</g>`;
}

const edges = ({ left, top, width, height }: { left: number; top: number; width: number; height: number }): string =>
  `x="${tenths(left)}" y="${tenths(top)}" width="${tenths(width)}" height="${tenths(height)}"`;

const rectangle = (box: { left: number; top: number; width: number; height: number }): string =>
  `<rect ${edges(box)}/>`;

const tenths = (pixels: number): string => String(Math.round(pixels * 10) / 10);

const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;' };

export const escaped = (text: string): string => text.replace(/[&<>"']/g, (character) => entities[character] ?? '');
