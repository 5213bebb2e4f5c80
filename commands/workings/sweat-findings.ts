import type { Finding, Value } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { moistureMethods } from '#knowledge/moisture.ts';
import { distance, temperature } from '#quantity/kinds.ts';
import type { Metres } from '#quantity/units.ts';
import { citations } from './citations.ts';
import { sways } from './sweat-bands.ts';
import {
  alongText,
  atTheFan,
  byLow,
  inHundred,
  type JudgedDuct,
  place,
  startBandText,
  worthAWord,
} from './sweat-judged.ts';
import { airSteps, coolingSteps, decidingPiece, dewPointOf, startSteps } from './sweat-working.ts';

/** Where the duct starts to sweat, or that it stays dry. */
export function startFinding(judged: JudgedDuct, units: UnitSystem): Finding {
  const { inputs, unsure, verdict, bands } = judged;
  const run = unsure.cautious;
  const dew = temperature.showShort(dewPointOf(run.duct), units);
  const unit = distance.siUnit;
  const piece = decidingPiece(run);
  const band = {
    ...(bands.start.low === null ? {} : { low: bands.start.low }),
    ...(bands.start.high === null ? {} : { high: bands.start.high }),
  };
  const usually = startBandText(bands.start, units);
  const base = {
    id: 'condensation-starts',
    working: [
      ...airSteps(inputs, run, units),
      ...coolingSteps(piece, units),
      ...startSteps(piece, run.duct.length, units),
    ],
    sources: citations(
      moistureMethods['duct-cooling'].citation,
      moistureMethods['duct-film'].citation,
      moistureMethods.psychrometrics.citation,
    ),
  };
  if (run.duct.airflow <= 0) {
    return {
      ...base,
      weight: 'caution',
      says: 'No air moves, so what drifts into the duct settles right there. Find out why before anything else.',
      value: { number: 0, unit, shown: 'at the fan' },
    };
  }
  if (verdict.wet) {
    const where =
      verdict.startsAt < atTheFan ? 'right from the fan' : `from about ${place(verdict.startsAt, units)} on`;
    const value: Value = {
      number: verdict.startsAt,
      unit,
      ...band,
      shown: `${place(verdict.startsAt, units)}${usually === place(verdict.startsAt, units) ? '' : `, usually ${usually}`}`,
    };
    return {
      ...base,
      weight: 'caution',
      says: `The duct sweats ${where}: there its wall is under ${dew}, the dew point of this exhaust${usually === place(verdict.startsAt, units) ? '' : `; usually ${usually}`}.${byLow(judged, units)}`,
      value,
    };
  }
  const maybe = bands.wetShare >= worthAWord;
  const would =
    verdict.wouldStartAt === null
      ? ''
      : ` It would start ${alongText(verdict.wouldStartAt, units)} from the fan if the duct were that long.`;
  return {
    ...base,
    weight: maybe ? 'advice' : 'good',
    says: maybe
      ? `The duct stays dry in the likeliest case of steady running, but it sweats in ${inHundred(bands.wetShare)} likely ones, from the fan on or from some way along it.${would}${byLow(judged, units)}`
      : `The duct stays dry in steady running: its wall stays above ${dew}, the dew point of this exhaust.${would}${byLow(judged, units)}`,
    value: { number: null, unit, ...band, shown: maybe ? `stays dry, usually ${usually}` : 'stays dry' },
  };
}

/** The one thing to find out that moves the start most by itself. */
export function measureNextFinding({ unsure, bands }: JudgedDuct, units: UnitSystem): Finding | undefined {
  const end = (start: Metres | null): string => (start === null ? 'staying dry' : `sweating ${place(start, units)}`);
  const text = ([one, other]: ReturnType<typeof sways>[number]['ends']) => {
    const [near, far] =
      (one ?? Number.POSITIVE_INFINITY) <= (other ?? Number.POSITIVE_INFINITY) ? [one, other] : [other, one];
    return `${end(near)} to ${end(far)}`;
  };
  const name = (parameter: number) => unsure.parameters.measures[parameter]?.(units) ?? '';
  const swayed = sways(unsure).filter(({ ends: [one, other] }) => end(one) !== end(other));
  const [most] = swayed;
  if (!most || bands.start.low === null) return undefined;
  return {
    id: 'measure-next',
    weight: 'advice',
    says: `To be surer, find out ${name(most.parameter)}: within what is likely, that alone takes it from ${text(most.ends)}.`,
    working: swayed.map(({ parameter, ends }) => ({
      what: `With only ${name(parameter)} in doubt`,
      value: text(ends),
    })),
    sources: citations(moistureMethods['duct-cooling'].citation),
  };
}
