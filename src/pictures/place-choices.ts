import type { Span } from './drawing.ts';
import {
  type Box,
  between,
  bottom,
  centre,
  distance,
  grown,
  isWithin,
  nearestSpot,
  right,
  type Spot,
} from './geometry.ts';
import type { Place } from './label-places.ts';
import type { Shape } from './label-shapes.ts';

/** Labels keep this far inside the plot area. */
const inset = 5;

const inPlot = (places: readonly Place[], plot: Box): readonly Place[] =>
  places.filter(({ box }) => isWithin(box, grown(plot, -inset)));

interface Labelled {
  readonly shapes: readonly Shape[];
  readonly plot: Box;
}

/** Two lines are nearly as good as one; more are hard to take in at a glance. */
const extraLine = (words: readonly string[]): number => (words.length - 1) ** 2 * 4;

/** Places for the label of a curve: touching it if they can, at the end of a leader if they must. */
export function curvePlaces(visible: readonly Spot[], { shapes, plot }: Labelled): readonly Place[] {
  const anchors = spread(visible, 30);
  const outline = visible.filter((_, index) => index % 2 === 0 || index === visible.length - 1);
  const touching = shapes.flatMap((shape) =>
    anchors.flatMap((anchor) =>
      hugging(outline, anchor, shape).map(
        ({ box, align }): Place => ({ box, align, words: shape.words, reluctance: extraLine(shape.words) }),
      ),
    ),
  );
  const led = shapes.flatMap((shape) =>
    anchors
      .filter((_, index) => index % 3 === 0)
      .flatMap((anchor) => ledPlaces(anchor, shape, { gaps: [50, 90, 140], reluctance: 14 })),
  );
  return inPlot([...touching, ...led], plot);
}

const hugGap = 10;

/** Boxes that just clear the curve near an anchor: above, below, to its left and right, each slid three ways. */
function hugging(
  visible: readonly Spot[],
  [x, y]: Spot,
  { width, height }: Shape,
): readonly { readonly box: Box; readonly align: Place['align'] }[] {
  return ([0, 0.5, 1] as const).flatMap((slide) => {
    const left = x - width * slide;
    const [highest, lowest] = extent(visible, 1, { from: left, to: left + width });
    const top = y - height * slide;
    const [leftmost, rightmost] = extent(visible, 0, { from: top, to: top + height });
    const align = slide === 0 ? 'start' : slide === 1 ? 'end' : 'middle';
    return [
      { box: { left, top: highest - hugGap - height, width, height }, align },
      { box: { left, top: lowest + hugGap, width, height }, align },
      { box: { left: leftmost - hugGap - width, top, width, height }, align: 'end' },
      { box: { left: rightmost + hugGap, top, width, height }, align: 'start' },
    ] as const;
  });
}

/** The least and greatest reach along one axis (0 across, 1 down) of the spots within a range of the other. */
function extent(spots: readonly Spot[], axis: 0 | 1, range: { readonly from: number; readonly to: number }) {
  const other = axis === 0 ? 1 : 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const spot of spots) {
    if (spot[other] < range.from - hugGap || spot[other] > range.to + hugGap) continue;
    low = Math.min(low, spot[axis]);
    high = Math.max(high, spot[axis]);
  }
  return [low, high] as const;
}

/** Places at the end of a leader: beside, above and below a spot, and off its corners, at several distances. */
function ledPlaces(
  at: Spot,
  shape: Shape,
  { gaps, reluctance }: { gaps: readonly number[]; reluctance: number },
): readonly Place[] {
  const { width, height } = shape;
  const [x, y] = at;
  return gaps.flatMap((gap) => {
    const offCorners = [Math.PI / 6, Math.PI / 3].flatMap((angle) => {
      const [across, up] = [gap * Math.cos(angle), gap * Math.sin(angle)];
      return [y - up - height, y + up].flatMap((top) => [
        { left: x + across, top, align: 'start' } as const,
        { left: x - across - width, top, align: 'end' } as const,
      ]);
    });
    const overAndUnder = [0.15, 0.5, 0.85].flatMap((slide) =>
      [y - gap - height, y + gap].map((top) => ({ left: x - width * slide, top, align: 'middle' }) as const),
    );
    const boxes = [
      { left: x + gap, top: y - height / 2, align: 'start' } as const,
      { left: x - gap - width, top: y - height / 2, align: 'end' } as const,
      ...overAndUnder,
      ...offCorners,
    ];
    return boxes.map(({ left, top, align }): Place => {
      const box: Box = { left, top, width, height };
      return {
        box,
        align,
        words: shape.words,
        reluctance: reluctance + extraLine(shape.words),
        leader: [at, nearestSpot(box, at)],
      };
    });
  });
}

