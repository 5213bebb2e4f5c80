import { escapeMarkdown } from 'discord.js';
import type { Finding, Table } from '#findings/finding.ts';
import { type Reply, stopsFirst } from '#findings/reply.ts';
import { citationText, stepText, weightWords } from '../saying.ts';

/** The platform's limits on one message. */
const limits = { content: 2000, description: 4096, embeds: 6000 } as const;

/** Text of ours or theirs made harmless: no formatting, no headings, no lists, no links, no control characters. */
export const harmless = (text: string): string =>
  escapeMarkdown([...text].filter((character) => character >= ' ' || character === '\n').join(''), {
    heading: true,
    bulletedList: true,
    numberedList: true,
    maskedLink: true,
  }).replace(/&lt;@|<(?=[@#:/])/g, (mark) => (mark === '<' ? '<\u200b' : mark));

/** At most `length` characters, cut at a line end where there is one. */
export function cut(text: string, length: number): string {
  if (text.length <= length) return text;
  const kept = text.slice(0, length - 2);
  const line = kept.lastIndexOf('\n');
  return `${line > length / 2 ? kept.slice(0, line) : kept}\n…`;
}

const findingLine = ({ weight, says }: Finding): string => `**${weightWords[weight]}:** ${harmless(says)}`;

/** A table as lines a phone can show: the first column in bold, the rest after it. */
export const tableLines = ({ title, columns, rows }: Table): string =>
  [
    `**${harmless(title)}**`,
    ...(columns.length > 2 ? [`-# ${columns.map(harmless).join(' · ')}`] : []),
    ...rows.map(([first = '', ...rest]) => `**${harmless(first)}** · ${rest.map(harmless).join(' · ')}`),
  ].join('\n');

/** The blocks of text of a reply: the findings, then tables and what was taken for granted, within the platform's limits. */
export function replyBlocks(reply: Reply): { title: string; blocks: string[] } {
  const findings = stopsFirst(reply.findings);
  const tables = [...findings.flatMap(({ table }) => (table ? [table] : [])), ...(reply.tables ?? [])];
  const assumed = reply.assumed ?? [];
  const first = findings.map(findingLine).join('\n');
  const second = [
    ...tables.map(tableLines),
    ...(assumed.length > 0
      ? [['**Taken for granted**', ...assumed.map((line) => `- ${harmless(line)}`)].join('\n')]
      : []),
  ].join('\n\n');
  const title = cut(harmless(reply.headline), 256);
  const room = limits.embeds - title.length - 200;
  const firstCut = cut(first, Math.min(limits.description, room));
  const secondCut = cut(second, Math.min(limits.description, Math.max(0, room - firstCut.length)));
  return { title, blocks: [firstCut, secondCut].filter((block) => block.trim() !== '' && block.trim() !== '…') };
}

/** The working of a reply, with sources: as one text. */
export const workingLines = (reply: Reply): string =>
  stopsFirst(reply.findings)
    .filter(({ working, sources }) => working.length + sources.length > 0)
    .map(({ id, working, sources }) =>
      [
        `**${harmless(id)}**`,
        ...working.map((step) => `- ${harmless(stepText(step))}`),
        ...sources.map((citation) => `-# from: ${harmless(citationText(citation))}`),
      ].join('\n'),
    )
    .join('\n');

/** Long text in pieces that each fit a message. */
export function pieces(text: string, length: number = limits.content): string[] {
  const parts: string[] = [];
  let part = '';
  for (const line of text.split('\n')) {
    if (part !== '' && part.length + line.length + 1 > length) {
      parts.push(part);
      part = '';
    }
    part += `${part === '' ? '' : '\n'}${cut(line, length)}`;
  }
  return part === '' ? parts : [...parts, part];
}
