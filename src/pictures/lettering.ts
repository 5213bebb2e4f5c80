import { plainText } from './plain-text.ts';
import { type Face, metrics } from './type-face.ts';

/** How a piece of text is set. Sizes are pixels of the full-size picture. */
export interface Setting {
  readonly face: Face;
  readonly size: number;
}

/** Distance between the baselines of two lines, in ems. */
export const lineSpacing = 1.2;

/** The width of one line of text in pixels. Pair kerning is left out, which can only make this a hair too wide. */
export function textWidth(text: string, { face, size }: Setting): number {
  const { width } = metrics(face);
  return Array.from(text).reduce((sum, character) => sum + width(character), 0) * size;
}

/**
 * Text safe to draw: one line, no control characters or direction overrides, and no pictographs the face cannot draw.
 * Letters the face lacks stay and show as empty boxes, because a missing word is worse than an ugly one.
 */
export function drawableText(text: string): string {
  const { holds } = metrics('regular');
  return Array.from(plainText(text))
    .filter((character) => !/\p{Extended_Pictographic}/u.test(character) || holds(character))
    .join('')
    .replace(/ +/g, ' ')
    .trim();
}

/** A number and the word after it belong together: "68 cfm" is not broken. */
const unbreakable = '\u00a0';
const glued = (text: string): string => text.replace(/(?<=\d) (?=[\p{L}%°])/gu, unbreakable);
const unglued = (line: string): string => line.replaceAll(unbreakable, ' ');

/** Breaks text into at most `lines` lines no wider than `width`; what does not fit ends in an ellipsis. */
export function wrapped(text: string, limits: { width: number; lines: number }, setting: Setting): readonly string[] {
  const words = glued(text)
    .split(' ')
    .filter((word) => word !== '');
  const fits = (line: string) => textWidth(line, setting) <= limits.width;
  const broken: string[] = [];
  for (const word of words) {
    const line = broken.at(-1);
    if (line !== undefined && fits(`${line} ${word}`)) broken[broken.length - 1] = `${line} ${word}`;
    else broken.push(word);
  }
  const kept = broken.slice(0, limits.lines);
  return kept.map((line, index) => {
    const cut = index === kept.length - 1 && broken.length > kept.length;
    return unglued(cut || !fits(line) ? shortened(line, fits) : line);
  });
}

/** As much of the line as fits with an ellipsis after it. */
function shortened(line: string, fits: (line: string) => boolean): string {
  const characters = Array.from(line);
  while (characters.length > 0 && !fits(`${characters.join('').trimEnd()}…`)) characters.pop();
  return `${characters.join('').trimEnd()}…`;
}

/** The same text in exactly `lines` lines of about equal width, or undefined when its words do not divide so. */
export function balanced(text: string, lines: number, setting: Setting): readonly string[] | undefined {
  const whole = textWidth(text, setting);
  const step = whole / 40;
  for (let width = whole / lines; width <= whole; width += step) {
    const attempt = wrapped(text, { width, lines: Number.MAX_SAFE_INTEGER }, setting);
    if (attempt.length < lines) return undefined;
    if (attempt.length === lines && !attempt.some((line) => line.endsWith('…'))) return attempt;
  }
  return lines === 1 ? [text] : undefined;
}
