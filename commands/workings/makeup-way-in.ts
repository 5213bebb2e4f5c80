import { doorGapOpening } from '#engine/pressure/door-gap.ts';
import { type Opening, sharpEdgedDischargeCoefficient, sideBySide } from '#engine/pressure/orifice.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { type Metres, metres, type Ratio, type SquareMetres, squareMetres } from '#quantity/units.ts';
import type { Parameters } from './parameters.ts';

export interface DoorAnswer {
  readonly width: Estimate<Metres>;
  readonly gap: Estimate<Metres>;
}

/** What lets air into the bathroom while its door is shut. */
export interface WayIn {
  readonly door: DoorAnswer;
  /** A grille beside the gap; absent where there is none. */
  readonly grille?: { readonly face: SquareMetres; readonly freeShare: Estimate<Ratio> };
  /** A second shut door that the air has to pass as well. */
  readonly hall?: DoorAnswer;
}

/** The openings for one set of values of what is unknown. */
export interface Openings {
  /** Gap and grille as one, between bathroom and hall. */
  readonly bath: Opening;
  readonly hall: Opening | null;
  readonly doorWidth: Metres;
  /** What the grille gives beside the gap: discharge coefficient times open area, m². */
  readonly grille: number;
}

/** A way in made ready for sampling: each unknown entered once. A height given instead of the gap's own asks "what if". */
export function openingsOf(
  { door, grille, hall }: WayIn,
  parameters: Parameters,
): (values: Float64Array, gap?: Metres) => Openings {
  const width = parameters.enter({ estimate: door.width, direction: 'up', measure: () => 'the width of the door' });
  const height = parameters.enter({ estimate: door.gap, direction: 'up', measure: () => 'the gap under the door' });
  const free = grille
    ? parameters.enter({ estimate: grille.freeShare, direction: 'up', measure: () => 'how open the grille is' })
    : null;
  const hallWidth = hall ? parameters.enter({ estimate: hall.width, direction: 'up' }) : null;
  const hallHeight = hall ? parameters.enter({ estimate: hall.gap, direction: 'up' }) : null;
  return (values, gap) => {
    const doorWidth = metres(width(values));
    const slot = doorGapOpening({ width: doorWidth, height: gap ?? metres(height(values)) });
    const beside: Opening[] =
      grille && free
        ? [{ area: squareMetres(grille.face * free(values)), dischargeCoefficient: sharpEdgedDischargeCoefficient }]
        : [];
    return {
      bath: sideBySide([slot, ...beside]),
      hall:
        hallWidth && hallHeight
          ? doorGapOpening({ width: metres(hallWidth(values)), height: metres(hallHeight(values)) })
          : null,
      doorWidth,
      grille: beside.reduce((sum, { area, dischargeCoefficient }) => sum + area * dischargeCoefficient, 0),
    };
  };
}
