import type { AnswerCommand, Telling } from '#chat/command.ts';
import { standardAir } from '#engine/air/air.ts';
import { doorPressure } from '#engine/pressure/door-gap.ts';
import { sharpEdgedDischargeCoefficient } from '#engine/pressure/orifice.ts';
import type { Finding, Step, Value } from '#findings/finding.ts';
import { type Interview, offer, take, together } from '#interview/interview.ts';
import { moistureMethods } from '#knowledge/moisture.ts';
import { bathroomGuideline, localExhaust } from '#knowledge/required-airflow.ts';
import { ownWorking } from '#knowledge/sources.ts';
import { type Estimate, isExact } from '#quantity/estimate.ts';
import {
  airflow,
  roomArea as areaKind,
  doorWidth,
  ceilingHeight as heightKind,
  roomLength as lengthKind,
  roomPressure,
  roomVolume,
  smallLength,
  staticPressure,
} from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, cubicMetres, cubicMetresPerSecond } from '#quantity/units.ts';
import { buildingCodeEdition } from './questions/codes.ts';
import {
  ceilingHeight,
  fixtures,
  roomArea,
  roomLength,
  roomWidth,
  running,
  toiletCompartment,
} from './questions/room.ts';
import { citations } from './workings/citations.ts';
import { doorVerdict, doorWord } from './workings/door-verdict.ts';
import { areaOf, type Room, roomNeed } from './workings/room-need.ts';

function* roomInterview(): Interview<Room> {
  const area = yield* take(roomArea);
  const [length, width] = area.known ? [null, null] : yield* together('need', roomLength, roomWidth);
  const height = yield* offer(ceilingHeight);
  const stands = yield* offer(fixtures);
  const compartment = stands.value.includes('toilet')
    ? yield* offer(toiletCompartment)
    : ({ value: 'no', known: true } as const);
  const runs = yield* offer(running);
  const code = yield* take(buildingCodeEdition);
  return {
    length: length?.value ?? null,
    width: width?.value ?? null,
    area: length && width ? areaOf(length.value, width.value) : area.value,
    ceilingHeight: height.value,
    fixtures: stands.value,
    toiletCompartment: compartment,
    running: runs.value,
    code: code.value,
  };
}

const airflowValue = (estimate: Estimate<CubicMetresPerSecond>, { units }: Telling): Value => ({
  number: estimate.typical,
  unit: airflow.siUnit,
  ...(isExact(estimate) ? {} : { low: estimate.low, high: estimate.high }),
  shown: airflow.showEstimate(estimate, units),
});

/** How much past the need is still only cost and noise, before the room's own door becomes the limit. */
const generous = 1.5;

