import { efficacyOutcome, fanEfficacy } from '#engine/fan/efficacy.ts';
import type { Finding } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { type EfficacyEditionId, efficacyJudgedAt, fanEfficacyEditions, ratingPressures } from '#knowledge/fans.ts';
import type { LocalExhaustCodeId } from '#knowledge/required-airflow.ts';
import { localExhaust } from '#knowledge/required-airflow.ts';
import { airflow, efficacy, fanPower, staticPressure } from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, inEach, type Watts } from '#quantity/units.ts';
import type { FanAnswer } from '../questions/fan.ts';
import { citations } from './citations.ts';

/** The energy code that goes with each building code. Those without one at hand are said to have none. */
const energyCode: Partial<
  Record<LocalExhaustCodeId, { readonly edition: EfficacyEditionId; readonly taken?: string }>
> = {
  'irc-2015': { edition: 'iecc-2015' },
  'irc-2018': { edition: 'iecc-2015', taken: 'the figures of 2018 are taken as the same, from memory' },
  'irc-2021': { edition: 'iecc-2021' },
  'irc-2024': { edition: 'iecc-2024' },
};

/** What the label promises at the lower rating pressure, which is where efficacy is judged. */
export function labelAirflow(fan: FanAnswer): CubicMetresPerSecond | null {
  if (fan.kind !== 'points') return fan.airflow;
  const near = (pressure: number) => Math.abs(pressure - ratingPressures.low) < 0.05 * ratingPressures.low;
  return fan.settings.at(-1)?.points.find((point) => near(point.staticPressure))?.airflow ?? null;
}

interface EfficacyQuestion {
  readonly watts: Watts;
  /** Off the label where it is there, else what is really delivered. */
  readonly airflow: CubicMetresPerSecond;
  readonly fromLabel: boolean;
  readonly code: LocalExhaustCodeId;
}

/** Whether the fan moves enough air for each watt. */
export function efficacyFinding(
  { watts, airflow: flow, fromLabel, code }: EfficacyQuestion,
  units: UnitSystem,
): Finding {
  const moved = fanEfficacy({ airflow: flow, power: watts });
  const shown = inEach(units, (system) => {
    const { unit, of } = efficacy.scale(system);
    return `${of(moved).toFixed(2)} ${unit}`;
  });
  const where = fromLabel
    ? `the label’s ${airflow.showShort(flow, units)}`
    : `${airflow.showShort(flow, units)} delivered; the label’s own airflow decides`;
  const known = energyCode[code];
  const base = {
    id: 'efficacy',
    value: { number: moved, unit: efficacy.siUnit, shown },
  };
  const ratio = {
    what: 'Air for each watt',
    how: `${airflow.showShort(flow, units)} ÷ ${fanPower.showShort(watts, units)}`,
    value: shown,
  };
  if (!known) {
    return {
      ...base,
      weight: 'advice',
      says: `The fan moves ${shown}, by ${where}. No limit of ${localExhaust[code].name} is at hand; ask the inspector.`,
      working: [ratio],
      sources: citations(efficacyJudgedAt.citation),
    };
  }
  const edition = fanEfficacyEditions[known.edition];
  const limits = edition.bath;
  const limit = limits.toSorted((one, other) => one.below - other.below).find(({ below }) => flow < below);
  const meets = efficacyOutcome({ airflow: flow, power: watts, limits }) !== 'falls short';
  const least = limit ? efficacy.showShort(limit.least, units) : '';
  const note = known.taken ? ` (${known.taken})` : '';
  const scope = 'The limit is for a fan that also ventilates the house.';
  return {
    ...base,
    weight: meets ? 'good' : 'caution',
    says: meets
      ? `The fan moves ${shown}, by ${where}: at least the ${least} of ${edition.name}${note}.`
      : `The fan moves ${shown}, by ${where}: less than the ${least} ${edition.name} asks${note}. ${scope}`,
    working: [
      ratio,
      {
        what: `Least for this airflow, ${edition.name}, judged at ${staticPressure.showShort(efficacyJudgedAt.bath, units)}`,
        value: least,
        source: edition.citation,
      },
    ],
    sources: citations(edition.citation, efficacyJudgedAt.citation),
  };
}
