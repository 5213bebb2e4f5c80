import { plainWords } from '../common-words.ts';
import { figuresIn } from './numbers.ts';
import { alsoEnglish, longestPhrase, phrases } from './phrases.ts';
import { shapes } from './shapes.ts';

/** A Spanish line in the words English is read by, and the words of it nobody here knows. */
export interface PutIntoEnglish {
  readonly line: string;
  readonly unknown: readonly string[];
}

/** Letters without their accents, marks without their curls: what anybody types on a phone. */
const bare = (line: string): string =>
  line
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[¿¡]/g, ' ')
    .replace(/[”″]/g, '"')
    .replace(/[’′]/g, "'");

const wordsIn = (text: string): readonly string[] => text.match(/[a-z]+/g) ?? [];

/** Words of the trade's phrases that no English line has. */
const spanish: ReadonlySet<string> = new Set(
  [...phrases.keys()].flatMap(wordsIn).filter((word) => word.length > 2 && !alsoEnglish.has(word)),
);
/** Words of numbers and units, which show a language as well. */
const ofNumbers = /\b(?:pies?|pulgadas?|metros|galones|segundos|grados|veinte|treinta|cuarenta|cincuenta|ciento)\b/;
const common: ReadonlySet<string> = new Set(plainWords);
/** Words English has in the trade, which a line of both languages keeps. */
const english: ReadonlySet<string> = new Set(
  'fan duct flex elbow elbows roof cap wall jack hood box switch ground wire wires romex attic bath shower toilet tub bag flow cfm rpm awg sone sones watts watt amps pa fpm kwh rsi gfci afci dimmer timer ft in mm cm gal sec min hours inch inches feet foot cubic square liters degrees cents at reducer to gap door ceiling x c f m g r w'.split(
    ' ',
  ),
);

const all: ReadonlySet<string> = new Set([...phrases.keys()].flatMap(wordsIn));

/** Whether a line is Spanish: it has words that no English one has, and fewer of those that only English has. */
function isSpanish(text: string): boolean {
  const words = wordsIn(text);
  const shown = words.some((word) => spanish.has(word) && !common.has(word) && !english.has(word));
  if (!shown && !ofNumbers.test(text)) return false;
  const inSpanish = words.filter((word) => all.has(word) || ofNumbers.test(word)).length;
  const inEnglish = words.filter((word) => !all.has(word) && (common.has(word) || english.has(word))).length;
  return inSpanish >= inEnglish;
}

const token = /\{[^}]*\}|\b(?:l\/s|m3\/h|m\/s)\b|[a-z]?\d(?:[\d.,/-]*\d)?[a-z]*|[a-z]+|[^a-z\d{]+/g;

/** Phrase by phrase, the longest that fits first; what is in braces, and every number, stays as it is. */
function translated(text: string): PutIntoEnglish {
  const tokens = text.match(token) ?? [];
  const unknown: string[] = [];
  const out: string[] = [];
  for (let at = 0; at < tokens.length; ) {
    const { words, phrase } = longestAt(tokens, at);
    const one = tokens[at] ?? '';
    at += Math.max(words, 1);
    if (phrase !== undefined) out.push(phrase === '' ? ' ' : ` ${phrase} `);
    else if (!/^[a-z]+$/.test(one)) out.push(one.replace(/[{}]/g, ' '));
    else if (one.length < 3 || english.has(one)) out.push(english.has(one) ? one : '');
    else unknown.push(one);
  }
  return {
    line: out
      .join('')
      .replace(/\s+/g, ' ')
      .replace(/ (?=[,.;])/g, '')
      .replace(/,(?: ?,)+/g, ',')
      .replace(/^[ ,]+/, '')
      .trim(),
    unknown,
  };
}

/** The longest phrase that begins at a token, over the spaces between. */
function longestAt(tokens: readonly string[], at: number): { readonly words: number; readonly phrase?: string } {
  const most = Math.min(tokens.length - at, 2 * longestPhrase - 1);
  for (let count = most; count > 0; count -= 1) {
    const phrase = phrases.get(
      tokens
        .slice(at, at + count)
        .join('')
        .replace(/\s+/g, ' '),
    );
    if (phrase !== undefined) return { words: count, phrase };
  }
  return { words: 0 };
}

/** A line in Spanish put into the words English is read by; nothing where it is not Spanish. */
export function putIntoEnglish(line: string): PutIntoEnglish | undefined {
  const text = bare(line);
  if (!isSpanish(text)) return undefined;
  let turned = figuresIn(
    text
      .replace(/ ?[:=] ?(?=-?\d)/g, ' ')
      .replace(/(?<=\d) ?(?:''|")/g, ' in')
      .replace(/(?<=\d) ?'/g, ' ft'),
  )
    .replace(/\b(?:un|una) (?=codo|curva|vuelta|apagador|interruptor|tierra|cable|alambre|abrazadera)/g, '1 ')
    .replace(/\s+/g, ' ');
  for (const [pattern, english] of shapes)
    turned = turned.replace(pattern, (...found) => {
      const groups = found.slice(
        1,
        found.findIndex((each) => typeof each === 'number'),
      );
      return `{${english(...groups)}}`;
    });
  return translated(turned);
}