function answer(room: Room, telling: Telling) {
  const { units } = telling;
  const ends = { low: roomNeed(room, 'low'), typical: roomNeed(room, 'typical'), high: roomNeed(room, 'high') };
  const at = (rule: string): Estimate<CubicMetresPerSecond> => {
    const find = (end: keyof typeof ends) =>
      ends[end].candidates.find((each) => each.rule === rule)?.airflow ?? cubicMetresPerSecond(0);
    return { low: find('low'), typical: find('typical'), high: find('high') };
  };
  const applies = (rule: string) => ends.typical.candidates.find((each) => each.rule === rule)?.applies ?? false;
  const needed = { low: ends.low.needed, typical: ends.typical.needed, high: ends.high.needed };
  const code = localExhaust[room.code];
  const rate = room.running === 'continuous' ? code.bathroom.continuous : code.bathroom.intermittent;
  const { perArea, areaLimit, fixtures: perFixture, airChanges, ordinaryCeiling } = bathroomGuideline;
  const areaStep: Step = {
    what: 'Floor area',
    ...(room.length && room.width
      ? { how: `${lengthKind.showEstimate(room.length, units)} × ${lengthKind.showEstimate(room.width, units)}` }
      : {}),
    value: areaKind.showEstimate(room.area, units),
  };
  const shown = (estimate: Estimate<CubicMetresPerSecond>) => airflow.showEstimate(estimate, units);
  const more = airflow.showShort(needed.high, units);
  const toBeSafe = more === airflow.showShort(needed.typical, units) ? '' : `, up to ${more} if it turns out larger`;
  const finding = (
    id: string,
    estimate: Estimate<CubicMetresPerSecond>,
    rest: Omit<Finding, 'id' | 'value'>,
  ): Finding => ({
    id,
    value: airflowValue(estimate, telling),
    ...rest,
  });

  const codeMinimum = finding('code-minimum', at('code'), {
    weight: 'good',
    says: `${code.name} asks for at least ${shown(at('code'))}, ${room.running === 'continuous' ? 'running all the time' : 'switched on when the room is used'}.`,
    working: [{ what: `${code.name}, bathroom`, value: shown(at('code')), source: rate.citation }],
    sources: citations(rate.citation),
  });
  const byArea = finding('by-floor-area', at('floor area'), {
    weight: 'good',
    says: `By floor area: ${shown(at('floor area'))}${applies('floor area') ? '' : room.running === 'continuous' ? ', for bathing; a fan that never stops goes by the code figure' : `, but the rule ends at ${areaKind.showShort(areaLimit.value, units)}`}.`,
    working: [
      areaStep,
      {
        what: 'By floor area',
        how: `${areaKind.showEstimate(room.area, units)} × 1 cfm for each sq ft, never under ${airflow.showShort(bathroomGuideline.least.value, units)}`,
        value: shown(at('floor area')),
        source: perArea.citation,
      },
    ],
    sources: citations(perArea.citation, bathroomGuideline.least.citation),
  });
  const rates = {
    toilet: perFixture.toilet,
    shower: perFixture.shower,
    tub: perFixture.tub,
    'jetted-tub': perFixture.jettedTub,
  } as const;
  const counted = room.fixtures.filter((id): id is keyof typeof rates => id in rates);
  const byFixtures = finding('by-fixtures', at('fixtures'), {
    weight: 'good',
    says: `By fixtures: ${shown(at('fixtures'))}${applies('fixtures') ? '' : `, which counts above ${areaKind.showShort(areaLimit.value, units)} only`}.`,
    working: counted.map((id) => ({
      what: id.replace('-', ' '),
      value: airflow.show(rates[id].value, units),
      source: rates[id].citation,
    })),
    sources: citations(perFixture.toilet.citation),
  });
  const volume = {
    low: room.area.low * room.ceilingHeight.low,
    typical: room.area.typical * room.ceilingHeight.typical,
    high: room.area.high * room.ceilingHeight.high,
  };
  const byVolume = finding('by-air-changes', at('air changes'), {
    weight: 'good',
    says: `By ${airChanges.value} air changes an hour: ${shown(at('air changes'))}${applies('air changes') ? '' : `, which counts under ceilings above ${heightKind.showShort(ordinaryCeiling.value, units)} only`}.`,
    working: [
      areaStep,
      {
        what: 'Volume',
        how: `${areaKind.showShort(room.area.typical, units)} × ${heightKind.showShort(room.ceilingHeight.typical, units)}`,
        value: roomVolume.show(cubicMetres(volume.typical), units),
      },
      {
        what: 'Air changes',
        how: `volume × ${airChanges.value} ÷ 60 minutes`,
        value: shown(at('air changes')),
        source: airChanges.citation,
      },
    ],
    sources: citations(airChanges.citation),
  });
  const reasons: Readonly<Record<string, string>> = {
    code: 'the code minimum is the largest that applies',
    'floor area': 'the floor area decides',
    fixtures: 'the room is over 100 sq ft, so its fixtures decide',
    'air changes': 'the high ceiling makes the volume decide',
  };
  const reason = ends.typical.asAtLimit
    ? `a room of ${areaKind.showShort(areaLimit.value, units)} needs as much, and this one is larger`
    : (reasons[ends.typical.governedBy] ?? ends.typical.governedBy);
  const pick = finding('airflow-needed', needed, {
    weight: 'good',
    says: `Plan for ${airflow.show(needed.typical, units)} really delivered: ${reason}.`,
    working: ends.typical.candidates.map((each) => ({
      what: each.rule,
      value: `${airflow.show(each.airflow, units)}${each.applies ? '' : ' (does not apply here)'}`,
    })),
    sources: citations(
      rate.citation,
      perArea.citation,
      perFixture.toilet.citation,
      airChanges.citation,
      ends.typical.asAtLimit ? ownWorking : undefined,
    ),
  });
  return {
    headline: `This room needs ${airflow.show(needed.typical, units)}${toBeSafe}.`,
    findings: [
      pick,
      codeMinimum,
      byArea,
      ...(counted.length > 0 ? [byFixtures] : []),
      byVolume,
      ...remarks(room, ends.typical, telling),
    ],
    suggestions: [{ label: 'What will the fan deliver?', command: 'duct' }],
  };
}

