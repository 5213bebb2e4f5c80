import { type Metres, metres, type Ratio } from '#quantity/units.ts';
import { circumference } from './round-duct.ts';
import { wholePieces } from './whole-pieces.ts';

/** One taped joint around a duct. */
export interface TapedJoint {
  /** Outside diameter of what is taped. */
  readonly diameter: Metres;
  /** Times around. */
  readonly wraps: number;
  /** How far the end goes past the start. */
  readonly endLap: Metres;
}

/**
 * The tape one joint takes.
 *
 * L = wraps × π D + lap
 *
 * Lengths in m.
 *
 * @source own working: geometry, with common practice for the wraps and the lap
 */
export function jointTape({ diameter, wraps, endLap }: TapedJoint): Metres {
  return metres(wraps * circumference(diameter) + endLap);
}

/** A band along the duct that is covered by turns of tape side by side. */
export interface TapedBand {
  readonly diameter: Metres;
  /** Length of duct to cover. */
  readonly band: Metres;
  readonly tapeWidth: Metres;
  /** The share of each turn that the next one covers; below 1. */
  readonly overlap: Ratio;
}

/**
 * The tape it takes to cover a band of duct by turns that overlap.
 *
 * n = ⌈(band − w) / (w (1 − overlap))⌉ + 1,  L = n π D
 *
 * Lengths in m, w the width of the tape. At least one turn.
 *
 * @source own working: geometry
 */
export function bandTape({ diameter, band, tapeWidth, overlap }: TapedBand): Metres {
  const turns = Math.max(0, wholePieces(band - tapeWidth, tapeWidth * (1 - overlap))) + 1;
  return metres(turns * circumference(diameter));
}

/**
 * What to order, with an allowance for waste.
 *
 * ordered = total × (1 + waste)
 *
 * @source common practice, no source
 */
export function withWaste(total: Metres, waste: Ratio): Metres {
  return metres(total * (1 + waste));
}
