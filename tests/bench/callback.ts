import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { diagnose } from '#diagnosis/diagnose.ts';
import { nextCheck } from '#diagnosis/next-check.ts';
import { preparedReasoning } from '#diagnosis/reasoning.ts';
import { type CallbackFindingId, callbackFindings, isVariable } from '#knowledge/callback-findings.ts';
import { type CauseId, callbackKnowledge, causes } from '#knowledge/causes.ts';
import { median, quantile, type Section } from './rows.ts';

interface Case {
  readonly seen: readonly string[];
  readonly notSeen: readonly string[];
  readonly context: readonly string[];
  readonly expected: readonly string[];
}

const read = (path: string): unknown => JSON.parse(readFileSync(join(import.meta.dirname, '..', path), 'utf8'));

/** The cases written beside the causes and those written blind, in one shape. */
function cases(): Case[] {
  const own = read('worked-examples/figures/callback-cases.json') as {
    cases: (Omit<Case, 'expected'> & { leads: string[]; stops: boolean })[];
  };
  const blind = read('diagnosis/blind-cases.json') as (Omit<Case, 'expected'> & {
    expectedTop: string[];
    danger: boolean;
  })[];
  return [
    ...own.cases.filter(({ stops }) => !stops).map(({ leads, ...rest }) => ({ ...rest, expected: leads })),
    ...blind.filter(({ danger }) => !danger).map(({ expectedTop, ...rest }) => ({ ...rest, expected: expectedTop })),
  ].filter(({ expected }) => expected.length > 0);
}

const reasoning = preparedReasoning(callbackKnowledge);
const most = 30;

/** What the person on site would say: as the case tells, else as its cause usually looks. */
function answered(check: string, answers: readonly string[], told: Case): { seen?: string; notSeen?: string } {
  const cause = causes[told.expected[0] as CauseId];
  if (isVariable(check)) {
    const known = answers.find((answer) => told.seen.includes(answer));
    const chances = cause.chances[check] ?? {};
    const usual = answers.toSorted((one, other) => (chances[other] ?? 0) - (chances[one] ?? 0))[0];
    const value = known ?? usual;
    return value === undefined ? {} : { seen: value };
  }
  if (told.seen.includes(check)) return { seen: check };
  const tier = told.notSeen.includes(check) ? undefined : cause.signs[check as CallbackFindingId];
  return tier === 'always' || tier === 'usually' ? { seen: check } : { notSeen: check };
}

/** Asks from the complaint alone until nothing more is asked. */
function questionsFor(told: Case): { asked: number; right: boolean; times: number[] } {
  const complaint =
    told.seen.find((id) => callbackFindings[id as CallbackFindingId]?.from === 'phone') ?? told.seen[0] ?? '';
  const seen = [complaint];
  const notSeen: string[] = [];
  const times: number[] = [];
  for (let asked = 0; asked < most; asked += 1) {
    const start = performance.now();
    const next = nextCheck(reasoning, { seen, notSeen, context: told.context, deadProven: true });
    times.push(performance.now() - start);
    if (next.kind !== 'check') {
      const top = diagnose(reasoning, { seen, notSeen, context: told.context }).ranking[0]?.cause ?? '';
      return { asked, right: told.expected.includes(top), times };
    }
    const answer = answered(next.check.id, next.check.answers, told);
    if (answer.seen) seen.push(answer.seen);
    if (answer.notSeen) notSeen.push(answer.notSeen);
  }
  return { asked: most, right: false, times };
}

export const callbackQuestions: Section = {
  title: 'A callback from the complaint alone to the end of asking, over all cases without a danger',
  async measure() {
    const all = cases().map(questionsFor);
    const asked = all.map((each) => each.asked);
    const times = all.flatMap((each) => each.times).slice(20);
    const middle = median(asked);
    const time = median(times);
    return [
      { what: 'cases', measured: String(all.length) },
      { what: 'questions, median', measured: String(middle), aim: { says: '5 or fewer', met: middle <= 5 } },
      { what: 'questions, 90 of 100 within', measured: String(quantile(asked, 0.9)) },
      { what: 'right cause first at the end', measured: `${all.filter(({ right }) => right).length} of ${all.length}` },
      {
        what: 'a next question, median',
        measured: `${time.toFixed(2)} ms`,
        aim: { says: 'under 2 ms', met: time < 2 },
      },
    ];
  },
};
