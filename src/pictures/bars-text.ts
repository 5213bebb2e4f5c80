import type { Chart } from '#findings/reply.ts';
import { plainText } from './plain-text.ts';

/** Named amounts as bars of characters for a terminal, the amount at the end of each. Lines end without spaces. */
export function barsText({ title, x, bars = [] }: Chart, { width }: { readonly width: number }): string {
  const names = bars.map(({ label }) => plainText(label));
  const amounts = bars.map(({ shown }) => plainText(shown));
  const longest = Math.max(0, ...names.map((name) => name.length));
  const gutter = Math.min(longest, Math.max(12, Math.floor(width / 2)));
  const room = Math.max(6, width - gutter - 4 - Math.max(0, ...amounts.map((amount) => amount.length)));
  const length = (amount: number) => Math.max(1, Math.round((room * (amount - x.min)) / (x.max - x.min)));
  const fitted = (name: string) => (name.length > gutter ? `${name.slice(0, gutter - 1)}…` : name.padEnd(gutter));
  return [
    plainText(title),
    ...bars.map(({ amount }, index) =>
      `${fitted(names[index] ?? '')} │${'█'.repeat(length(amount))} ${amounts[index]}`.trimEnd(),
    ),
    `${' '.repeat(gutter)} └${'─'.repeat(room)}`,
    `${' '.repeat(gutter + 2)}${plainText(x.label)}`,
  ].join('\n');
}
