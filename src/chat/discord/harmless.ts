import { stripVTControlCharacters } from 'node:util';

/** Marks that turn the direction of writing; with them a name could make the words after it read backwards. */
const turning = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/g;

/** Invisible, and enough to break up what the platform would take for a mention or a link. */
const gap = '\u200b';

/** Text without anything that cannot be seen: no control characters, no terminal escapes, no marks that turn the line. */
export const visible = (text: string): string =>
  stripVTControlCharacters(text.replace(/\r\n?/g, '\n'))
    .replace(/[\t\u00a0]/g, ' ')
    .replace(/[^\P{Cc}\n]/gu, '')
    .replace(turning, '');

/**
 * Text of ours or theirs that shows as it was typed: no bold, no headings, lists or quotes, no code, no links, and nobody is
 * mentioned. For messages and embeds; labels of buttons and menus take `visible` text, since nothing is formatted there.
 */
export const harmless = (text: string): string =>
  visible(text)
    .replace(/[\\*_~|`[\]]/g, '\\$&')
    .replace(/<(?=[@#:/\w])/g, `<${gap}`)
    .replace(/@(?=everyone|here)/gi, `@${gap}`)
    .replace(/:(?=\/\/)/g, '\\:')
    .replace(/(\w)\.(?=[a-z]{2,}\/)/gi, '$1\\.')
    .replace(/^(\s*)([#>]|[-+](?=[\s#]))/gm, '$1\\$2')
    .replace(/^(\s*\d+)\.(?=\s)/gm, '$1\\.');

/** Someone who spoke, as the records name them: shown as a name, and never told of it, since messages here mention nobody. */
const speaker = /^<@\d{5,20}>$/;

/** The name of somebody who spoke. Anything else that stands in its place is harmless text. */
export const speakerName = (who: string): string => (speaker.test(who) ? who : harmless(who));

/** At most `length` characters, never half of one. */
export function clipped(text: string, length: number): string {
  if (text.length <= length) return text;
  const kept = text.slice(0, length - 1);
  return `${/[\ud800-\udbff]$/.test(kept) ? kept.slice(0, -1) : kept}…`;
}
