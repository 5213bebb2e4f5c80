import { findingsInAny, type HeardWords } from '#diagnosis/findings-in-words.ts';
import { preparedWords } from '#diagnosis/phrases.ts';
import { namedIn, wordsOfName } from '#interview/named-places.ts';
import { callbackFindings } from '#knowledge/callback-findings.ts';
import { englishCallbackWords, spanishCallbackWords } from '#knowledge/callback-words.ts';

/** What somebody who says so must be told before anything else, whatever else was asked. */
const urgent: ReadonlySet<string> = new Set(['spill', 'smell', 'shock', 'wet-wiring', 'breaker-heat']);

let prepared: readonly ReturnType<typeof preparedWords>[] | undefined;

/** A complaint as it is heard, in whichever of our languages it is. The words are made ready at the first. */
export function heardIn(complaint: string): HeardWords {
  prepared ??= [englishCallbackWords, spanishCallbackWords].map(preparedWords);
  const heard = findingsInAny(prepared, complaint, (id) => callbackFindings[id].danger !== undefined);
  // Whose house it is in says nothing of the fan, and is understood all the same.
  const named = new Set(namedIn(complaint).flatMap(({ as }) => wordsOfName(as)));
  const isName = (part: string) => wordsOfName(part).every((word) => named.has(word));
  return { ...heard, notUnderstood: heard.notUnderstood.filter((part) => !isName(part)) };
}

/** Whether a line of any kind tells of a danger to people: a shock, burning, the gases of a burner, water at live wires. */
export const tellsOfDanger = (line: string): boolean => heardIn(line).seen.some(({ id }) => urgent.has(id));
