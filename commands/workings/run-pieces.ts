import { conicalContraction, conicalExpansion } from '#engine/duct/area-change.ts';
import type { Piece } from '#engine/duct/run.ts';
import type { UnitSystem } from '#interview/question.ts';
import { cones, ductMethods, ducts, fittingLoss, fittings } from '#knowledge/ducts.ts';
import { type Citation, commonPractice } from '#knowledge/sources.ts';
import { type Estimate, exactly } from '#quantity/estimate.ts';
import { ductDiameter, ductLength } from '#quantity/kinds.ts';
import { type Metres, metres, ratio } from '#quantity/units.ts';
import { diameterAt } from '../questions/duct-run-reading.ts';
import type { DuctPart, DuctRun, FittingPart, RunPart, TransitionPart } from '../questions/run-parts.ts';
import { flexSlack, type Slackness } from './flex-slack.ts';
import type { Parameters } from './parameters.ts';

/** One part of a run as the engine wants it, and as a person names it. */
export interface RunPiece {
  readonly part: RunPart;
  label(units: UnitSystem): string;
  readonly diameter: Metres;
  readonly citation: Citation;
  /** Of a duct: where the roughness of its wall is from; absent where somebody gave it. */
  readonly roughnessFrom?: Citation | undefined;
  /** Of a fitting: the sum by which its coefficient comes about. */
  coefficientSum?(units: UnitSystem): string;
  /** Of flex: how slack it lies. */
  readonly slack?: Slackness;
  /** The piece of the engine for one set of values of what is unknown. */
  piece(values: Float64Array): Piece;
}

/**
 * The pieces of a run, the necking-down at the collar first, with every unknown entered among `parameters`. Changes of
 * diameter that nobody mentioned are put in as abrupt cones.
 */
export function runPieces(run: DuctRun, collar: Metres | null, parameters: Parameters): readonly RunPiece[] {
  const pieces: RunPiece[] = [];
  let width = collar ?? startOf(run);
  const collarWord = collar === null ? 'the start' : 'the collar';
  run.parts.forEach((part, index) => {
    const wanted = part.part === 'transition' ? part.from : (diameterAt(run.parts, index) as Metres);
    if (Math.abs(wanted - width) > 1e-6) {
      const change: TransitionPart = { part: 'transition', from: width, to: wanted, coefficient: null };
      pieces.push(transitionPiece(change, parameters, index === 0 ? ` at ${collarWord}` : ' (not mentioned)'));
    }
    pieces.push(partPiece(part, wanted, parameters));
    width = part.part === 'transition' ? part.to : wanted;
  });
  if (!endsInOpen(run)) {
    pieces.push(
      fittingPiece(
        { part: 'fitting', fitting: 'exit-bare', count: 1, diameter: width, coefficient: null },
        width,
        parameters,
      ),
    );
  }
  return pieces;
}

/** The diameter at which a run begins. */
export function startOf({ parts }: DuctRun): Metres {
  const first = parts[0];
  return first?.part === 'transition' ? first.from : (diameterAt(parts, 0) as Metres);
}

/** Whether the run says how it ends. Without an end the air is taken to leave by a bare end. */
export const endsInOpen = ({ parts }: DuctRun): boolean =>
  parts.some((part) => part.part === 'fitting' && part.fitting !== 'custom' && fittings[part.fitting].includesExit);

function partPiece(part: RunPart, diameter: Metres, parameters: Parameters): RunPiece {
  if (part.part === 'transition') return transitionPiece(part, parameters, '');
  return part.part === 'fitting' ? fittingPiece(part, diameter, parameters) : ductPiece(part, diameter, parameters);
}

const kindWords = { smooth: 'smooth duct', spiral: 'spiral duct', flex: 'flex', 'foil-flex': 'foil flex' } as const;

