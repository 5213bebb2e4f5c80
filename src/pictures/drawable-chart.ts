import type { Axis, Band, Chart, Level, Line, Mark, Point } from '#findings/reply.ts';

/** A curve cut where its numbers are missing: a gap in the data stays a gap in the drawing. */
interface DrawableLine {
  readonly label: string;
  readonly role: Line['role'];
  readonly runs: readonly (readonly Point[])[];
}

/** A chart with nothing in it that cannot be drawn: every number finite, every axis wider than nothing, low below high. */
export interface DrawableChart {
  readonly title: string;
  readonly alt: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly lines: readonly DrawableLine[];
  readonly bands: readonly Band[];
  readonly marks: readonly Mark[];
  readonly levels: readonly Level[];
}

/** Beyond this size numbers overflow when subtracted; nothing on a job comes near it. */
const largest = 1e100;

/** The chart made safe to draw. `asText` cleans each label for its medium. */
export function drawableChart(chart: Chart, asText: (text: string) => string): DrawableChart {
  const lines = chart.lines.map(({ label, role, points }) => ({ label: asText(label), role, runs: runs(points) }));
  const bands = chart.bands.map(({ label, points }) => ({
    label: asText(label),
    points: points
      .filter((point) => point.every(isNumber))
      .map(([x, a, b]) => [x, Math.min(a, b), Math.max(a, b)] as const),
  }));
  const marks = chart.marks
    .filter(({ at }) => at.every(isNumber))
    .map(({ label, at }) => ({ label: asText(label), at }));
  const levels = chart.levels
    .filter(({ at }) => isNumber(at))
    .map(({ label, axis, at }) => ({ label: asText(label), axis, at }));
  const points = [
    ...lines.flatMap((line) => line.runs.flat()),
    ...bands.flatMap((band) =>
      band.points.flatMap(([x, low, high]): Point[] => [
        [x, low],
        [x, high],
      ]),
    ),
    ...marks.map(({ at }) => at),
  ];
  return {
    title: asText(chart.title),
    alt: asText(chart.alt),
    x: drawableAxis(
      chart.x,
      points.map(([x]) => x),
      asText,
    ),
    y: drawableAxis(
      chart.y,
      points.map(([, y]) => y),
      asText,
    ),
    lines,
    bands,
    marks,
    levels,
  };
}

const isNumber = (value: number): boolean => Math.abs(value) <= largest;

function runs(points: readonly Point[]): readonly (readonly Point[])[] {
  const found: Point[][] = [[]];
  for (const point of points) {
    if (point.every(isNumber)) found.at(-1)?.push(point);
    else found.push([]);
  }
  return found.filter((run) => run.length > 0);
}

/** The axis as asked for; from the data where an end is missing; a little wider where it has no width. */
function drawableAxis(axis: Axis, values: readonly number[], asText: (text: string) => string): Axis {
  const label = asText(axis.label);
  const asked = [axis.min, axis.max].filter(isNumber);
  const known = asked.length === 2 ? asked : [...asked, ...values];
  if (known.length === 0) return { label, min: 0, max: 1 };
  const min = known.reduce((a, b) => Math.min(a, b));
  const max = known.reduce((a, b) => Math.max(a, b));
  const size = Math.max(Math.abs(min), Math.abs(max));
  if (max - min > size * 1e-9) return { label, min, max };
  const room = size === 0 ? 1 : size / 10;
  return { label, min: min - room, max: max + room };
}
