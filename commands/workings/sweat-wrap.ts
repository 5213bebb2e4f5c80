import type { Finding, Table, Value } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { ductCondensationDefaults, moistureMethods } from '#knowledge/moisture.ts';
import { insulation, relativeHumidity, temperature } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import { toSi } from '#quantity/unit-factors.ts';
import { celsius, leading, ratio, type SquareMetreKelvinsPerWatt, squareMetreKelvinsPerWatt } from '#quantity/units.ts';
import { citations } from './citations.ts';
import { insulationFor, type SweatBands } from './sweat-bands.ts';
import type { JudgedDuct } from './sweat-judged.ts';
import { airSteps, insulatedSteps } from './sweat-working.ts';

/** Upward to the next half R, a hair too little being too little; finer than that the band of an estimate does not bear. */
const upward = (value: SquareMetreKelvinsPerWatt): SquareMetreKelvinsPerWatt => {
  const step = toSi(0.5, 'Rvalue', 'm^2 K/W');
  return squareMetreKelvinsPerWatt(Math.ceil(value / step - 1e-9) * step);
};

function wrapBandText({ low, high }: SweatBands['insulation'], units: UnitSystem): string {
  if (low === null) return 'no amount';
  const from = low === 0 ? 'none' : insulation.showShort(upward(low), units);
  const to =
    high === null ? 'more than can be fitted' : high === 0 ? 'none' : insulation.showShort(upward(high), units);
  return from === to ? from : `${from} to ${to}`;
}

/** The least wrap that keeps the duct dry, or the honest word that none will. */
export function insulationFinding(judged: JudgedDuct, units: UnitSystem): Finding {
  const { inputs, unsure, bands } = judged;
  const run = unsure.cautious;
  const needed = insulationFor(run);
  const unit = insulation.siUnit;
  const usually = wrapBandText(bands.insulation, units);
  const base = {
    id: 'insulation-needed',
    sources: citations(moistureMethods['duct-cooling'].citation, ductCondensationDefaults['most-insulation'].citation),
    table: wrapTable(judged, units),
  };
  if (!needed.found) {
    const why =
      run.duct.airflow <= 0
        ? 'no air moves'
        : needed.why === 'the air arrives saturated'
          ? 'the air arrives as damp as air can be'
          : `it would take more than ${insulation.showShort(ductCondensationDefaults['most-insulation'].estimate.high, units)}`;
    return {
      ...base,
      weight: 'caution',
      says: `No amount of wrap will keep it dry: ${why}. Pitch it outward, run the fan on after the shower, leave no low spots.`,
      value: {
        number: null,
        unit,
        ...(bands.insulation.low === null ? {} : { low: bands.insulation.low }),
        shown: 'no amount will do',
      },
      working: [
        ...airSteps(inputs, run, units),
        {
          what: 'The most that is tried',
          value: insulation.show(ductCondensationDefaults['most-insulation'].estimate.high, units),
          source: ductCondensationDefaults['most-insulation'].citation,
        },
      ],
    };
  }
  const shown = needed.insulation === 0 ? 'none' : insulation.showShort(upward(needed.insulation), units);
  const value: Value = {
    number: needed.insulation,
    unit,
    ...(bands.insulation.low === null ? {} : { low: bands.insulation.low }),
    ...(bands.insulation.high === null ? {} : { high: bands.insulation.high }),
    shown: usually === shown ? shown : `${shown}, usually ${usually}`,
  };
  const working = [...airSteps(inputs, run, units), ...insulatedSteps(run, needed.insulation, units)];
  const spread = usually === shown ? '' : `; usually ${usually}`;
  if (needed.insulation === 0)
    return {
      ...base,
      weight: 'good',
      says: `It needs no wrap to stay dry in steady running${spread}.`,
      value,
      working,
    };
  const have = run.duct.insulation;
  if (meets(have, needed.insulation)) {
    const sure = bands.insulation.high !== null && meets(have, bands.insulation.high);
    const its = insulation.showShort(have, units);
    return {
      ...base,
      weight: sure ? 'good' : 'advice',
      says: sure
        ? `Its ${its} is enough: ${shown} keeps it dry in steady running${spread}.`
        : `Its ${its} is just enough in the likeliest case, in steady running; what may be needed is ${usually}. Take more where it is to stay dry in most.`,
      value,
      working,
    };
  }
  const layers = needed.insulation > ductCondensationDefaults['most-insulation'].estimate.typical;
  return {
    ...base,
    weight: 'advice',
    says: `Wrap it to at least ${shown} as installed, not as labeled, to keep it dry in steady running${spread}.${layers ? ' That is more than two layers of wrap: bury the duct in loose fill, or shorten it.' : ''}`,
    value,
    working,
  };
}

const humidities = [0.6, 0.7, 0.8, 0.9, 0.95].map(ratio);
const colds = {
  'inch-pound': [40, 20, 0, -20].map((t) => celsius(toSi(t, 'degF', 'degC'))),
  metric: [5, -5, -15, -25].map(celsius),
};

/** The least wrap that keeps this duct dry, by how damp the exhaust is and how cold the attic. */
function wrapTable({ unsure }: JudgedDuct, units: UnitSystem): Table {
  const { duct, pieces } = unsure.cautious;
  const cell = (
    relativeHumidity: (typeof humidities)[number],
    surroundings: (typeof colds)['metric'][number],
  ): string => {
    const needed = insulationFor({
      pieces,
      duct: { ...duct, surroundings, exhaustDampness: { held: 'relative humidity', relativeHumidity } },
    });
    if (!needed.found) return 'no amount';
    return needed.insulation === 0 ? 'none' : insulation.showShort(upward(needed.insulation), units);
  };
  return {
    title: 'Least wrap that keeps this duct dry, by humidity of the exhaust and cold around it',
    columns: ['exhaust', ...colds[leading(units)].map((cold) => temperature.showShort(cold, units))],
    rows: humidities.map((share) => [
      relativeHumidity.showShort(share, units),
      ...colds[leading(units)].map((cold) => cell(share, cold)),
    ]),
  };
}
