import { saturationPressure } from '#engine/psychrometrics/saturation-pressure.ts';
import type { Finding } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { bathroomDefaults, ductCondensationSentences, moistureFigures, moistureMethods } from '#knowledge/moisture.ts';
import { distance, ductLength, minutes, relativeHumidity, temperature } from '#quantity/kinds.ts';
import { toSi } from '#quantity/unit-factors.ts';
import { inEach, metres, ratio, seconds } from '#quantity/units.ts';
import { citations } from './citations.ts';
import type { SweatInputs } from './sweat-duct.ts';
import { inHundred, type JudgedDuct, worthAWord } from './sweat-judged.ts';

/** Below freezing the water stays as frost until the thaw. */
export function frostFinding({ verdict, bands }: JudgedDuct, units: UnitSystem): Finding | undefined {
  const now = verdict.wet && verdict.freezes;
  if (!now && bands.frostShare < worthAWord) return undefined;
  const wall = temperature.showShort(verdict.coldestWall, units);
  return {
    id: 'frost',
    weight: 'caution',
    says: `${now ? `Expect frost in the duct: its coldest wall is ${wall}` : `Frost is possible: in ${inHundred(bands.frostShare)} likely cases the wet wall is below freezing`}. Look at the hood in hard weather: ice holds its flap, and it drips back at the thaw.`,
    working: [
      { what: 'Coldest wall, in the case told', value: wall, source: moistureMethods['duct-cooling'].citation },
      { what: 'Cases that are wet and below freezing', value: inHundred(bands.frostShare) },
    ],
    sources: citations(moistureMethods['duct-cooling'].citation),
  };
}

const pitch = moistureFigures['duct-condensation']['pitch'];
const runOn = moistureFigures.moisture['run-on-trade'];

/** Water that does settle must run out of doors. */
export function pitchFinding({ inputs, unsure }: JudgedDuct, units: UnitSystem): Finding | undefined {
  if (pitch?.value === undefined) return undefined;
  const slope = toSi(pitch.value, 'in', 'ft');
  const { length } = unsure.cautious.duct;
  const fall = ductLength.showShort(metres(slope * length), units);
  const inches = `${pitch.value === 0.25 ? '1/4' : pitch.value} in for each foot`;
  const each = inEach(units, (system) =>
    system === 'metric' ? `${Math.round(slope * 1000)} mm for each meter` : inches,
  );
  return {
    id: 'duct-pitch',
    weight: 'advice',
    says: inputs.climbs
      ? `A run to the roof cannot fall to the outside, and what settles in it runs back towards the fan. Let its level part fall away from the fan to a trap with a drain at the foot of the riser, ${each}, with no low spots; or end the run at a wall.`
      : `Pitch level duct down to the outside, ${each}, and leave no low spots: ${fall} of fall over ${distance.showShort(length, units)}.`,
    value: { number: slope, unit: 'm/m', shown: each },
    working: [
      {
        what: 'Fall over the duct in the cold',
        how: `${distance.showShort(length, units)} × ${each}`,
        value: fall,
        source: pitch.citation,
      },
    ],
    sources: citations(pitch.citation),
  };
}

/** How dry the exhaust must get before the duct dries, and how long to run on for it. */
export function runOnFinding({ unsure, verdict }: JudgedDuct, units: UnitSystem): Finding | undefined {
  const { duct } = unsure.cautious;
  if (runOn?.value === undefined || duct.airflow <= 0) return undefined;
  const [wall, full] = [saturationPressure(verdict.coldestWall), saturationPressure(duct.exhaustTemperature)];
  const limit = ratio(wall / full);
  if (limit >= 1) return undefined;
  const time = seconds(toSi(runOn.value, 'minute', 's'));
  const shown = minutes.showShort(time, units);
  const house = bathroomDefaults.houseRelativeHumidity.estimate.typical;
  const dries =
    limit > house
      ? `the duct dries once the exhaust is under ${relativeHumidity.showShort(limit, units)} humidity`
      : `in this cold the wall stays wet even with exhaust at ${relativeHumidity.showShort(house, units)}, so wrap it as well`;
  return {
    id: 'run-on',
    weight: 'advice',
    says: `Run the fan on at least ${shown} after the shower, longer if /runtime says so: ${dries}.`,
    value: { number: time, unit: minutes.siUnit, shown },
    working: [
      {
        what: 'Exhaust that leaves the coldest wall dry',
        how: `${wall.toFixed(0)} Pa at the wall, ${temperature.showShort(verdict.coldestWall, units)} ÷ ${full.toFixed(0)} Pa at ${temperature.showShort(duct.exhaustTemperature, units)}`,
        value: relativeHumidity.showShort(limit, units),
        source: moistureMethods.psychrometrics.citation,
      },
      { what: runOn.name, value: shown, source: runOn.citation },
    ],
    sources: citations(runOn.citation, moistureMethods.psychrometrics.citation),
  };
}

/** What must stand beside every verdict on a duct. */
export function sweatRemarks({ climbs }: SweatInputs): readonly Finding[] {
  const { 'first-minutes': first, 'vertical-run': vertical, 'no-model-code-value': code } = ductCondensationSentences;
  const remark = (id: string, { says, citation }: typeof first): Finding => ({
    id,
    weight: 'advice',
    says,
    working: [],
    sources: citations(citation),
  });
  return [
    remark('first-minutes', first),
    ...(climbs ? [remark('vertical-run', vertical)] : []),
    remark('code-insulation', code),
  ];
}
