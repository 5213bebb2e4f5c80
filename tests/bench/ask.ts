import { plainReading } from '#commands/plain-words/reading.ts';
import corpus from '../commands/plain-words-corpus.json' with { type: 'json' };
import { scored } from '../commands/plain-words-scored.ts';
import { quantile, type Section } from './rows.ts';

const share = (right: number, all: number): string => `${right} of ${all} (${((100 * right) / all).toFixed(1)} %)`;
const aims = { accuracy: 0.95, milliseconds: 20, held: 100 };

const hostile = ['1', '1 ', '1,', '2 elbow ', '8 ft ', '2 grounds ', 'no ', 'point one '].map((part) =>
  part.repeat(2000).slice(0, 2000),
);
const spent = (text: string): number => {
  const before = process.cpuUsage();
  plainReading(text, 'inch-pound');
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
};

export const plainWords: Section = {
  title: 'Plain words: what is understood, and how long one line takes',
  async measure() {
    plainReading(corpus[0]?.text ?? '', 'inch-pound');
    const times = corpus.map(({ text }) => {
      const before = performance.now();
      plainReading(text, 'inch-pound');
      return performance.now() - before;
    });
    const lines = corpus.map(scored);
    const facts = lines.flatMap(({ facts }) => facts);
    const right = {
      commands: lines.filter(({ command }) => command).length,
      facts: facts.filter(Boolean).length,
      lines: lines.filter((each) => each.command && each.facts.every(Boolean)).length,
    };
    const row = (what: string, count: number, all: number) => ({
      what,
      measured: share(count, all),
      aim: { says: `at least ${100 * aims.accuracy} %`, met: count / all >= aims.accuracy },
    });
    const p95 = quantile(times, 0.95);
    const longest = Math.max(...hostile.map(spent));
    return [
      row('commands right', right.commands, lines.length),
      row('facts right', right.facts, facts.length),
      row('lines wholly right', right.lines, lines.length),
      {
        what: 'one line read',
        measured: `p50 ${quantile(times, 0.5).toFixed(1)} ms, p95 ${p95.toFixed(1)} ms`,
        aim: { says: `p95 under ${aims.milliseconds} ms`, met: p95 < aims.milliseconds },
      },
      {
        what: 'the slowest of some hostile lines of 2,000 characters, processor time',
        measured: `${longest.toFixed(1)} ms`,
        aim: { says: `under ${aims.held} ms`, met: longest < aims.held },
      },
    ];
  },
};
