import { expect, onTestFinished } from 'vitest';
import { noteAnswers } from '#chat/answers.ts';
import { deskFor } from '#chat/desk.ts';
import crew from '#commands/crew.ts';
import handoff from '#commands/handoff.ts';
import { commands } from '#commands/index.ts';
import swap from '#commands/swap.ts';
import type { AnyQuestion } from '#interview/question.ts';
import { toSi } from '#quantity/unit-factors.ts';
import { openStore } from '#store/store.ts';
import { done } from './at-a-desk.ts';
import { type Instead, walkedTo } from './swap-walked.ts';

const questions = new Map<string, AnyQuestion>(
  commands.flatMap((command) =>
    command.kind === 'answer' ? command.takes.map((each) => [each.id, each] as const) : [],
  ),
);

const cards = ['electrically-qualified', 'licensed-electrician', 'certified-renovator', 'combustion-tester'];

export const cfm = (value: number) => toSi(value, 'cfm', 'm^3/s');

/** What this invented house says where it is not the plainest answer: 31 cfm before, 80 cfm agreed, a new timer. */
const house: Instead = {
  'old-airflow': { airflow: cfm(31), method: 'powered-hood' },
  'target-airflow': { airflow: cfm(80) },
  'control-choice': { control: 'countdown-timer' },
};

/** One invented lead with every card, and Ben, an apprentice, on a job whose sheet says what is noted. */
export function jobWith(facts: Readonly<Record<string, string>> = {}, instead: Instead = {}) {
  let now = new Date('2027-03-01T13:00:00Z');
  const later = () => {
    now = new Date(now.getTime() + 60_000);
  };
  const store = openStore(':memory:', { now: () => now });
  onTestFinished(() => store.close());
  const kept = store.scoped('test');
  const speaking = { store: kept, commands };
  const desk = deskFor({
    store: () => kept,
    speaker: { channel: 'thread-1', who: 'ann' },
    commands,
    mayManage: true,
  });
  const sheet = kept.currentSheet(desk.speaker).number;
  const note = (more: Readonly<Record<string, string>>) => {
    const pairs = Object.entries(more).map(([id, typed]) => [questions.get(id) as AnyQuestion, typed] as const);
    expect(noteAnswers(kept, sheet, pairs, { who: 'ann' }).notes).toEqual([]);
  };
  done(crew, 'add', { person: 'Ana', as: 'lead' }, speaking);
  done(crew, 'add', { person: 'Ben', as: 'apprentice' }, speaking);
  for (const what of cards)
    done(crew, 'qualify', { person: 'Ana', what, number: 'N-1', expires: '2099-01-01' }, speaking);
  note(facts);
  done(swap, 'start', { as: 'Ana' }, speaking);
  return {
    note,
    later,
    to(step: string) {
      later();
      walkedTo(desk, 'Ana', step, { ...house, ...instead });
    },
    page: (step: string) => done(swap, 'next', { step, as: 'Ana' }, speaking),
    answer: (step: string, value: string, as = 'Ana') => done(swap, 'done', { step, value, as }, speaking),
    say: (action: string, options: Readonly<Record<string, string>>) => done(swap, action, options, speaking),
    papers: () => done(handoff, '', {}, speaking).papers ?? [],
    status: () => done(swap, 'status', { as: 'Ana' }, speaking),
  };
}
