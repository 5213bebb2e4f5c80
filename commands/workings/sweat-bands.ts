import { ductVerdict } from '#engine/condensation/condensation-start.ts';
import { exhaustDewPoint } from '#engine/condensation/exhaust-duct.ts';
import { type InsulationToStayDry, insulationToStayDry } from '#engine/condensation/insulation-to-stay-dry.ts';
import { likelyEnds } from '#engine/uncertainty/sampled-answers.ts';
import { type SampleCount, triangularSample } from '#engine/uncertainty/triangular-sample.ts';
import { ductCondensationDefaults } from '#knowledge/moisture.ts';
import {
  type Metres,
  metres,
  type Ratio,
  ratio,
  type SquareMetreKelvinsPerWatt,
  squareMetreKelvinsPerWatt,
} from '#quantity/units.ts';
import type { ColdRun, UnsureDuct } from './sweat-duct.ts';

/** The most that is tried: beyond it the answer is "no amount". */
const mostInsulation = ductCondensationDefaults['most-insulation'].estimate.high;

/** Where something usually lies; `null` for a duct that stays dry, or a wrap that cannot be fitted. */
export interface OpenBand<Q extends number> {
  readonly low: Q | null;
  readonly high: Q | null;
}

export interface SweatBands {
  readonly start: OpenBand<Metres>;
  readonly insulation: OpenBand<SquareMetreKelvinsPerWatt>;
  /** How many of the likely cases are wet somewhere, and how many of them below freezing. */
  readonly wetShare: Ratio;
  readonly frostShare: Ratio;
}

const samples: SampleCount = 128;
/** How near a sampled wall must come to the dew point, K: far inside the band it is one of. */
const sampledTolerance = 1e-3;
/** Farther than any duct, more than any wrap: where "stays dry" and "no amount" stand among the samples. */
const beyond = 1e6;
/** Anything past this is beyond, the place half way between a number and beyond included. */
const possible = 1e3;

const startOf = ({ duct, pieces }: ColdRun): Metres | null => {
  const verdict = ductVerdict(duct, pieces);
  return verdict.wet ? verdict.startsAt : null;
};

export const insulationFor = ({ duct, pieces }: ColdRun, tolerance?: number): InsulationToStayDry =>
  insulationToStayDry(duct, mostInsulation, tolerance === undefined ? { pieces } : { pieces, tolerance });

/** The likely bands of start and insulation from one round of samples. What is told lies within its band. */
export function sweatBands(unsure: UnsureDuct): SweatBands {
  const { bounded, drivers } = unsure.parameters;
  const told = { start: startOf(unsure.cautious) ?? beyond, insulation: neededOf(unsure.cautious) };
  const starts = new Float64Array(samples);
  const needs = new Float64Array(samples);
  const sample = triangularSample({ parameters: bounded, drivers }, samples);
  sample.restart();
  let [wet, frozen] = [0, 0];
  for (let n = 0; n < samples; n += 1) {
    sample.next();
    const run = unsure.run(sample.values);
    const verdict = ductVerdict(run.duct, run.pieces);
    starts[n] = verdict.wet ? verdict.startsAt : beyond;
    needs[n] = neededOf(run);
    if (verdict.wet) wet += 1;
    if (verdict.wet && verdict.freezes) frozen += 1;
  }
  return {
    start: openBand(starts, told.start, metres),
    insulation: openBand(needs, told.insulation, squareMetreKelvinsPerWatt),
    wetShare: ratio(wet / samples),
    frostShare: ratio(frozen / samples),
  };
}

function neededOf(run: ColdRun): number {
  const needed = insulationFor(run, sampledTolerance);
  return needed.found ? needed.insulation : beyond;
}

function openBand<Q extends number>(answers: Float64Array, told: number, make: (value: number) => Q): OpenBand<Q> {
  const [low, high] = likelyEnds(answers);
  const end = (value: number): Q | null => (value > possible ? null : make(value));
  return { low: end(Math.min(low, told)), high: end(Math.max(high, told)) };
}

/** What one unknown alone does to the duct: where it sweats with it at its low and at its high end, the rest as told. */
export interface Sway {
  readonly parameter: number;
  readonly ends: readonly [Metres | null, Metres | null];
  /** How far it moves the coldest wall against the dew point, K. Told even where both ends are wet, or both dry. */
  readonly swing: number;
}

/** What can be measured on site and sways the duct, the strongest first. */
export function sways({ parameters, typical, run }: UnsureDuct): readonly Sway[] {
  const at = (parameter: number, value: number): { readonly start: Metres | null; readonly margin: number } => {
    const values = Float64Array.from(typical);
    values[parameter] = value;
    const { duct, pieces } = run(values);
    const verdict = ductVerdict(duct, pieces);
    const dew = exhaustDewPoint(duct);
    return {
      start: verdict.wet ? verdict.startsAt : null,
      margin: verdict.coldestWall - (dew.found ? dew.temperature : verdict.coldestWall),
    };
  };
  return parameters.bounded
    .flatMap((bound, parameter): Sway[] => {
      if (parameters.measures[parameter] === undefined) return [];
      const [low, high] = [at(parameter, bound.low), at(parameter, bound.high)];
      return [{ parameter, ends: [low.start, high.start], swing: Math.abs(high.margin - low.margin) }];
    })
    .sort((one, other) => other.swing - one.swing);
}
