import type { Finding, Table } from '#findings/finding.ts';
import { type Reply, stopsFirst } from '#findings/reply.ts';
import type { Language } from '#words/language.ts';
import { standing } from '#words/standing.ts';
import { weightWord } from '../saying.ts';
import { harmless, speakerName, visible } from './harmless.ts';

/** The platform's limits on one message. */
export const limits = { content: 2000, title: 256, description: 4096, embeds: 6000, footer: 200 } as const;

/** How words are set: for a message, or as plain text for a file. */
export interface Style {
  text(words: string): string;
  bold(words: string): string;
  small(words: string): string;
}

export const inMessage: Style = {
  text: harmless,
  bold: (words) => `**${words}**`,
  small: (words) => `-# ${words}`,
};

export const inFile: Style = { text: visible, bold: (words) => words, small: (words) => words };

/** A finding in a line. A good one needs no word for it; the others say what they are, so that no colour has to. */
const findingLine = ({ weight, says }: Finding, { text, bold }: Style, language?: Language): string =>
  `- ${weight === 'good' ? '' : `${bold(`${weightWord(weight, language)}:`)} `}${text(says)}`;

/** A table as lines a phone can show: the first column in bold, the rest after it. */
function tableLines({ title, columns, rows }: Table, { text, bold, small }: Style): readonly string[] {
  const cell = (words: string, column: number) =>
    /^(?:by|por)$/i.test(columns[column] ?? '') ? speakerName(words) : text(words);
  return [
    bold(text(title)),
    ...(columns.length > 2 ? [small(columns.map((name) => text(name) || nothing).join(' · '))] : []),
    ...rows.map((row) => {
      const [first = '', ...rest] = row.map(cell);
      const kept = rest.slice(0, rest.findLastIndex((words) => words !== '') + 1);
      // With more than two columns a cell left out would put the next one under the wrong name.
      const shown = columns.length > 2 ? kept.map((words) => words || nothing) : kept.filter((words) => words !== '');
      return [first === '' ? '' : bold(first), ...shown].filter((words) => words !== '').join(' · ');
    }),
  ];
}

/** Stands in an empty cell. */
const nothing = '–';

/** As many whole lines as fit in a length. */
function fitted(lines: readonly string[], length: number): readonly string[] {
  const kept: string[] = [];
  let used = -1;
  for (const line of lines) {
    used += line.length + 1;
    if (used > length) break;
    kept.push(line);
  }
  return kept;
}

/** A reply as the text of a message. */
export interface ReplyText {
  /** Absent where the headline is too long for one; it then leads the first block. */
  readonly title: string | undefined;
  readonly blocks: readonly string[];
  /** False when something had to be left out. */
  readonly whole: boolean;
}

/** The lines of a reply after its headline: its findings; then its tables and what was taken for granted. */
function replyLines(reply: Reply, style: Style): { first: readonly string[]; second: readonly string[] } {
  const findings = stopsFirst(reply.findings);
  const tables = [...findings.flatMap(({ table }) => (table ? [table] : [])), ...(reply.tables ?? [])];
  const assumed = reply.assumed ?? [];
  return {
    first: findings.map((finding) => findingLine(finding, style, reply.language)),
    second: [
      ...tables.flatMap((table) => ['', ...tableLines(table, style)]),
      ...(assumed.length > 0
        ? [
            '',
            style.bold(standing[reply.language ?? 'english'].takenForGranted),
            ...assumed.map((line) => `- ${style.text(line)}`),
          ]
        : []),
    ],
  };
}

/** The terms met in a reply, in one small line; nothing where there is none. */
const glossLines = ({ words, language = 'english' }: Reply, { text, small }: Style): readonly string[] =>
  words ? ['', small(text(standing[language].words(words)))] : [];

/** A whole reply as plain text, for a file. */
export function plainReply(reply: Reply): string {
  const { first, second } = replyLines(reply, inFile);
  return [visible(reply.headline), '', ...first, ...second, ...glossLines(reply, inFile)].join('\n');
}

/** The text of a reply within the platform's limits. `more` says at its end where the rest is, when it does not fit. */
export function replyText(reply: Reply, more?: string): ReplyText {
  const { moreThanFits, pressForRest } = standing[reply.language ?? 'english'];
  const leftOut = inMessage.small(moreThanFits(more ?? pressForRest));
  const headline = harmless(reply.headline);
  const title = headline.length <= limits.title ? headline : undefined;
  const { first: findings, second } = replyLines(reply, inMessage);
  const first = [...(title === undefined ? [`**${headline}**`] : []), ...findings];
  const room = limits.embeds - limits.footer - (title?.length ?? 0);
  const firstKept = fitted(first, Math.min(limits.description, room) - leftOut.length - 1);
  const firstBlock = firstKept.join('\n');
  const rest = Math.min(limits.description, room - firstBlock.length) - leftOut.length - 1;
  const secondKept = firstKept.length < first.length ? [] : fitted(second, rest);
  const whole = firstKept.length + secondKept.length === first.length + second.length;
  // A gloss gives way to everything else.
  const glosses = fitted([...secondKept, ...glossLines(reply, inMessage)], rest).slice(secondKept.length);
  const secondBlock = [...secondKept, ...(whole ? glosses : [leftOut])].join('\n').trim();
  return { title, blocks: [firstBlock, secondBlock].filter((block) => block !== ''), whole };
}

/** Long text in pieces that each fit a message, broken between lines where there is a place. */
export function pieces(text: string, length: number = limits.content): readonly string[] {
  const parts: string[] = [];
  let part = '';
  // A character may take two places, so half as many are sure to fit.
  const long = new RegExp(`[^]{1,${Math.floor(length / 2)}}`, 'gu');
  const whole = (line: string) => (line.length > length ? (line.match(long) ?? []) : [line]);
  for (const line of text.split('\n').flatMap(whole)) {
    if (part !== '' && part.length + line.length + 1 > length) {
      parts.push(part);
      part = '';
    }
    part += part === '' ? line : `\n${line}`;
  }
  return part.trim() === '' ? parts : [...parts, part];
}
