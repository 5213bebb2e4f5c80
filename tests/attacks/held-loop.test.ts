import { describe, expect, it } from 'vitest';
import { understood } from '#chat/answers.ts';
import { optionsFrom, wordsOf } from '#chat/options.ts';
import { commands } from '#commands/index.ts';
import { plainReading } from '#commands/plain-words/reading.ts';
import { filledIn } from '#commands/workings/swap-values.ts';
import { findingsInWords } from '#diagnosis/findings-in-words.ts';
import { preparedWords } from '#diagnosis/phrases.ts';
import type { AnyQuestion } from '#interview/question.ts';
import { englishCallbackWords } from '#knowledge/callback-words.ts';
import { checklists } from '#knowledge/checklists.ts';
import { lookedUp } from '#lookup/lookup.ts';
import { walkList } from '#walkthrough/walk-list.ts';

/**
 * While one text is read nobody else is heard. Milliseconds of work that only a pattern read in two ways comes to, whatever
 * else the machine does: those that were mended took 4 and 12 seconds. The bench says how few it is.
 */
const longest = 2000;

/**
 * What a pattern may be able to take in more than one way, said over and over until the text is as long as an option or a
 * field may be; then something that fits nothing. Invented for this purpose.
 */
const pieces = [
  ' ',
  '1',
  '1 ',
  '1,',
  ' ,',
  ' /',
  '- ',
  '. ',
  '1 x ',
  ' or',
  '( ',
  '; ',
  '110@0.1 ',
  'in ',
  '14 ft ',
  '12/2 ',
  'a ',
];
const text = (start: string, piece: string, length: number): string =>
  `${(start + piece.repeat(length)).slice(0, length - 1)}!`;

/** Milliseconds of this process's own work; what else the machine does is not counted. */
function worked(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** The first text that takes too long twice: what the runtime does for itself does not come twice. */
function tooLong(
  read: (text: string) => unknown,
  length: number,
  starts: readonly string[] = [''],
): string | undefined {
  for (const start of starts) {
    for (const piece of pieces) {
      const hostile = text(start, piece, length);
      if (worked(() => read(hostile)) <= longest) continue;
      const again = worked(() => read(hostile));
      if (again > longest) return `${start}${piece}…: ${Math.round(again)} ms`;
    }
  }
  return undefined;
}

const questions: readonly (readonly [string, AnyQuestion])[] = [
  ...new Map(commands.flatMap((each) => (each.kind === 'answer' ? each.takes.map((asked) => [asked.id, asked]) : []))),
];

describe('no text keeps others waiting', { timeout: 120_000 }, () => {
  it.each(questions)('typed as %s', (_, question) => {
    expect(tooLong((said) => understood(question, said, 'inch-pound'), 600)).toBeUndefined();
  });

  it('typed in plain words', () => {
    const starts = ['', 'speeds 80', '110 fan selector 80', 'duct 14 ft '];
    expect(tooLong((said) => plainReading(said, 'inch-pound'), 500, starts)).toBeUndefined();
  });

  it('typed as a complaint, a look-up, an answer to a step or a line of options', () => {
    const words = preparedWords(englishCallbackWords);
    const [step] = walkList({ checklist: checklists.swap, facts: {}, boxes: [], crew: [] }).steps;
    lookedUp('duct', 1);
    expect(tooLong((said) => findingsInWords(words, said), 600)).toBeUndefined();
    expect(tooLong((said) => lookedUp(said, 20), 200)).toBeUndefined();
    expect(tooLong((said) => step && filledIn(step, said), 600)).toBeUndefined();
    expect(tooLong((said) => optionsFrom(wordsOf(said), ['a', 'x']), 6000, ['', 'a="', 'a=“'])).toBeUndefined();
  });
});
