import type { Line } from '#findings/reply.ts';
import type { DrawableChart } from './drawable-chart.ts';
import type { Drawing, Span } from './drawing.ts';
import type { Frame } from './frame.ts';
import { type Box, between, bottom, holdsSpot, right, type Spot } from './geometry.ts';
import { strokeDots } from './ink-map.ts';
import type { Wanted } from './label-places.ts';
import { shapes } from './label-shapes.ts';
import type { Setting } from './lettering.ts';
import { areaPlaces, curvePlaces, edgePlaces, levelPlaces, markPlaces } from './place-choices.ts';

/** A label and how it is to be set. */
export interface LabelRequest extends Wanted {
  readonly kind: 'band' | 'level' | 'mark' | Line['role'];
  readonly setting: Setting;
  readonly padding: number;
}

/** Every label with the places it could take. What has no words, or nothing to show and no direction to point in, has no label. */
export function labelRequests(
  chart: DrawableChart,
  drawing: Drawing,
  { plot, place, size }: { plot: Box; place: Frame['place']; size: number },
): readonly LabelRequest[] {
  const plain: Setting = { face: 'regular', size };
  const bold: Setting = { face: 'bold', size };
  const towards = (text: string, target: Spot, setting: Setting, padding: number) =>
    edgePlaces(target, { plot, shapes: shapes(withArrow(text, target, plot), setting, padding) });

  const marks = chart.marks.map(({ label }, index): LabelRequest => {
    const spot = drawing.marks[index] ?? [0, 0];
    const padding = 10;
    const places = holdsSpot(plot, spot)
      ? markPlaces(spot, { plot, shapes: shapes(label, plain, padding) })
      : towards(label, spot, plain, padding);
    return { kind: 'mark', setting: plain, padding, places, opaque: true };
  });
  const levels = chart.levels.map(({ label, axis }, index): LabelRequest => {
    const { at, ends } = drawing.levels[index] ?? { at: 0, ends: undefined };
    const places =
      ends === undefined
        ? towards(label, axis === 'x' ? [at, plot.top] : [right(plot), at], plain, 0)
        : levelPlaces(axis, at, { plot, shapes: shapes(label, plain, 0) });
    return { kind: 'level', setting: plain, padding: 0, places, names: `level ${index}`, opaque: false };
  });
  const lines = chart.lines.map(({ label, role, runs }, index): LabelRequest => {
    const setting = role === 'main' ? bold : plain;
    const visible = (drawing.lines[index]?.pieces ?? []).flatMap(strokeDots);
    const first = runs[0]?.[0];
    const places =
      visible.length > 0
        ? curvePlaces(visible, { plot, shapes: shapes(label, setting, 0) })
        : first === undefined
          ? []
          : towards(label, place(first), setting, 0);
    return { kind: role, setting, padding: 0, places, names: `line ${index}`, opaque: false };
  });
  const bands = chart.bands.map(({ label }, index): LabelRequest => {
    const spans = drawing.bands[index]?.spans ?? [];
    const visible = closeSpans(spans).flatMap((span) => visibleSpan(span, plot));
    const [first] = spans;
    const places =
      visible.length > 0
        ? areaPlaces(visible, { plot, shapes: shapes(label, plain, 0) })
        : first === undefined
          ? []
          : towards(label, between(...first, 0.5), plain, 0);
    return { kind: 'band', setting: plain, padding: 0, places, opaque: false };
  });
  return [...marks, ...levels, ...lines, ...bands].filter(({ places }) => places.length > 0);
}

/** A label for something off the chart points to where it would be. */
function withArrow(text: string, [x, y]: Spot, plot: Box): string {
  if (text === '') return '';
  if (x > right(plot)) return `${text} →`;
  if (x < plot.left) return `← ${text}`;
  return y < plot.top ? `↑ ${text}` : `↓ ${text}`;
}

/** The spans of an area with more put between any that lie far apart, so that a label can stand anywhere along it. */
const closeSpans = (spans: readonly Span[]): readonly Span[] =>
  spans.flatMap((span, index): readonly Span[] => {
    const before = spans[index - 1] ?? span;
    const count = Math.min(200, Math.max(1, Math.ceil(Math.abs(span[0][0] - before[0][0]) / 10)));
    return Array.from({ length: count }, (_, part): Span => {
      const share = (part + 1) / count;
      return [between(before[0], span[0], share), between(before[1], span[1], share)];
    });
  });

/** What of a span lies in the plot area. */
function visibleSpan([upper, lower]: Span, plot: Box): readonly Span[] {
  const [x] = upper;
  if (x < plot.left || x > right(plot) || lower[1] < plot.top || upper[1] > bottom(plot)) return [];
  return [
    [
      [x, Math.max(upper[1], plot.top)],
      [x, Math.min(lower[1], bottom(plot))],
    ],
  ];
}
