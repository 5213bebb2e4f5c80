import { meets } from '#quantity/meets.ts';
import {
  type Metres,
  metres,
  type SquareMetreKelvinsPerWatt,
  type SquareMetres,
  squareMetres,
} from '#quantity/units.ts';
import { circumference } from './round-duct.ts';

/** A blanket as it is bought, with what it is once wrapped and how much longer than the bare duct it must be cut. */
export interface DuctWrap {
  readonly nominalThickness: Metres;
  /** What to add to the bare perimeter of a round duct; closing flap included. */
  readonly stretchOutAllowance: Metres;
  /** Once wrapped, with the squeeze that wrapping gives it. */
  readonly installedResistance: SquareMetreKelvinsPerWatt;
}

/**
 * The length to cut insulation wrap to, around a round duct, so that it closes without being crushed.
 *
 * stretch-out = π D + allowance
 *
 * In m; D the bare outside diameter, the allowance by the thickness of the blanket. A cut by mid-thickness alone is short.
 *
 * @source City specification for duct insulation, stretch-out table
 */
function wrapStretchOut(diameter: Metres, allowance: Metres): Metres {
  return metres(circumference(diameter) + allowance);
}

/**
 * The wrap a length of round duct takes.
 *
 * A = stretch-out × L
 *
 * A in m², lengths in m.
 *
 * @source own working: geometry
 */
export function wrapArea({
  diameter,
  allowance,
  length,
}: {
  readonly diameter: Metres;
  readonly allowance: Metres;
  readonly length: Metres;
}): SquareMetres {
  return squareMetres(wrapStretchOut(diameter, allowance) * length);
}

export type WrapForResistance<Wrap> =
  | { readonly found: true; readonly wrap: Wrap }
  | { readonly found: false; readonly why: 'more-than-any-listed' };

/**
 * The thinnest blanket that still gives the resistance asked for once it is wrapped, squeeze and all.
 *
 * thinnest with R_installed ≥ R_asked
 *
 * m²·K/W. The number on the roll is often that of the blanket lying loose, which is more.
 *
 * @source own working
 */
export function wrapForResistance<Wrap extends DuctWrap>(
  asked: SquareMetreKelvinsPerWatt,
  wraps: readonly Wrap[],
): WrapForResistance<Wrap> {
  const [wrap] = wraps
    .filter(({ installedResistance }) => meets(installedResistance, asked))
    .toSorted((a, b) => a.nominalThickness - b.nominalThickness);
  return wrap ? { found: true, wrap } : { found: false, why: 'more-than-any-listed' };
}