function ductPiece(part: DuctPart, diameter: Metres, parameters: Parameters): RunPiece {
  const { kind } = part;
  const size = (units: UnitSystem) => `${ductDiameter.showShort(diameter, units)} ${kindWords[kind]}`;
  const length = parameters.enter({
    estimate: part.length,
    direction: 'down',
    measure: (units) => `the length of the ${size(units)}, as it lies`,
  });
  const roughness = parameters.enter({
    estimate: part.roughness === null ? ducts[kind].roughness : exactly(part.roughness),
    direction: 'down',
    measure: () => `what the ${kindWords[kind]} is made of`,
  });
  const slack = flexSlack(part, diameter, parameters);
  return {
    part,
    label: (units) => `${ductLength.showRangeShort(part.length, units)} of ${size(units)}`,
    diameter,
    citation:
      part.compression !== null || kind === 'flex' ? ductMethods['flex-correction'].citation : ducts[kind].citation,
    roughnessFrom: part.roughness === null ? ducts[kind].citation : undefined,
    ...(slack ? { slack } : {}),
    piece: (values) => ({
      kind: 'duct',
      diameter,
      length: metres(length(values)),
      roughness: metres(roughness(values)),
      pressureFactor: slack ? slack.factor(values) : ratio(1),
    }),
  };
}

function fittingPiece(part: FittingPart, diameter: Metres, parameters: Parameters): RunPiece {
  const known = part.fitting === 'custom' ? null : fittings[part.fitting];
  const loss = part.fitting === 'custom' || part.coefficient !== null ? null : fittingLoss(part.fitting, diameter);
  const name = known?.name ?? 'fitting with its own coefficient';
  const slackBend = part.fitting !== 'custom' && part.fitting.includes('flex');
  const each = parameters.enter({
    estimate: loss ?? exactly(ratio(part.coefficient ?? 0)),
    direction: 'down',
    measure: () => `the pressure lost in the ${name}`,
    ...(slackBend ? { driver: 'workmanship' } : {}),
  });
  return {
    part,
    label: () => `${part.count === 1 ? '' : `${part.count} x `}${name}`,
    diameter,
    citation: loss?.citation ?? commonPractice,
    coefficientSum() {
      const { count, coefficient } = part;
      const one =
        loss === null
          ? `${coefficient ?? 0} as given`
          : `${shown(loss.typical)}, ${shown(loss.low)} to ${shown(loss.high)} may be`;
      return count === 1 ? one : `${count} × ${one}`;
    },
    piece: (values) => ({ kind: 'loss', diameter, coefficient: ratio(part.count * each(values)) }),
  };
}

/** A coefficient as it is printed, without noughts behind it. */
const shown = (coefficient: number): string => String(Number(coefficient.toPrecision(3)));

function transitionPiece(part: TransitionPart, parameters: Parameters, where: string): RunPiece {
  const narrows = part.to < part.from;
  const cone = narrows ? cones.reducer : cones.increaser;
  const [large, small] = narrows ? [part.from, part.to] : [part.to, part.from];
  const formula = narrows ? conicalContraction : conicalExpansion;
  const at = (includedAngle: number) => formula({ large, small, includedAngle });
  const { low, typical, high } = cone.includedAngle;
  const losses = [at(low) * cone.spread.low, at(typical) * cone.spread.typical, at(high) * cone.spread.high].sort(
    (a, b) => a - b,
  );
  const coefficient: Estimate =
    part.coefficient === null
      ? { low: losses[0] as number, typical: losses[1] as number, high: losses[2] as number }
      : exactly(part.coefficient);
  const name = (units: UnitSystem) =>
    `${narrows ? 'reducer' : 'increaser'} ${ductDiameter.showShort(part.from, units)} to ${ductDiameter.showShort(part.to, units)}`;
  const loss = parameters.enter({
    estimate: coefficient,
    direction: 'down',
    measure: (units) => `the shape of the ${name(units)}`,
  });
  return {
    part,
    label: (units) => `${name(units)}${where}`,
    diameter: small,
    citation: cone.citation,
    coefficientSum(units) {
      if (part.coefficient !== null) return `${part.coefficient} as given`;
      const size = (diameter: Metres) => ductDiameter.showShort(diameter, units);
      const half = Math.round((typical * 90) / Math.PI);
      const slope = narrows
        ? `0.8 × sin ${half}° × (1 − (${size(small)} ÷ ${size(large)})²)`
        : `2.6 × sin ${half}° × (1 − (${size(small)} ÷ ${size(large)})²)²`;
      const spread = cone.spread.typical === 1 ? '' : ` × ${cone.spread.typical}, since published formulas differ`;
      return `cone of ${2 * half}° taken: ${slope}${spread}; ${shown(coefficient.low)} to ${shown(coefficient.high)} may be`;
    },
    piece: (values) => ({ kind: 'loss', diameter: small, coefficient: ratio(loss(values)) }),
  };
}
