import type { AppliancesSaid, CombustionFacts, FuelAppliance } from '#engine/pressure/combustion-facts.ts';
import { type CombustionJudgement, combustionJudgement } from '#engine/pressure/combustion-judgement.ts';
import type { Finding, Step } from '#findings/finding.ts';
import type { Answer, UnitSystem } from '#interview/question.ts';
import { combustionBackground, combustionLimits, combustionSentences } from '#knowledge/combustion.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { roomPressure } from '#quantity/kinds.ts';
import type { Pascals } from '#quantity/units.ts';
import type { ApplianceId } from '../questions/house-appliances.ts';
import { citations } from './citations.ts';

/** What was answered about flames, as it was answered. */
export interface CombustionAnswers {
  readonly appliances: Answer<readonly ApplianceId[]>;
  readonly inBathZone: Answer<readonly ApplianceId[]>;
  readonly recordedBy: Answer<'lead' | 'other'>;
  readonly sealedProof: Answer<'two-pipes' | 'rating-plate' | 'nothing'>;
  readonly alarm: Answer<'fitted' | 'none' | 'not-tested' | 'sounding'>;
  readonly attachedGarage: Answer<'yes' | 'no'>;
  readonly spillageSeen: Answer<'yes' | 'no'>;
  readonly carbonMonoxide: Answer<number | null>;
}

const appliances: Readonly<Record<ApplianceId, FuelAppliance>> = {
  'natural-draft': 'natural draft',
  unvented: 'unvented',
  'solid-fuel': 'solid fuel',
  'induced-draft': 'induced draft',
  'power-vented': 'power vented',
  sealed: 'sealed',
  'kind-unknown': 'unknown',
};

/** "Don't know" is an answer, and a worse one than not having been asked. */
const said = ({ value, known, asked }: Answer<readonly ApplianceId[]>): AppliancesSaid => {
  if (known) return value.map((id) => appliances[id]);
  return asked === false ? 'not asked' : 'unknown';
};

const proofs = {
  'two-pipes': 'two pipes seen',
  'rating-plate': 'rating plate seen',
  nothing: 'nothing seen',
} as const;

/** The facts as the engine weighs them: whatever nobody said stays unknown, and a lead's word needs to be a lead's. */
function factsOf(answers: CombustionAnswers, fall: Estimate<Pascals> | null): CombustionFacts {
  const { alarm, attachedGarage, spillageSeen, carbonMonoxide, recordedBy, sealedProof } = answers;
  const alarmState = {
    fitted: 'fitted and tested',
    none: 'none',
    'not-tested': 'unknown',
    sounding: 'sounding',
  } as const;
  return {
    appliances: said(answers.appliances),
    appliancesInBathZone: said(answers.inBathZone),
    recordedBy: recordedBy.known ? recordedBy.value : 'other',
    sealedProof: sealedProof.known ? proofs[sealedProof.value] : 'nothing seen',
    houseDepressurisation: fall ?? 'unknown',
    attachedGarage: attachedGarage.known ? attachedGarage.value : 'unknown',
    carbonMonoxideAlarm: alarm.known ? alarmState[alarm.value] : 'unknown',
    spillageSeen: spillageSeen.known ? spillageSeen.value : spillageSeen.asked === false ? 'not asked' : 'unknown',
    carbonMonoxide: carbonMonoxide.value ?? 'not measured',
  };
}

/** One finding for each judgement, stops first. There is always one, and none of them clears anything. */
export function combustionFindings(
  answers: CombustionAnswers,
  fall: Estimate<Pascals> | null,
  units: UnitSystem,
): readonly Finding[] {
  const facts = factsOf(answers, fall);
  return combustionJudgement(facts, combustionLimits).map((judgement) => {
    const { says, citation } = combustionSentences[judgement.code];
    const limits = judgement.code === 'house-pressure' ? limitSteps(facts, units) : [];
    return {
      id: 'combustion-caution',
      weight: judgement.weight,
      says,
      working: [...toldSteps(facts, judgement), ...limits],
      sources: citations(
        citation,
        ...limits.map(({ source }) => source),
        ...(judgement.code === 'estimate-clears-nothing' ? [combustionBackground['local-code-governs'].citation] : []),
      ),
    };
  });
}

/** Whether people must leave the house now, so that nothing more is asked of them. */
export const mustLeave = ({ alarm, spillageSeen, carbonMonoxide }: CombustionAnswers): boolean =>
  (alarm.known && alarm.value === 'sounding') ||
  (spillageSeen.known && spillageSeen.value === 'yes') ||
  (carbonMonoxide.value ?? 0) >= combustionLimits.carbonMonoxideHigh;

const list = (appliances: AppliancesSaid): string => {
  if (appliances === 'not asked') return 'nobody has said';
  if (appliances === 'unknown') return 'nobody could say';
  return appliances.length === 0 ? 'none reported' : appliances.join(', ');
};

/** What a judgement rests on, in the words of those who said it. */
function toldSteps(facts: CombustionFacts, { code }: CombustionJudgement): Step[] {
  const who = facts.recordedBy === 'lead' ? 'by a lead' : 'not confirmed by a lead';
  const house: Step = { what: `Fuel-burning appliances in the house, ${who}`, value: list(facts.appliances) };
  const zone: Step = {
    what: `In the bathroom or a closet that opens only into it, ${who}`,
    value: list(facts.appliancesInBathZone),
  };
  if (code.includes('bath-zone')) return [zone];
  if (code === 'carbon-monoxide-alarm' || code === 'carbon-monoxide-alarm-needed')
    return [{ what: 'Carbon monoxide alarm', value: facts.carbonMonoxideAlarm }];
  if (code === 'carbon-monoxide-high' || code === 'carbon-monoxide-raised')
    return [{ what: 'Carbon monoxide above outdoors', value: `${facts.carbonMonoxide} ppm` }];
  if (code === 'spillage-unknown') return [house, { what: 'Smoke or hot gas coming back', value: 'nobody could say' }];
  if (code === 'spillage') return [{ what: 'Smoke or hot gas coming back', value: 'seen' }];
  if (code === 'garage-air') return [{ what: 'Attached garage', value: facts.attachedGarage }];
  return [house, zone];
}

/** The pull that cannot be ruled out beside what each kind of appliance may bear. */
function limitSteps({ houseDepressurisation: fall, ...facts }: CombustionFacts, units: UnitSystem): Step[] {
  if (fall === 'unknown') return [];
  const { entries, depressurisation } = combustionLimits;
  const proven = facts.recordedBy === 'lead' && facts.sealedProof !== 'nothing seen';
  const counted = (told: AppliancesSaid): readonly FuelAppliance[] =>
    typeof told === 'string' || told.length === 0
      ? ['unknown']
      : told.map((kind) => (kind === 'sealed' && !proven ? 'unknown' : kind));
  const kinds = new Set([facts.appliances, facts.appliancesInBathZone].flatMap(counted));
  return [
    { what: 'House below outdoors that cannot be ruled out', value: roomPressure.show(fall.high, units) },
    ...[...kinds].map((kind): Step => {
      const entry = entries[kind.replace(' ', '-') as Exclude<keyof typeof entries, 'garage'>];
      return {
        what: `Pull at which it may spill: ${entry.name}`,
        value: roomPressure.show(depressurisation[kind], units),
        source: entry.citation,
      };
    }),
  ];
}
