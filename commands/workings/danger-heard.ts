import { findingsInAny, type HeardWords } from '#diagnosis/findings-in-words.ts';
import { preparedWords } from '#diagnosis/phrases.ts';
import { namedIn, wordsOfName } from '#interview/named-places.ts';
import { type CallbackFindingId, callbackFindings } from '#knowledge/callback-findings.ts';
import { englishCallbackWords, spanishCallbackWords } from '#knowledge/callback-words.ts';
import { alarmSpokenOf } from './alarm-spoken-of.ts';
import { dangersCaught } from './danger-net.ts';

/** What somebody who says so must be told before anything else, whatever else was asked. */
const urgent: ReadonlySet<string> = new Set(['spill', 'smell', 'shock', 'wet-wiring', 'breaker-heat']);

let prepared: readonly ReturnType<typeof preparedWords>[] | undefined;

/**
 * A complaint as it is heard, in whichever of our languages it is. The words are made ready at the first. An alarm for carbon
 * monoxide that only hangs there is no sign of any; one that chirps is asked about, and counts as one until somebody says no.
 */
export function heardIn(complaint: string): HeardWords & { readonly alarmChirps: boolean } {
  prepared ??= [englishCallbackWords, spanishCallbackWords].map(preparedWords);
  const { rest, chirps } = alarmSpokenOf(complaint);
  const heard = withCaught(
    withoutNames(
      findingsInAny(prepared, rest, (id) => callbackFindings[id].danger !== undefined),
      complaint,
    ),
    rest,
  );
  if (!chirps || heard.seen.some(({ id }) => id === 'spill')) return { ...heard, alarmChirps: chirps };
  const chirp = { id: 'spill' as const, words: complaint.slice(0, 100), confidence: 'probable' as const };
  return {
    ...heard,
    notSeen: heard.notSeen.filter(({ id }) => id !== 'spill'),
    unsure: [chirp, ...heard.unsure.filter(({ id }) => id !== 'spill')],
    alarmChirps: true,
  };
}

/** With the dangers that a line tells in an order of words no phrase has. Gas is no smell of a drain then, whatever phrase stood there too. */
function withCaught(heard: HeardWords, line: string): HeardWords {
  const told = new Set(heard.seen.map(({ id }) => id));
  const caught = [...dangersCaught(line)].filter((id) => !told.has(id));
  if (caught.length === 0) return heard;
  const isCaught = ({ id }: { readonly id: CallbackFindingId }) => caught.includes(id);
  return {
    ...heard,
    seen: [
      ...heard.seen.filter(({ id }) => id !== 'odour-own' || !caught.includes('spill')),
      ...caught.map((id) => ({ id, words: line.slice(0, 100), confidence: 'probable' as const })),
    ],
    notSeen: heard.notSeen.filter((each) => !isCaught(each)),
    unsure: heard.unsure.filter((each) => !isCaught(each)),
  };
}

/** Whose house it is in says nothing of the fan, and is understood all the same. */
function withoutNames(heard: HeardWords, complaint: string): HeardWords {
  const named = new Set(namedIn(complaint).flatMap(({ as }) => wordsOfName(as)));
  const isName = (part: string) => wordsOfName(part).every((word) => named.has(word));
  return { ...heard, notUnderstood: heard.notUnderstood.filter((part) => !isName(part)) };
}

/** Whether a line of any kind tells of a danger to people: a shock, burning, the gases of a burner, water at live wires. */
export function tellsOfDanger(line: string): boolean {
  const { seen, alarmChirps } = heardIn(line);
  return alarmChirps || seen.some(({ id }) => urgent.has(id));
}
