import type { JobRecords } from '#chat/command.ts';
import type { HeardWords } from '#diagnosis/findings-in-words.ts';
import type { Finding } from '#findings/finding.ts';
import { type Interview, offer, take } from '#interview/interview.ts';
import { type CallbackFindingId, callbackFindings, isCallbackFinding } from '#knowledge/callback-findings.ts';
import type { Language } from '#words/language.ts';
import { complaint, seen } from '../questions/callback.ts';
import { dayInWords, type EarlierDanger, earlierDangers, stillSo } from '../questions/callback-earlier.ts';
import { callbackAsking } from '../words/callback-checks.ts';
import { citations } from './citations.ts';
import { heardIn } from './danger-heard.ts';

/** Where nobody has said where the crew works, a day ends as late as anywhere: nothing is taken for yesterday's too soon. */
const dayFormat = (timeZone: string): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });

/** The day of an instant where the crew works. */
export function dayIn({ store }: Pick<JobRecords, 'store'>): (instant: string) => string {
  const zone = store.setting('time-zone');
  const format = dayFormat(typeof zone === 'string' ? zone : 'UTC');
  return (instant) => format.format(new Date(instant));
}

type FactInHistory = ReturnType<JobRecords['store']['factHistory']>[number];

/** The dangerous signs a fact of a callback tells of. */
function dangerousIn({ fact, typed, value, how }: FactInHistory): readonly CallbackFindingId[] {
  if (how === 'unknown') return [];
  const told = (): readonly string[] => {
    if (fact === complaint.id) return heardIn(typed).seen.map(({ id }) => id);
    if (fact === seen.id) return Array.isArray(value) ? value.map(String) : [];
    if (!fact.startsWith('check-')) return [];
    return value === 'yes' ? [fact.slice('check-'.length)] : [String(value)];
  };
  return told().filter(
    (id): id is CallbackFindingId => isCallbackFinding(id) && callbackFindings[id].danger !== undefined,
  );
}

/**
 * The dangers told on an earlier day since the last callback was closed, the newest telling of each by each question: a later complaint does not
 * make an earlier danger go away, and neither does time.
 */
export function dangersBefore({ store, sheet }: JobRecords, closing: number): readonly EarlierDanger[] {
  const dayOf = dayIn({ store });
  const today = dayOf(store.now());
  const standing = store.newestFacts(sheet);
  const newest = new Map<string, EarlierDanger>();
  for (const row of store.factHistory(sheet)) {
    const day = dayOf(row.at);
    if (row.retracted !== null || row.id <= closing || day >= today) continue;
    const findings = dangerousIn(row);
    for (const danger of new Set(findings.flatMap((id) => callbackFindings[id].danger ?? []))) {
      newest.set(`${row.fact} ${danger}`, {
        row: row.id,
        fact: row.fact,
        danger,
        findings: findings.filter((id) => callbackFindings[id].danger === danger),
        typed: row.fact.startsWith('check-')
          ? callbackFindings[findings[0] as CallbackFindingId].short
          : row.typed.slice(0, 120),
        stands: standing.get(row.fact)?.id === row.id,
        who: store.standing(row.who).name ?? row.who,
        day,
      });
    }
  }
  return [...newest.values()];
}

/** What came of the dangers of an earlier day. */
export interface Before {
  /** Still so, or nobody knows: they stop, and it is said when they were told and by whom. */
  readonly still: readonly EarlierDanger[];
  readonly over: readonly EarlierDanger[];
  /** Not asked about yet, since a danger was told today: that comes first. */
  readonly waiting: readonly EarlierDanger[];
}

/** Asks of each danger of an earlier day whether it is still so, before anything else is asked. */
export function* askedBefore(): Interview<Before> {
  const { value } = yield* take(earlierDangers);
  const said = yield* take(complaint);
  const given = yield* take(seen);
  const isDanger = (id: CallbackFindingId) => callbackFindings[id].danger !== undefined;
  const isOld = (fact: string) => value.some((each) => each.fact === fact && each.stands);
  const isToldToday =
    (!isOld(complaint.id) && heardIn(said.value).seen.some(({ id }) => isDanger(id))) ||
    (!isOld(seen.id) && given.value.some(isDanger));
  if (isToldToday) return { still: [], over: [], waiting: value };
  const over: EarlierDanger[] = [];
  for (const earlier of value) {
    const { value: isStill } = yield* offer(stillSo(earlier));
    if (isStill !== 'no') return { still: [earlier], over, waiting: [] };
    over.push(earlier);
  }
  return { still: [], over, waiting: [] };
}

/** Signs without those that were told on an earlier day and are over. */
export const withoutOver = (ids: readonly string[], { over }: Before): readonly string[] =>
  ids.filter(
    (id) =>
      !over.some(
        ({ fact, stands, findings }) => fact === seen.id && stands && (findings as readonly string[]).includes(id),
      ),
  );

/** A complaint of an earlier day without the danger in it that is over. Told anew, it counts anew. */
export function heardWithoutOver<Heard extends HeardWords>(words: Heard, { over }: Before): Heard {
  const gone = over
    .filter(({ fact, stands }) => fact === complaint.id && stands)
    .flatMap(({ findings }) => findings as readonly string[]);
  return gone.length === 0 ? words : { ...words, seen: words.seen.filter(({ id }) => !gone.includes(id)) };
}

/** "Told on November 23, 2026 by Ana: …". */
export const earlierFinding = ({ day, who, typed }: EarlierDanger, language: Language): Finding => ({
  id: 'danger-before',
  weight: 'caution',
  says: callbackAsking[language].toldThen(dayInWords(day, language), who, typed),
  working: [],
  sources: citations({ source: 'own-working', verified: false }),
});
