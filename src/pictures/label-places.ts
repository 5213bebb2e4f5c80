import { cheapestSet, type Options } from './cheapest-set.ts';
import {
  around,
  type Box,
  between,
  centre,
  distance,
  gapBetween,
  grown,
  type Spot,
  segmentMeets,
  segmentsCross,
  sharedArea,
  spotsAlong,
} from './geometry.ts';
import { type InkMap, inkMap, type Stroke } from './ink-map.ts';

/** A place a label could take. */
export interface Place {
  readonly box: Box;
  readonly words: readonly string[];
  readonly align: 'start' | 'middle' | 'end';
  /** A thin line from what is named to its label, when they do not touch. */
  readonly leader?: readonly [from: Spot, to: Spot];
  /** What the place costs before looking at its surroundings. */
  readonly reluctance: number;
}

export interface Wanted {
  /** At least one. */
  readonly places: readonly Place[];
  /** The stroke this label names, which it may be close to. */
  readonly names?: string;
  /** True for a label on an opaque box, which hides what is under it whole. */
  readonly opaque: boolean;
}

export interface Surroundings {
  readonly plot: Box;
  readonly strokes: readonly Stroke[];
  /** Rings of marks, which no label may cover. */
  readonly rings: readonly Box[];
}

export interface Settled {
  /** One place for each label wanted, in the same order. */
  readonly places: readonly Place[];
  /** What they hide and confuse together. */
  readonly total: number;
}

/** Space kept between labels, and between a label and the ink beside it. Ink is counted in cells, so this one is small. */
const air = 7;
const airFromInk = 3;
/** Labels nearer than this are taken for one sentence. */
const elbow = 30;
/** A label nearer than this to another curve could be taken for that one's. */
const nearAnother = 20;

/** Costs are in dots of line hidden, the harm everything else is weighed against. */
const cost = {
  perDotHidden: 1,
  opaqueTimes: 2,
  ringHidden: 200,
  besideAnother: 14,
  acrossAnother: 30,
  leaderCrossesStroke: 10,
  leaderStartsOnAnother: 12,
  leaderStartsAtRing: 12,
  perLeaderPixel: 0.06,
  overlap: 1000,
  elbowRoom: 6,
  leaderUnderLabel: 300,
  leadersCross: 200,
} as const;

/** Chooses one place for every label, so that together they hide and confuse as little as possible. */
export function labelPlaces(wanted: readonly Wanted[], surroundings: Surroundings): Settled {
  const ink = inkMap(surroundings.plot, surroundings.strokes);
  const { chosen, total } = cheapestSet(
    wanted.map((label) => bestApart(label.places, (place) => costAlone(place, label, surroundings, ink))),
    costTogether,
  );
  return { places: chosen, total };
}

const mostOptions = 70;
const nearlySame = 36;

/** The cheapest places by themselves, no two of them nearly the same: the choice worth searching. */
function bestApart(places: readonly Place[], price: (place: Place) => number): Options<Place> {
  const kept = new Map<number, { readonly option: Place; readonly alone: number }>();
  const priced = places.map((option) => ({ option, alone: price(option) })).sort((a, b) => a.alone - b.alone);
  for (const entry of priced) {
    const [x, y] = centre(entry.option.box);
    const key = (Math.round(x / nearlySame) * 100 + Math.round(y / nearlySame)) * 10 + entry.option.words.length;
    if (!kept.has(key)) kept.set(key, entry);
    if (kept.size === mostOptions) break;
  }
  return [...kept.values()];
}

function costAlone(place: Place, label: Wanted, { rings }: Surroundings, ink: InkMap): number {
  const hidden = ink.all(grown(place.box, airFromInk)) * cost.perDotHidden * (label.opaque ? cost.opaqueTimes : 1);
  let total = place.reluctance + hidden;
  for (const ring of rings) if (sharedArea(ring, place.box) > 0) total += cost.ringHidden;
  if (place.leader !== undefined) return total + costOfLeader(place.leader, label, rings, ink);
  if (label.names === undefined || otherInk(ink, label, grown(place.box, nearAnother)) === 0) return total;
  return total + (otherInk(ink, label, place.box) > 0 ? cost.acrossAnother : cost.besideAnother);
}

/** Ink in a box that is not of the stroke the label names. */
const otherInk = (ink: InkMap, { names }: Wanted, box: Box): number =>
  ink.all(box) - (names === undefined ? 0 : ink.of(names, box));

function costOfLeader([from, to]: readonly [Spot, Spot], label: Wanted, rings: readonly Box[], ink: InkMap): number {
  const length = distance(from, to);
  const run = spotsAlong([between(from, to, Math.min(1, 18 / length)), to], 8);
  let total = length * cost.perLeaderPixel;
  for (const spot of run) if (ink.all(around(spot, 3)) > 0) total += cost.leaderCrossesStroke;
  for (const ring of rings) {
    const ownRing = label.opaque && sharedArea(ring, around(from, 1)) > 0;
    if (!ownRing && run.some((spot) => sharedArea(ring, around(spot, 1)) > 0)) total += cost.ringHidden;
  }
  // A mark may well sit where curves meet; the leader of a curve or an area must not start where something else is.
  if (label.opaque) return total;
  if (otherInk(ink, label, around(from, 12)) > 0) total += cost.leaderStartsOnAnother;
  if (rings.some((ring) => gapBetween(ring, around(from, 0)) < 30)) total += cost.leaderStartsAtRing;
  return total;
}

function costTogether(a: Place, b: Place): number {
  let total = 0;
  const gap = gapBetween(a.box, b.box);
  if (gap < elbow) total += cost.elbowRoom;
  if (gap < air) total += cost.overlap + sharedArea(grown(a.box, air), b.box) / 10;
  if (a.leader !== undefined && segmentMeets(a.leader, b.box, air)) total += cost.leaderUnderLabel;
  if (b.leader !== undefined && segmentMeets(b.leader, a.box, air)) total += cost.leaderUnderLabel;
  if (a.leader !== undefined && b.leader !== undefined && segmentsCross(a.leader, b.leader)) total += cost.leadersCross;
  return total;
}
