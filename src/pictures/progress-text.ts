import { doneIn, type Progress, progressWords, type StepMark } from '#findings/progress.ts';
import { plainText } from './plain-text.ts';

const letters: Readonly<Record<StepMark, string>> = { done: '#', passed: '~', hold: 'H', open: '.', stopped: 'X' };

const mostName = 24;

/** How far a list is, in plain letters: a row for each stage with a letter for each step, and what the letters mean. */
export function progressText({ stages, words = progressWords }: Progress): string {
  const names = stages.map(({ label }) => {
    const name = plainText(label);
    return name.length > mostName ? `${name.slice(0, mostName - 1)}…` : name;
  });
  const widest = Math.max(0, ...names.map(({ length }) => length));
  const longest = Math.max(0, ...stages.map(({ marks }) => marks.length));
  const rows = stages.map(
    ({ marks }, index) =>
      `${(names[index] ?? '').padEnd(widest)}  ${marks
        .map((mark) => letters[mark])
        .join('')
        .padEnd(longest)}  ${doneIn(marks)} ${words.of} ${marks.length}`,
  );
  const present = new Set(stages.flatMap(({ marks }) => marks));
  const key = (Object.keys(letters) as StepMark[])
    .filter((mark) => present.has(mark))
    .map((mark) => `${letters[mark]} ${words.marks[mark]}`)
    .join('   ');
  return [...rows, '', `  ${key}`].join('\n');
}
