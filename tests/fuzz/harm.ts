/** Control characters but the end of a line, and marks that turn the direction of writing. */
const unseen = /[^\P{Cc}\n]|[\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;

/** What the platform would act on in a formatted text: somebody or something mentioned, a time, an emoji, a link. */
const acting = /@everyone|@here|<(?:@[!&]?|#)\d|<\/\w|<t:\d|<a?:\w+:\d|https?:\/\//i;

const slips = /\bundefined\b|\[object |\bInfinity\b|\bNaN\b/;

/** The first character that may stand in no text, by its number. */
export function unseenIn(text: string): string | undefined {
  const found = unseen.exec(text)?.[0];
  return found === undefined ? undefined : `the character U+${found.codePointAt(0)?.toString(16)}`;
}

/** A word that shows a slip of the program, unless it is among those somebody typed. */
export function slipIn(text: string, typed: ReadonlySet<string>): string | undefined {
  const found = slips.exec(text)?.[0];
  return found === undefined || typed.has(found) ? undefined : `the word ${found}`;
}

/** What of a formatted text the platform would act on, but for the names of those who are there. */
export function actedOn(text: string, people: readonly string[]): string | undefined {
  const named = people.reduce((left, id) => left.replaceAll(`<@${id}>`, 'somebody'), text);
  return acting.exec(named)?.[0];
}

/** Words of ours that say what to do next, or what would have been taken. */
const next =
  /\b(?:Type|Use|Press|Send|Give|Name|Say|Try|Ask|Start|Pick|Wait|Answer|Write|Choose|See|Open|Add|Put|Take|Show|Enter|Tell|Record|Look|Walk|Go|Save|Did you mean|At most)\b|\bis one of\b|\b(?:It takes|takes nothing)\b/;

/** Words of ours that say something is done. */
const end = /^Stopped\.|^Took back|\bis open here\b/;

/** Whether a text tells somebody how to go on (what to do, or which command), or is the end: what was asked for. */
export function leadsOn(text: string, commands: readonly string[]): boolean {
  // A headline with more below is an answer, and so is a working: neither is a refusal.
  if (text.trim().includes('\n\n') || text.startsWith('**')) return true;
  const line = text.replace(/\s+/g, ' ').trim();
  return next.test(line) || end.test(line) || commands.some((name) => line.includes(`/${name}`));
}
