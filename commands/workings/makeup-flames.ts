import { type Interview, offer, take } from '#interview/interview.ts';
import { attachedGarage, carbonMonoxideAlarm, recordedBy, sealedProof } from '../questions/house.ts';
import {
  type ApplianceId,
  applianceInBathZone,
  carbonMonoxideReading,
  fuelAppliances,
  spillageSeen,
} from '../questions/house-appliances.ts';
import type { CombustionAnswers } from './makeup-combustion.ts';

/** Every question asked or taken about flames, for the list of a command's options. */
export const combustionTakes = [
  carbonMonoxideAlarm,
  fuelAppliances,
  applianceInBathZone,
  spillageSeen,
  recordedBy,
  sealedProof,
  attachedGarage,
  carbonMonoxideReading,
] as const;

/** Those that a small pull can make spill: worth asking whether they do so already. */
const spills: readonly ApplianceId[] = ['natural-draft', 'unvented', 'solid-fuel', 'kind-unknown'];

/** What the sheet says about flames, asking nothing: for a house that people should be leaving. */
export function* combustionOnSheet(): Interview<CombustionAnswers> {
  return {
    appliances: yield* take(fuelAppliances),
    inBathZone: yield* take(applianceInBathZone),
    recordedBy: yield* take(recordedBy),
    sealedProof: yield* take(sealedProof),
    alarm: yield* take(carbonMonoxideAlarm),
    attachedGarage: yield* take(attachedGarage),
    spillageSeen: yield* take(spillageSeen),
    carbonMonoxide: yield* take(carbonMonoxideReading),
  };
}

/** Asked one after another, and not one more once an answer says that people must leave. */
export function* combustionInterview(): Interview<CombustionAnswers> {
  const alarm = yield* offer(carbonMonoxideAlarm);
  if (alarm.known && alarm.value === 'sounding') return yield* combustionOnSheet();
  const appliances = yield* offer(fuelAppliances);
  const none = appliances.known && appliances.value.length === 0;
  const zone = none ? yield* take(applianceInBathZone) : yield* offer(applianceInBathZone);
  const inBathZone = none && zone.asked === false ? { value: [], known: true } : zone;
  const named = [appliances, inBathZone].flatMap(({ value, known }) => (known ? value : []));
  const maySpill = !appliances.known || named.some((id) => spills.includes(id));
  const seen = maySpill ? yield* offer(spillageSeen) : yield* take(spillageSeen);
  if (seen.known && seen.value === 'yes') return yield* combustionOnSheet();
  const needsLead = none || named.includes('sealed') || (inBathZone.known && inBathZone.value.length === 0);
  return {
    appliances,
    inBathZone,
    recordedBy: needsLead ? yield* offer(recordedBy) : yield* take(recordedBy),
    sealedProof: named.includes('sealed') ? yield* offer(sealedProof) : yield* take(sealedProof),
    alarm,
    attachedGarage: yield* offer(attachedGarage),
    spillageSeen: seen,
    carbonMonoxide: yield* take(carbonMonoxideReading),
  };
}
