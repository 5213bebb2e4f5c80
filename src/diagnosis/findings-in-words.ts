import type { CallbackFindingId } from '#knowledge/callback-findings.ts';
import type { ContextId } from '#knowledge/callback-scale.ts';
import { meantBy, type Phrase, type PreparedWords } from './phrases.ts';
import { type Token, tokensOf } from './word-forms.ts';

/** `clear`: said in so many words. `probable`: with a slip of the finger or other words in between. */
type Confidence = 'clear' | 'probable';

interface Heard<Id extends string> {
  readonly id: Id;
  /** The words that led to it, as typed. */
  readonly words: string;
  readonly confidence: Confidence;
}

export interface HeardWords {
  readonly seen: readonly Heard<CallbackFindingId>[];
  readonly notSeen: readonly Heard<CallbackFindingId>[];
  readonly context: readonly Heard<ContextId>[];
  /** Spoken of without saying which way, or said both ways. */
  readonly unsure: readonly Heard<CallbackFindingId>[];
  /** What was not understood, as typed. */
  readonly notUnderstood: readonly string[];
}

interface Match {
  readonly means: Phrase['means'];
  readonly places: readonly number[];
  readonly confidence: Confidence;
  /** Words of denial standing inside it: "the mirror does not fog". */
  readonly denials: readonly number[];
}

/** Longer complaints are cut: nobody types more on a phone. */
const longestText = 2000;
/** How many telling words may stand between two words of a phrase, and between a denial and what it denies. */
const reach = { phrase: 2, denial: 5 };

/**
 * What a customer's own words say of the fan: findings seen and not seen, contexts, and what was not understood.
 *
 * Longest phrases are heard first and a word is used once. A denial reaches forward to the end of its clause.
 */
export function findingsInWords(words: PreparedWords, text: string): HeardWords {
  const typed = text.slice(0, longestText).normalize('NFC');
  const tokens = tokensOf(typed, words);
  const meant = tokens.map(({ form }) => meantBy(form, words));
  const matches = matchesIn(tokens, meant, words);
  const inPhrase = new Set(matches.flatMap(({ places }) => places));
  const used = new Set([...inPhrase, ...matches.flatMap(({ denials }) => denials)]);

  const seen = new Map<CallbackFindingId, Heard<CallbackFindingId>>();
  const notSeen = new Map<CallbackFindingId, Heard<CallbackFindingId>>();
  const context = new Map<ContextId, Heard<ContextId>>();
  const unsure = new Map<CallbackFindingId, Heard<CallbackFindingId>>();
  for (const { means, places, confidence, denials } of matches) {
    const stance = stanceBefore(places[0] as number);
    const said = { words: wordsAt(places), confidence: stance.isFarOff ? ('probable' as const) : confidence };
    const denied = (denials.length % 2 === 1) !== stance.denied;
    if ('context' in means) {
      if (!denied && !stance.unsure) keep(context, means.context, said);
    } else if ('finding' in means) {
      const isSo = means.isSo !== denied;
      keep(stance.unsure ? unsure : isSo ? seen : notSeen, means.finding, said);
    }
  }
  for (const [id, heard] of seen) {
    if (!notSeen.has(id)) continue;
    unsure.set(id, heard);
    seen.delete(id);
    notSeen.delete(id);
  }
  return {
    seen: [...seen.values()],
    notSeen: [...notSeen.values()],
    context: [...context.values()],
    unsure: [...unsure.values()],
    notUnderstood: leftOver(),
  };

  function wordsAt(places: readonly number[]): string {
    return typed.slice(tokens[places[0] as number]?.start, tokens[places.at(-1) as number]?.end);
  }

  /** What stands before a phrase in its clause: a doubt, or a denial, which may be of another word that stands nearer. */
  function stanceBefore(first: number): {
    readonly denied: boolean;
    readonly unsure: boolean;
    readonly isFarOff: boolean;
  } {
    let [telling, between, denials] = [0, 0, 0];
    for (let at = first - 1; at >= 0 && telling <= reach.denial; at -= 1) {
      if (blocks(at + 1, first)) break;
      const form = tokens[at]?.form as string;
      const doubt = matches.find(({ means, places }) => 'unsure' in means && places.includes(at));
      if (doubt && denials === 0) return { denied: false, unsure: true, isFarOff: false };
      const isDenial = words.negators.has(form) && (denials > 0 || !inPhrase.has(at));
      if (isDenial && !words.unlessFollowedBy.has(tokens[at + 1]?.form as string)) {
        if (denials === 0) used.add(at);
        denials += 1;
      } else if (!words.fillers.has(form) && !words.joins.has(form)) {
        telling += 1;
        if (denials === 0 && !inPhrase.has(at)) between += 1;
      }
    }
    return { denied: denials > 0, unsure: false, isFarOff: denials > 0 && (between > 0 || denials > 1) };
  }

  /** Whether a denial is held up before this word: at a stop, or at a pause that is not a list ending in "or". */
  function blocks(at: number, first: number): boolean {
    const after = tokens[at]?.after;
    if (after === 'nothing') return false;
    if (after !== 'comma') return true;
    const rest = tokens.slice(at, first + 6);
    const end = rest.findIndex(({ after: next }, place) => place > 0 && next !== 'nothing' && next !== 'comma');
    return !rest.slice(0, end < 0 ? rest.length : end).some(({ form }) => words.joins.has(form));
  }

  /** A word that says nothing by itself. */
  function isIdle(at: number): boolean {
    const { form, text } = tokens[at] as Token;
    return (
      text.length < 3 ||
      words.fillers.has(form) ||
      words.idle.has(form) ||
      words.joins.has(form) ||
      words.pauses.has(text.toLowerCase())
    );
  }

  function leftOver(): string[] {
    const runs: string[] = [];
    let run: number[] = [];
    const close = () => {
      while (run.length > 0 && isIdle(run[0] as number)) run.shift();
      while (run.length > 0 && isIdle(run.at(-1) as number)) run.pop();
      if (run.length > 0) runs.push(wordsAt(run));
      run = [];
    };
    for (const [at, { after }] of tokens.entries()) {
      const isJoin = words.pauses.has((tokens[at] as Token).text.toLowerCase());
      if (used.has(at) || isJoin || after === 'stop') close();
      if (!used.has(at) && !isJoin) run.push(at);
    }
    close();
    return runs;
  }
}