/** Places for the label box of a mark: around it, at the end of a leader. */
export const markPlaces = (at: Spot, { shapes, plot }: Labelled): readonly Place[] =>
  inPlot(
    shapes.flatMap((shape) => ledPlaces(at, shape, { gaps: [40, 60, 90, 130, 180, 240, 320], reluctance: 0 })),
    plot,
  ).map((place) => ({ ...place, align: 'start' }));

/** Places for the label of a straight line across the chart: along either side of it. */
export function levelPlaces(axis: 'x' | 'y', at: number, { shapes, plot }: Labelled): readonly Place[] {
  const shares = Array.from({ length: 25 }, (_, index) => index / 24);
  const upright = axis === 'x';
  return inPlot(
    shapes.flatMap(({ words, width, height }) =>
      shares.flatMap((share) =>
        [-1, 1].map((side): Place => {
          const box = upright
            ? {
                left: side > 0 ? at + 12 : at - 12 - width,
                top: plot.top + inset + (plot.height - height - 2 * inset) * share,
              }
            : {
                left: plot.left + inset + (plot.width - width - 2 * inset) * share,
                top: side > 0 ? at + 8 : at - 8 - height,
              };
          return {
            box: { ...box, width, height },
            words,
            align: (upright ? side > 0 : share < 0.5) ? 'start' : 'end',
            // Read first at the top of an upright line and at the right-hand end of a level one.
            reluctance: extraLine(words) + 1.5 * (upright ? share : 1 - share),
          };
        }),
      ),
    ),
    plot,
  );
}

/** Places for the label of an area: inside it where it is roomy, otherwise at the end of a leader. */
export function areaPlaces(spans: readonly Span[], labelled: Labelled): readonly Place[] {
  const { shapes, plot } = labelled;
  const within = (box: Box) =>
    [box.left, centre(box)[0], right(box)].every((x) => {
      const span = spans.reduce<Span | undefined>(
        (best, next) => (best === undefined || Math.abs(next[0][0] - x) < Math.abs(best[0][0] - x) ? next : best),
        undefined,
      );
      return span !== undefined && Math.abs(span[0][0] - x) < 20 && span[0][1] <= box.top && span[1][1] >= bottom(box);
    });
  const middles = spread(
    spans.map((span) => acrossSpan(span, 0.5)),
    24,
  );
  const inside = middles.flatMap(([x, y]) =>
    shapes.map(
      (shape): Place => ({
        box: { left: x - shape.width / 2, top: y - shape.height / 2, width: shape.width, height: shape.height },
        words: shape.words,
        align: 'middle',
        reluctance: extraLine(shape.words),
      }),
    ),
  );
  const feet = [0.25, 0.75].flatMap((share) =>
    spread(
      spans.map((span) => acrossSpan(span, share)),
      14,
    ),
  );
  const outside = shapes.flatMap((shape) =>
    feet.flatMap((foot) => ledPlaces(foot, shape, { gaps: [40, 80, 130, 190], reluctance: 6 })),
  );
  return inPlot([...inside.filter(({ box }) => within(box)), ...outside], plot);
}

const acrossSpan = ([upper, lower]: Span, share: number): Spot => between(upper, lower, share);

/** Places for the label of something off the chart: against the edge it lies beyond. */
export function edgePlaces(target: Spot, { shapes, plot }: Labelled): readonly Place[] {
  const room = grown(plot, -inset - 3);
  return shapes.flatMap((shape) => {
    const [x, y] = nearestSpot(room, target);
    return [0, 40, -40, 90, -90, 150, -150, 220, -220].map((slide): Place => {
      const sideways = target[0] < plot.left || target[0] > right(plot);
      const wish = {
        left: x - shape.width / 2 + (sideways ? 0 : slide),
        top: y - shape.height / 2 + (sideways ? slide : 0),
      };
      const box: Box = {
        left: Math.max(room.left, Math.min(wish.left, right(room) - shape.width)),
        top: Math.max(room.top, Math.min(wish.top, bottom(room) - shape.height)),
        width: shape.width,
        height: shape.height,
      };
      return {
        box,
        words: shape.words,
        align: target[0] > right(plot) ? 'end' : target[0] < plot.left ? 'start' : 'middle',
        reluctance: extraLine(shape.words) + Math.abs(slide) / 20,
      };
    });
  });
}

/** About `count` spots spread evenly by distance along the visible spots. */
function spread(spots: readonly Spot[], count: number): readonly Spot[] {
  const lengths = spots.map((spot, index) => distance(spots[index - 1] ?? spot, spot));
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  const found: Spot[] = [];
  let travelled = 0;
  for (const [index, spot] of spots.entries()) {
    travelled += lengths[index] ?? 0;
    if (travelled >= (whole * found.length) / count || index === spots.length - 1) found.push(spot);
  }
  return found;
}