function remarks(room: Room, need: ReturnType<typeof roomNeed>, { units }: Telling): Finding[] {
  const { toiletCompartment: compartmentRule, steamShower, doorClearance } = bathroomGuideline;
  const code = localExhaust[room.code];
  const plain = { working: [], sources: [] };
  const found: Finding[] = [];
  if (room.toiletCompartment.value === 'yes' && need.compartment) {
    found.push({
      ...plain,
      id: 'toilet-compartment',
      weight: 'caution',
      says: `Give the toilet compartment a fan of its own of ${airflow.show(need.compartment.own, units)}, or a window that opens; the rest of the room then needs ${airflow.show(need.compartment.mainRoom, units)}.`,
      sources: citations(compartmentRule.citation),
    });
  }
  if (room.fixtures.includes('steam-shower')) {
    found.push({
      ...plain,
      id: 'steam-shower',
      weight: 'caution',
      says: 'Give the steam shower a fan of its own inside the enclosure, run after use; the room fan does not reach it.',
      sources: citations(steamShower.citation),
    });
  }
  if (room.running === 'continuous') {
    found.push({
      ...plain,
      id: 'when-bathing',
      weight: 'advice',
      says: `Choose a fan that can be turned up to ${airflow.show(need.whenBathing, units)} for bathing: the continuous rate alone clears a shower slowly.`,
      sources: citations(bathroomGuideline.perArea.citation),
    });
  }
  if (code.listedAt) {
    found.push({
      ...plain,
      id: 'listed-airflow',
      weight: 'advice',
      says: `Check that the label shows the code’s airflow at ${staticPressure.show(code.listedAt.value, units)}, as ${code.name} asks; a number at 0.1 only does not show it.`,
      sources: citations(code.listedAt.citation),
    });
  }
  const tooMuch = cubicMetresPerSecond(need.whenBathing * generous);
  const gap = { width: doorWidth.from(30, 'in'), height: doorClearance.value };
  const pressure = doorPressure(gap, { airflow: tooMuch, density: standardAir.density });
  found.push({
    id: 'too-much',
    weight: 'advice',
    says: `Do not go much above ${airflow.show(tooMuch, units)}: more costs heat, noise and make-up air. Through a ${smallLength.showShort(gap.height, units)} gap under a ${doorWidth.showShort(gap.width, units)} door that much takes ${roomPressure.show(pressure, units)}: ${doorVerdict[doorWord(pressure)]}.`,
    working: [
      {
        what: 'Half as much again as a bath or shower asks for',
        how: `${airflow.showShort(need.whenBathing, units)} × ${generous}`,
        value: `${airflow.showShort(tooMuch, units)} (${tooMuch.toPrecision(4)} m³/s)`,
      },
      {
        what: 'Pressure across the door at that airflow',
        how: `${standardAir.density} kg/m³ ÷ 2 × (${tooMuch.toPrecision(4)} m³/s ÷ (${sharpEdgedDischargeCoefficient} × ${gap.width.toPrecision(4)} m × ${gap.height.toPrecision(4)} m))²`,
        value: `${pressure.toPrecision(3)} Pa`,
        source: moistureMethods.orifice.citation,
      },
    ],
    sources: citations(doorClearance.citation, moistureMethods.orifice.citation),
  });
  return found;
}

const size: AnswerCommand<Room> = {
  kind: 'answer',
  name: 'size',
  summary: 'How much air the room needs: code minimum, floor area, fixtures, air changes, and the pick.',
  example: 'room-length="8 ft" room-width="5 ft" ceiling-height="8 ft" fixtures="toilet, tub"',
  takes: [roomLength, roomWidth, roomArea, ceilingHeight, fixtures, toiletCompartment, running, buildingCodeEdition],
  interview: roomInterview,
  answer,
};

export default size;
