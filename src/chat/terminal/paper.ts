import { stripVTControlCharacters } from 'node:util';
import wrapAnsi from 'wrap-ansi';

/** How wide the terminal is and whether it may be coloured. Colour is decoration: every word stands without it. */
export interface Paper {
  readonly width: number;
  readonly colour: boolean;
}

/** The paper of a stream at this moment. Only a terminal is coloured, and only where nobody has asked for it plain. */
export const paperOf = (
  { columns = 88, isTTY = false }: { readonly columns?: number; readonly isTTY?: boolean },
  environment: NodeJS.ProcessEnv,
): Paper => ({
  width: Math.min(100, Math.max(30, columns)) - 1,
  colour: isTTY && !environment['NO_COLOR'] && environment['TERM'] !== 'dumb',
});

/** Control characters, and those that turn the direction of writing: neither may reach a terminal from what was typed. */
const unprintable = /[\p{Cc}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/gu;

/** Text that came from a person or a file, made safe to print: line breaks stay, escapes and other controls go. */
export const safe = (text: string): string =>
  stripVTControlCharacters(text)
    .split('\n')
    .map((line) => line.replaceAll('\t', ' ').replace(unprintable, ''))
    .join('\n');

/** A number keeps its unit on its own line, and "in. w.g." stays whole. */
const bound = (text: string): string =>
  text.replace(/(\d) (?=[\p{L}%°]|\d+\/\d)/gu, '$1\u00a0').replace(/\bin\. w\.g\./g, 'in.\u00a0w.g.');

/** Safe text in lines of at most `width`, broken between words; a word longer than a line is cut. */
export const linesOf = (text: string, width: number): readonly string[] =>
  wrapAnsi(bound(safe(text)), Math.max(8, width), { hard: true })
    .replaceAll('\u00a0', ' ')
    .split('\n');

/** A paragraph: `lead` before its first line, `under` before the rest, which lines them up under the text. */
export function paragraph(text: string, { width }: Paper, lead = '', under = ' '.repeat(lead.length)): string {
  return linesOf(text, width - under.length)
    .map((line, index) => (index === 0 ? lead : under) + line)
    .join('\n');
}

/** Decorates text where the paper takes it. */
export const painted = (text: string, colour: string, paper: Paper): string =>
  paper.colour && colour !== '' ? `${colour}${text}\x1b[0m` : text;
