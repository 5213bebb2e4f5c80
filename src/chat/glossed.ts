import type { Reply } from '#findings/reply.ts';
import { type Gloss, glosses } from '#knowledge/glosses.ts';
import type { Language } from '#words/language.ts';

/** More than this under an answer is a lesson. */
const most = 2;

/** The terms met on every page: told beside a rarer one that leaves them room, never by themselves. */
const everyday = new Set(['cfm', 'inches-of-water']);

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

interface Sought extends Gloss {
  /** In small letters, to be looked for before the pattern is tried. */
  readonly small: readonly string[];
  readonly pattern: RegExp;
}

const soughtIn = new Map<Language, readonly Sought[]>();

function sought(language: Language): readonly Sought[] {
  const before = soughtIn.get(language);
  if (before) return before;
  const made = glosses[language].map((gloss) => ({
    ...gloss,
    small: gloss.seen.map((form) => form.toLowerCase()),
    pattern: new RegExp(`(?<![\\p{L}\\p{N}-])(?:${gloss.seen.map(escaped).join('|')})(?![\\p{L}\\p{N}-])`, 'iu'),
  }));
  soughtIn.set(language, made);
  return made;
}

/**
 * A reply with a gloss for at most two terms of the trade that stand in its sentences, in the order they are met. The whole of
 * what there is to say of a term is looked up.
 */
export function glossed(reply: Reply): Reply {
  if (reply.refused || reply.findings.length === 0) return reply;
  const text = [reply.headline, ...reply.findings.map(({ says }) => says)].join('\n');
  const small = text.toLowerCase();
  const met = sought(reply.language ?? 'english').flatMap(({ id, seen, says, small: forms, pattern }) => {
    const at = forms.some((form) => small.includes(form)) ? text.search(pattern) : -1;
    return at < 0 ? [] : [{ id, at: everyday.has(id) ? at + text.length : at, term: seen[0] ?? id, says }];
  });
  if (met.every(({ id }) => everyday.has(id))) return reply;
  const words = met.sort((one, other) => one.at - other.at).slice(0, most);
  return { ...reply, words: words.map(({ term, says }) => `${term}, ${says}`).join('; ') };
}
