import type { UnitSystem } from '#interview/question.ts';
import { type Metres, metres } from '#quantity/units.ts';

const halfFoot = 0.1524;
const tenth = 0.1;

/** A longest length, told on the short side to half a foot or a tenth of a metre: the band around it is far wider than that. */
export function onTheShortSide(length: Metres, units: UnitSystem): Metres {
  const step = units === 'metric' ? tenth : halfFoot;
  return metres(Math.max(1, Math.floor(length / step + 1e-9)) * step);
}
