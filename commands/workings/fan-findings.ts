import { ductVelocity } from '#engine/duct/velocity.ts';
import { soundBand } from '#engine/sound/sound-band.ts';
import type { Finding, Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { ratingPressures } from '#knowledge/fans.ts';
import { remedies as remedyBook } from '#knowledge/remedies.ts';
import { soundAllowanceRanges, soundLimits, soundRatedAt } from '#knowledge/sound.ts';
import { airflow, loudness, staticPressure } from '#quantity/kinds.ts';
import { meets, within } from '#quantity/meets.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, type Sones } from '#quantity/units.ts';
import { citations } from './citations.ts';
import { type AirPath, crossing, type Delivery, delivery as deliveryOf, readyPath } from './delivery.ts';
import type { FanSetting } from './fan-model.ts';
import { triedRemedies } from './remedies.ts';
import { soundSteps } from './sound-working.ts';

/** How loud the fan will be in this duct, as a band; a fan without a sound rating gets none. */
export function soundFinding(delivery: Delivery, rated: Sones | null, continuous: boolean, units: UnitSystem): Finding {
  const { ready, staticPressure: against } = delivery;
  const flow = cubicMetresPerSecond(delivery.airflow.typical);
  const first = ready.pieces[0];
  const velocity = first
    ? ductVelocity({ airflow: flow, diameter: first.diameter })
    : ductVelocity({ airflow: flow, diameter: ready.path.collar ?? (flow as never) });
  const band = soundBand({
    ...(rated === null ? {} : { ratedSones: rated }),
    ratedAt: soundRatedAt.pressure,
    staticPressure: against,
    speedRatio: ready.fan.speedRatio,
    ductVelocity: velocity,
    allowances: soundAllowanceRanges,
  });
  if (!band.told || rated === null) {
    return {
      id: 'sound',
      weight: 'advice',
      says: 'Its noise cannot be told without the sones on the label.',
      working: [],
      sources: citations(soundRatedAt.citation),
    };
  }
  const { low, typical, high } = band.sones;
  const limit = continuous ? soundLimits.continuous : soundLimits.demand;
  const quiet = within(rated, limit);
  return {
    id: 'sound',
    weight: quiet ? 'good' : 'caution',
    says: `Expect a loudness of about ${loudness.showRangeShort({ low, high }, units)} in this duct; rated ${loudness.showShort(rated, units)}${quiet ? '' : `, over the ${loudness.showShort(limit, units)} the standard allows for ${continuous ? 'running all the time' : 'use on demand'}`}.`,
    value: { number: typical, unit: loudness.siUnit, low, high, shown: loudness.showRange({ low, high }, units) },
    working: soundSteps({ rated, band, speedRatio: ready.fan.speedRatio, against, velocity }, units),
    sources: citations(
      airflowMethods.loudness.citation,
      airflowMethods['fan-sound-law'].citation,
      soundLimits.citation,
    ),
  };
}

/** What would help most for the least trouble, with the airflow each would give. */
export function remediesFinding(
  path: AirPath,
  settings: readonly FanSetting[],
  need: CubicMetresPerSecond | null,
  units: UnitSystem,
): Finding {
  const tried = triedRemedies(path, settings);
  const [best] = tried;
  if (!best) {
    return {
      id: 'remedies',
      weight: 'good',
      says: 'No change to this duct would bring a worthwhile gain.',
      working: [],
      sources: citations({ source: 'own-working', verified: false }),
    };
  }
  const enough = need === null ? undefined : tried.find(({ airflow: flow }) => meets(flow, need));
  const lead = `${remedyBook[best.id].name}: ${airflow.showShort(best.airflow, units)}, ${airflow.showShort(best.gain, units)} more for the least trouble`;
  const alone =
    need === null || enough
      ? ''
      : ` No single change reaches ${airflow.showShort(need, units)}: make two, or choose a stronger fan.`;
  const other =
    enough && enough.id !== best.id ? ` ${remedyBook[enough.id].name}: that alone would reach the need.` : alone;
  return {
    id: 'remedies',
    weight: 'advice',
    says: `${lead}.${other}`,
    value: { number: best.gain, unit: airflow.siUnit, shown: `${airflow.show(best.gain, units)} more` },
    working: [
      ...tried.map(({ id, gain, worth }) => ({
        what: remedyBook[id].name,
        how: `${airflow.showShort(gain, units)} more ÷ effort ${remedyBook[id].effort}`,
        value: `${airflow.showShort(cubicMetresPerSecond(worth), units)} for each step of effort`,
      })),
      ...crossingOf(best.path, remedyBook[best.id].name, units),
    ],
    sources: citations(remedyBook[best.id].citation, { source: 'own-working', verified: false }),
    table: {
      title: 'What would help, best first for the trouble',
      columns: ['change', 'would deliver', 'gain', 'effort'],
      rows: tried.map(({ id, airflow: flow, gain, tie }) => [
        remedyBook[id].name,
        `${airflow.showShort(flow, units)}${need !== null && meets(flow, need) ? ', enough' : ''}`,
        `+${airflow.showShort(gain, units)}`,
        `${'●'.repeat(remedyBook[id].effort)}${'○'.repeat(5 - remedyBook[id].effort)}${tie ? ' about level with the next' : ''}`,
      ]),
    },
  };
}

/** Where the fan and the changed duct cross: the sum goes the way of the duct that is there, with that one change. */
function crossingOf(path: AirPath, name: string, units: UnitSystem): readonly Step[] {
  const changed = crossing(readyPath(path));
  return [
    {
      what: `${name}: the same sum with that changed crosses at`,
      how: `${staticPressure.showShort(changed.staticPressure, units)} of static pressure`,
      value: airflow.show(changed.airflow, units),
    },
  ];
}

/** What each setting of a fan delivers, and the quietest that is enough. */
export function settingsFinding(
  path: AirPath,
  settings: readonly FanSetting[],
  need: CubicMetresPerSecond | null,
  units: UnitSystem,
): Finding | undefined {
  if (settings.length < 2) return undefined;
  const tried = settings.map((setting) => {
    const delivered = deliveryOf({ ...path, setting }, 128);
    return { setting, delivered, band: delivered.airflow };
  });
  const flow = (number: number) => airflow.showShort(cubicMetresPerSecond(number), units);
  const table = {
    title: 'What each setting delivers',
    columns: ['setting', 'delivers', 'usually'],
    rows: tried.map(({ setting, band }) => [
      setting.name(units),
      flow(band.typical),
      airflow.showRangeShort({ low: cubicMetresPerSecond(band.low), high: cubicMetresPerSecond(band.high) }, units),
    ]),
  };
  const sources = citations(airflowMethods['fan-laws'].citation);
  const base = {
    id: 'best-setting',
    table,
    sources,
    working: [
      {
        what: 'Settings slowed by the fan laws through their airflow at',
        value: staticPressure.show(ratingPressures.low, units),
        source: airflowMethods['fan-laws'].citation,
      },
      ...tried.map(({ setting, delivered }) => ({
        what: `On ${setting.name(units)}, where its curve and the duct’s cross`,
        how: `${delivered.ready.fan.speedRatio.toFixed(3)} of full speed, against ${staticPressure.showShort(delivered.staticPressure, units)}`,
        value: flow(delivered.airflow.typical),
      })),
    ],
  };
  if (need === null)
    return { ...base, weight: 'advice', says: 'Say what airflow is needed, and the right setting can be told.' };
  const sure = tried.find(({ band }) => meets(band.low, need));
  const likely = tried.find(({ band }) => meets(band.typical, need));
  const chosen = sure ?? likely ?? tried.at(-1);
  if (!chosen) return undefined;
  const name = chosen.setting.name(units);
  const value = {
    number: chosen.band.typical,
    unit: airflow.siUnit,
    low: chosen.band.low,
    high: chosen.band.high,
    shown: `${name}: ${flow(chosen.band.typical)}`,
  };
  if (sure)
    return {
      ...base,
      weight: 'good',
      value,
      says: `Set it to ${name}: the quietest setting that is surely enough, ${flow(chosen.band.typical)} delivered.`,
    };
  if (likely)
    return {
      ...base,
      weight: 'caution',
      value,
      says: `Set it to ${name}: ${flow(chosen.band.typical)} delivered, enough if nothing is worse than usual. Measure it.`,
    };
  return {
    ...base,
    weight: 'caution',
    value,
    says: `Even on ${name}, its highest, it delivers ${flow(chosen.band.typical)}: not enough through this duct.`,
  };
}
