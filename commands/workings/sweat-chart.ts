import { wallTemperature } from '#engine/condensation/duct-cooling.ts';
import { piecesInPlace } from '#engine/condensation/duct-pieces.ts';
import { ductProfile } from '#engine/condensation/duct-profile.ts';
import type { Chart, Point } from '#findings/reply.ts';
import type { UnitSystem } from '#interview/question.ts';
import { distance, temperature } from '#quantity/kinds.ts';
import { type Celsius, type Metres, metres } from '#quantity/units.ts';
import { alongText, atTheFan, type JudgedDuct } from './sweat-judged.ts';
import { dewPointOf } from './sweat-working.ts';

const stepsAPiece = 24;

/** The step an axis of this span is numbered in: one, two or five times a power of ten, about `count` of them. */
function numberStep(span: number, count: number): number {
  const power = 10 ** Math.floor(Math.log10(span / count));
  const rest = span / count / power;
  return power * (rest >= Math.sqrt(50) ? 10 : rest >= Math.sqrt(10) ? 5 : rest >= Math.sqrt(2) ? 2 : 1);
}

/** Ends that are numbers of the axis themselves, at or outside the ones given. */
function roundEnds(low: number, high: number, count: number): { readonly min: number; readonly max: number } {
  let [min, max] = [low, high];
  for (let round = 0; round < 3; round += 1) {
    const step = numberStep(max - min, count);
    min = Math.floor(low / step + 1e-9) * step;
    max = Math.ceil(high / step - 1e-9) * step;
  }
  return { min, max };
}

/** Wall and air temperature along the duct, against the dew point of the exhaust. */
export function sweatChart({ unsure, verdict }: JudgedDuct, units: UnitSystem): Chart {
  const { duct, pieces } = unsure.cautious;
  const across = distance.scale(units);
  const up = temperature.scale(units);
  const point = (at: number, value: Celsius): Point => [across.of(metres(at)), up.of(value)];
  const stations = piecesInPlace(duct, pieces).flatMap(({ from, duct: piece }) =>
    ductProfile(piece, stepsAPiece).map((station) => ({ ...station, at: from + station.distance })),
  );
  const dew = up.of(dewPointOf(duct));
  const values = stations.flatMap(({ air, wall }) => [up.of(air), up.of(wall)]).concat(dew);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const start = verdict.wet ? verdict.startsAt : null;
  // On the axis itself the ring would hide a number: "at the fan" is drawn a hair along, where it is wet as well.
  const drawn = start === null ? null : metres(Math.max(start, duct.length * 0.02));
  return {
    title: 'The duct’s wall against the dew point',
    x: { label: `from the fan, ${across.unit}`, ...roundEnds(0, across.of(duct.length), 10) },
    y: { label: `temperature, ${up.unit}`, ...roundEnds(low - 1, high + 1, 8) },
    lines: [
      { label: 'inside of the wall', role: 'main', points: stations.map(({ at, wall }) => point(at, wall)) },
      { label: 'air in the duct', role: 'system', points: stations.map(({ at, air }) => point(at, air)) },
    ],
    bands: [],
    marks:
      start === null || drawn === null
        ? []
        : [{ label: wetFrom(start, units), at: point(drawn, wallAt(unsure, drawn)) }],
    levels: [{ label: `dew point ${temperature.showShort(dewPointOf(duct), units)}`, axis: 'y', at: dew }],
    alt: `Chart of temperature along the duct. The dew point of the exhaust is ${temperature.showShort(dewPointOf(duct), units)}; the wall falls to ${temperature.showShort(verdict.coldestWall, units)} over ${distance.showShort(duct.length, units)}. ${start === null ? 'It stays above the dew point: the duct stays dry.' : `It sweats ${wetFrom(start, units).replace('wet ', '')} on.`}`,
  };
}

const wetFrom = (start: Metres, units: UnitSystem): string =>
  start < atTheFan ? 'wet from the fan' : `wet from ${alongText(start, units)}`;

function wallAt({ cautious: { duct, pieces } }: JudgedDuct['unsure'], start: Metres): Celsius {
  const placed = piecesInPlace(duct, pieces);
  const here = placed.findLast(({ from }) => from <= start) ?? placed[0];
  return here ? wallTemperature(here.duct, metres(start - here.from)) : duct.surroundings;
}
