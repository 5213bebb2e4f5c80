import type { AppliancesSaid, CombustionFacts, CombustionLimits, FuelAppliance } from './combustion-facts.ts';

/** Every judgement there is, worst first. There is no code for "clear": none of this can clear an appliance. */
export const combustionWeights = {
  'carbon-monoxide-alarm': 'stop',
  spillage: 'stop',
  'carbon-monoxide-high': 'stop',
  'appliance-in-bath-zone': 'stop',
  'bath-zone-unknown': 'stop',
  'spillage-unknown': 'stop',
  'house-pressure': 'stop',
  'house-pressure-unknown': 'stop',
  'bath-zone-not-asked': 'caution',
  'bath-zone-not-confirmed': 'caution',
  'natural-draft': 'caution',
  unvented: 'caution',
  'solid-fuel': 'caution',
  'fan-assisted': 'caution',
  'appliances-unknown': 'caution',
  'none-not-confirmed': 'caution',
  'sealed-not-confirmed': 'caution',
  'house-pressure-not-estimated': 'caution',
  'garage-air': 'caution',
  'carbon-monoxide-raised': 'caution',
  'carbon-monoxide-alarm-needed': 'caution',
  'estimate-clears-nothing': 'caution',
} as const satisfies Record<string, 'caution' | 'stop'>;

type CombustionCode = keyof typeof combustionWeights;

export interface CombustionJudgement {
  readonly code: CombustionCode;
  readonly weight: 'caution' | 'stop';
}

/** Those that a small suction can make spill; not knowing counts among them. */
const spillable: readonly FuelAppliance[] = ['natural draft', 'unvented', 'solid fuel', 'unknown'];

/**
 * What an exhaust fan may do to appliances that burn fuel, as codes with a weight, stops first.
 *
 * Unknown counts as the dangerous answer. "None" and "sealed" count only from a lead, and sealed only with its two pipes
 * or rating plate seen. Inside the bathroom's own zone the whole pressure across the door acts on an appliance, so
 * anything there but a proven sealed one is a stop. The pressure compared is the high end of its estimate, and against it
 * whatever is not confirmed counts as one that can spill. Without an estimate an appliance that was reported is a stop; one
 * that is merely not ruled out, because nobody asked or nobody confirmed it, is a caution. The list is never empty and holds
 * no "clear": only a worst-case test by a trained person decides.
 *
 * @source own working, from the limits and rules cited in the knowledge base beside each sentence
 */
export function combustionJudgement(facts: CombustionFacts, limits: CombustionLimits): readonly CombustionJudgement[] {
  const said = new Set([
    ...dangerNow(facts, limits),
    ...bathZone(facts),
    ...appliancesSaid(facts),
    ...housePressure(facts, limits),
    ...alarm(facts),
    'estimate-clears-nothing' as const,
  ]);
  return Object.entries(combustionWeights)
    .filter((entry): entry is [CombustionCode, 'caution' | 'stop'] => said.has(entry[0] as CombustionCode))
    .map(([code, weight]) => ({ code, weight }));
}

function* dangerNow(facts: CombustionFacts, limits: CombustionLimits): Generator<CombustionCode> {
  if (facts.carbonMonoxideAlarm === 'sounding') yield 'carbon-monoxide-alarm';
  if (facts.spillageSeen === 'yes') yield 'spillage';
  if (facts.spillageSeen === 'unknown' && reported(facts).some((appliance) => spillable.includes(appliance))) {
    yield 'spillage-unknown';
  }
  if (facts.carbonMonoxide === 'not measured') return;
  if (facts.carbonMonoxide >= limits.carbonMonoxideHigh) yield 'carbon-monoxide-high';
  else if (facts.carbonMonoxide >= limits.carbonMonoxideRaised) yield 'carbon-monoxide-raised';
}

function* bathZone(facts: CombustionFacts): Generator<CombustionCode> {
  if (facts.appliancesInBathZone === 'not asked') return yield 'bath-zone-not-asked';
  const there = believed(facts.appliancesInBathZone, facts);
  if (there.some((appliance) => appliance !== 'sealed' && appliance !== 'unknown')) yield 'appliance-in-bath-zone';
  if (there.includes('unknown')) yield 'bath-zone-unknown';
  if (there.length === 0 && facts.recordedBy !== 'lead') yield 'bath-zone-not-confirmed';
}

function* appliancesSaid(facts: CombustionFacts): Generator<CombustionCode> {
  for (const appliance of inTheHouse(facts)) {
    if (appliance === 'natural draft') yield 'natural-draft';
    if (appliance === 'unvented') yield 'unvented';
    if (appliance === 'solid fuel') yield 'solid-fuel';
    if (appliance === 'induced draft' || appliance === 'power vented') yield 'fan-assisted';
    if (appliance === 'unknown') yield 'appliances-unknown';
  }
  if (isNone(facts.appliances) && facts.recordedBy !== 'lead') yield 'none-not-confirmed';
  if (reported(facts).includes('sealed') && !sealedIsProven(facts)) yield 'sealed-not-confirmed';
}

function* housePressure(facts: CombustionFacts, limits: CombustionLimits): Generator<CombustionCode> {
  const appliances = inTheHouse(facts);
  const pressure = facts.houseDepressurisation;
  if (pressure === 'unknown') {
    if (reported(facts).some((appliance) => spillable.includes(appliance))) yield 'house-pressure-unknown';
    else if (appliances.length > 0) yield 'house-pressure-not-estimated';
  } else if (appliances.some((appliance) => !(pressure.high < limits.depressurisation[appliance]))) {
    yield 'house-pressure';
  }
  const deep = pressure === 'unknown' || !(pressure.high < limits.garage);
  if (facts.attachedGarage !== 'no' && deep) yield 'garage-air';
}

function* alarm(facts: CombustionFacts): Generator<CombustionCode> {
  if (facts.carbonMonoxideAlarm === 'none' || facts.carbonMonoxideAlarm === 'unknown') {
    yield 'carbon-monoxide-alarm-needed';
  }
}

const sealedIsProven = ({ recordedBy, sealedProof }: CombustionFacts): boolean =>
  recordedBy === 'lead' && sealedProof !== 'nothing seen';

const isNone = (said: AppliancesSaid): boolean => typeof said !== 'string' && said.length === 0;

/** A list as far as it may be believed: sealed without proof is unknown. */
function believed(said: AppliancesSaid, facts: CombustionFacts): readonly FuelAppliance[] {
  if (typeof said === 'string') return ['unknown'];
  return said.map((appliance) => (appliance === 'sealed' && !sealedIsProven(facts) ? 'unknown' : appliance));
}

/** Everything in the house that is not ruled out, the bath zone counted in; "none" from anyone but a lead is unknown. */
function inTheHouse(facts: CombustionFacts): readonly FuelAppliance[] {
  const house = believed(facts.appliances, facts);
  const elsewhere: readonly FuelAppliance[] = house.length === 0 && facts.recordedBy !== 'lead' ? ['unknown'] : house;
  const there = facts.appliancesInBathZone === 'not asked' ? [] : believed(facts.appliancesInBathZone, facts);
  return [...elsewhere, ...there];
}

/** Those somebody named, or was asked about and could not name. A sealed one is named as sealed, proven or not. */
const reported = ({ appliances, appliancesInBathZone }: CombustionFacts): readonly FuelAppliance[] =>
  [appliances, appliancesInBathZone].flatMap((said) => {
    if (said === 'not asked') return [];
    return said === 'unknown' ? ['unknown' as const] : said;
  });
