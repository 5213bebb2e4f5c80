import type { Chart } from '#findings/reply.ts';
import { type DrawableChart, drawableChart } from './drawable-chart.ts';
import { type Drawing, type DrawnBand, type DrawnLine, drawing } from './drawing.ts';
import { type Frame, frame } from './frame.ts';
import { around, holdsSpot, type Spot } from './geometry.ts';
import { strokeDots } from './ink-map.ts';
import { labelPlaces, type Place, type Surroundings } from './label-places.ts';
import { type LabelRequest, labelRequests } from './label-requests.ts';
import { drawableText } from './lettering.ts';

/** A label with the place it got and the way it is set. */
export type PlacedLabel = Place & Pick<LabelRequest, 'kind' | 'setting' | 'padding'>;

/** A chart worked out to the pixel and not yet written as a picture. */
export interface ChartLayout {
  readonly frame: Frame;
  readonly alt: string;
  readonly bands: readonly DrawnBand[];
  /** The level lines that lie on the chart, from end to end. */
  readonly levels: readonly (readonly [Spot, Spot])[];
  readonly lines: readonly DrawnLine[];
  /** The marks that lie on the chart. */
  readonly marks: readonly Spot[];
  readonly labels: readonly PlacedLabel[];
}

export const ringRadius = 15;

/** Label sizes, largest first, each with the harm it must save over the largest to be worth its smaller letters. */
const labelSizes = [
  { size: 34, price: 0 },
  { size: 30, price: 50 },
  { size: 26, price: 150 },
] as const;

/** Below this much harm the letters are not made smaller still. */
const uncrowded = 150;

/** Works out where everything in a chart goes. The same chart always gives the same layout. */
export function chartLayout(chart: Chart): ChartLayout {
  const drawable = drawableChart(chart, drawableText);
  const paper = frame(drawable);
  const drawn = drawing(drawable, paper);
  const marks = drawn.marks.filter((spot) => holdsSpot(paper.plot, spot));
  const surroundings: Surroundings = {
    plot: paper.plot,
    strokes: strokes(drawn),
    rings: marks.map((spot) => around(spot, ringRadius + 5)),
  };
  return {
    frame: paper,
    alt: drawable.alt,
    bands: drawn.bands,
    levels: drawn.levels.flatMap(({ ends }) => (ends === undefined ? [] : [ends])),
    lines: drawn.lines,
    marks,
    labels: placedLabels(drawable, { drawn, paper, surroundings }),
  };
}

/** Curves and level lines under the names their labels go by. Hiding the main curve is the worst. */
const strokes = ({ lines, levels }: Drawing): Surroundings['strokes'] => [
  ...lines.map(({ role, pieces }, index) => ({
    id: `line ${index}`,
    weight: role === 'main' ? 2 : 1,
    dots: pieces.flatMap(strokeDots),
  })),
  ...levels.map(({ ends }, index) => ({ id: `level ${index}`, weight: 1, dots: strokeDots(ends ?? []) })),
];

/** The labels in the size that does least harm; smaller ones are tried only where the largest crowd the chart. */
function placedLabels(
  chart: DrawableChart,
  on: { readonly drawn: Drawing; readonly paper: Frame; readonly surroundings: Surroundings },
): readonly PlacedLabel[] {
  let best: { readonly labels: readonly PlacedLabel[]; readonly harm: number } | undefined;
  for (const { size, price } of labelSizes) {
    const asked = labelRequests(chart, on.drawn, { plot: on.paper.plot, place: on.paper.place, size });
    const { places, total } = labelPlaces(asked, on.surroundings);
    const labels = asked.flatMap(({ kind, setting, padding }, index) => {
      const place = places[index];
      return place === undefined ? [] : [{ ...place, kind, setting, padding }];
    });
    if (best === undefined || total + price < best.harm) best = { labels, harm: total + price };
    if (best.harm < uncrowded) break;
  }
  return best?.labels ?? [];
}
