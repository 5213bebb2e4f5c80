/** A place in the picture, in pixels, y downwards. */
export type Spot = readonly [x: number, y: number];

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export const right = (box: Box): number => box.left + box.width;
export const bottom = (box: Box): number => box.top + box.height;
export const centre = (box: Box): Spot => [box.left + box.width / 2, box.top + box.height / 2];

/** The box with `by` pixels more on every side. */
export const grown = (box: Box, by: number): Box => ({
  left: box.left - by,
  top: box.top - by,
  width: box.width + 2 * by,
  height: box.height + 2 * by,
});

/** The square reaching `by` pixels from a spot each way. */
export const around = ([x, y]: Spot, by: number): Box => ({ left: x - by, top: y - by, width: 2 * by, height: 2 * by });

/** How far apart two boxes stand, across or up and down, whichever is more; negative when they overlap. */
export const gapBetween = (a: Box, b: Box): number =>
  Math.max(b.left - a.left - a.width, a.left - b.left - b.width, b.top - a.top - a.height, a.top - b.top - b.height);

/** The area two boxes share, in square pixels. */
export function sharedArea(a: Box, b: Box): number {
  const width = Math.min(right(a), right(b)) - Math.max(a.left, b.left);
  const height = Math.min(bottom(a), bottom(b)) - Math.max(a.top, b.top);
  return width > 0 && height > 0 ? width * height : 0;
}

export const isWithin = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left && inner.top >= outer.top && right(inner) <= right(outer) && bottom(inner) <= bottom(outer);

export const holdsSpot = (box: Box, [x, y]: Spot): boolean =>
  x >= box.left && x <= right(box) && y >= box.top && y <= bottom(box);

/** The spot of the box nearest to another spot: that spot itself when it lies inside. */
export const nearestSpot = (box: Box, [x, y]: Spot): Spot => [
  Math.min(Math.max(x, box.left), right(box)),
  Math.min(Math.max(y, box.top), bottom(box)),
];

export const distance = ([ax, ay]: Spot, [bx, by]: Spot): number => Math.hypot(bx - ax, by - ay);

export const between = ([ax, ay]: Spot, [bx, by]: Spot, share: number): Spot => [
  ax + (bx - ax) * share,
  ay + (by - ay) * share,
];

/** The part of a straight segment inside a box, or undefined when it misses (Liang and Barsky's method). */
export function segmentWithin(from: Spot, to: Spot, box: Box): readonly [Spot, Spot] | undefined {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const edges: readonly (readonly [step: number, room: number])[] = [
    [-dx, from[0] - box.left],
    [dx, right(box) - from[0]],
    [-dy, from[1] - box.top],
    [dy, bottom(box) - from[1]],
  ];
  let enters = 0;
  let leaves = 1;
  for (const [step, room] of edges) {
    if (step === 0 && room < 0) return undefined;
    if (step < 0) enters = Math.max(enters, room / step);
    if (step > 0) leaves = Math.min(leaves, room / step);
  }
  return enters > leaves ? undefined : [between(from, to, enters), between(from, to, leaves)];
}

/** The pieces of a polyline that lie inside a box. A polyline of one spot is a piece of one spot. */
export function piecesWithin(spots: readonly Spot[], box: Box): readonly (readonly Spot[])[] {
  const [only] = spots;
  if (only !== undefined && spots.length === 1) return holdsSpot(box, only) ? [[only]] : [];
  const pieces: Spot[][] = [];
  let open: Spot[] | undefined;
  for (const [index, to] of spots.entries()) {
    const from = spots[index - 1];
    if (from === undefined) continue;
    const inside = segmentWithin(from, to, box);
    if (inside === undefined) {
      open = undefined;
      continue;
    }
    if (open === undefined) {
      open = [inside[0]];
      pieces.push(open);
    }
    open.push(inside[1]);
    if (!holdsSpot(box, to)) open = undefined;
  }
  return pieces;
}

/** Spots about every `step` pixels along a polyline, both ends included. */
export function spotsAlong(spots: readonly Spot[], step: number): readonly Spot[] {
  const found: Spot[] = spots.slice(0, 1);
  for (const [index, to] of spots.entries()) {
    const from = spots[index - 1];
    if (from === undefined) continue;
    const count = Math.max(1, Math.ceil(distance(from, to) / step));
    for (let part = 1; part <= count; part += 1) found.push(between(from, to, part / count));
  }
  return found;
}

/** Whether a straight segment comes within `margin` of a box. */
export function segmentMeets([[ax, ay], [bx, by]]: readonly [Spot, Spot], box: Box, margin: number): boolean {
  const [left, top] = [box.left - margin, box.top - margin];
  const [far, low] = [right(box) + margin, bottom(box) + margin];
  if ((ax < left && bx < left) || (ax > far && bx > far) || (ay < top && by < top) || (ay > low && by > low))
    return false;
  return segmentWithin([ax, ay], [bx, by], grown(box, margin)) !== undefined;
}

/** Whether two straight segments cross. */
export const segmentsCross = ([a, b]: readonly [Spot, Spot], [c, d]: readonly [Spot, Spot]): boolean =>
  side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);

/** On which side of the line from p to q the spot r lies. */
const side = (p: Spot, q: Spot, r: Spot): number =>
  Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
