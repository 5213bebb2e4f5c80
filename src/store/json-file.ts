import type { Reading } from '#interview/question.ts';

/** More than any record of one job. */
const mostBytes = 1_000_000;
/** Deeper than anything that is kept. */
const mostDeep = 32;
/** Names by which a value could pass itself off as something of the program's own. */
const forbidden = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * JSON from somebody who may mean harm, or why it is not taken: too large, too deep, broken, with names or letters that no
 * record has, or with numbers beyond counting. None of it is walked by a function that calls itself, so depth cannot hurt.
 */
export function parsedSafely(given: string): Reading<unknown> {
  const text = given.replace(/^\ufeff/, '');
  if (Buffer.byteLength(text) > mostBytes) return { rejected: 'That file is larger than 1 MB.' };
  if (depthOf(text) > mostDeep) return { rejected: 'That file is nested deeper than any record.' };
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { rejected: 'That is not JSON, or it was cut short.' };
  }
  const trouble = strangeness(value);
  return trouble === undefined ? { value } : { rejected: trouble };
}

/** How many brackets stand open at most, whether or not the text is JSON. */
function depthOf(text: string): number {
  let [open, deepest, quoted] = [0, 0, false];
  for (let at = 0; at < text.length; at += 1) {
    const letter = text[at];
    if (quoted && letter === '\\') at += 1;
    else if (letter === '"') quoted = !quoted;
    else if (quoted) continue;
    else if (letter === '{' || letter === '[') deepest = Math.max(deepest, ++open);
    else if (letter === '}' || letter === ']') open -= 1;
  }
  return deepest;
}

/** Half characters and the mark that ends a text in some programs would not come back from the records as they went in. */
const unwritable = /[\p{Cs}\0]/u;

function strangeness(value: unknown): string | undefined {
  const waiting: unknown[] = [value];
  while (waiting.length > 0) {
    const each = waiting.pop();
    if (typeof each === 'number' && !Number.isFinite(each)) return 'There is a number in it beyond counting.';
    if (typeof each === 'string' && unwritable.test(each)) return 'There are letters in it that cannot be kept.';
    if (typeof each !== 'object' || each === null) continue;
    for (const [key, inner] of Object.entries(each)) {
      if (forbidden.has(key)) return `There is a field named “${key}” in it, which no record has.`;
      if (unwritable.test(key)) return 'There are letters in it that cannot be kept.';
      waiting.push(inner);
    }
  }
  return undefined;
}