/**
 * What words say that may be in any of several languages: the reading that leaves least unread. A danger that another reading
 * heard is heard all the same, however little of the rest it understood.
 */
export function findingsInAny(
  catalogues: readonly PreparedWords[],
  text: string,
  isDanger: (id: CallbackFindingId) => boolean,
): HeardWords {
  const readings = catalogues.map((words) => findingsInWords(words, text));
  const unread = ({ notUnderstood }: HeardWords) => notUnderstood.reduce((sum, { length }) => sum + length, 0);
  const best = readings.reduce((one, other) => (unread(other) < unread(one) ? other : one));
  const known = new Set([...best.seen, ...best.notSeen, ...best.unsure].map(({ id }) => id));
  const others = readings
    .filter((reading) => reading !== best)
    .flatMap(({ seen }) =>
      seen.filter(({ id, confidence }) => confidence === 'clear' && isDanger(id) && !known.has(id)),
    );
  return others.length === 0 ? best : { ...best, seen: [...best.seen, ...others] };
}

/** The first word for something counts; a clear one replaces a probable one. */
function keep<Id extends string>(heard: Map<Id, Heard<Id>>, id: Id, said: Omit<Heard<Id>, 'id'>): void {
  const before = heard.get(id);
  if (before === undefined || (before.confidence === 'probable' && said.confidence === 'clear')) {
    heard.set(id, { id, ...said });
  }
}

function matchesIn(tokens: readonly Token[], meant: readonly (readonly string[])[], words: PreparedWords): Match[] {
  const found: Match[] = [];
  for (const [start] of tokens.entries()) {
    for (const first of meant[start] ?? []) {
      for (const phrase of words.byFirstWord.get(first) ?? []) {
        const match = matchAt(start, phrase);
        if (match) found.push(match);
      }
    }
  }
  const span = ({ places }: Match) => (places.at(-1) as number) - (places[0] as number);
  found.sort(
    (a, b) =>
      b.places.length - a.places.length ||
      Number(b.confidence === 'clear') - Number(a.confidence === 'clear') ||
      span(a) - span(b) ||
      (a.places[0] as number) - (b.places[0] as number),
  );
  const taken = new Set<number>();
  const kept = found.filter(({ places }) => {
    if (places.some((at) => taken.has(at))) return false;
    for (const at of places) taken.add(at);
    return true;
  });
  return kept.sort((a, b) => (a.places[0] as number) - (b.places[0] as number));

  function matchAt(start: number, { means, forms }: Phrase): Match | undefined {
    const places = [start];
    const denials: number[] = [];
    let exact = tokens[start]?.form === forms[0];
    for (const form of forms.slice(1)) {
      let [at, skipped] = [(places.at(-1) as number) + 1, 0];
      while (at < tokens.length && !(meant[at] ?? []).includes(form)) {
        const { form: other } = tokens[at] as Token;
        // A denial past a comma is of something else: "it rattles, no smell, a windy spot" is no rattle in the wind.
        if (words.negators.has(other) && tokens[at]?.after === 'comma') return undefined;
        if (words.negators.has(other)) denials.push(at);
        else if (!words.fillers.has(other)) skipped += 1;
        if (skipped > reach.phrase || tokens[at]?.after === 'stop') return undefined;
        at += 1;
      }
      if (at >= tokens.length || tokens[at]?.after === 'stop') return undefined;
      exact = exact && skipped === 0 && tokens[at]?.form === form;
      places.push(at);
    }
    return { means, places, confidence: exact ? 'clear' : 'probable', denials };
  }
}
