import { describe, expect, it } from 'vitest';
import type { AnswerCommand } from '#chat/command.ts';
import { begin } from '#chat/conversation.ts';
import { oneShot } from '#chat/one-shot.ts';
import duct from '#commands/duct.ts';
import fan from '#commands/fan.ts';
import { demoFans } from '#knowledge/demo-fans.ts';
import { storeAt } from '../store/workbench.ts';
import { done, wordsOfReply } from './at-a-desk.ts';

const run = '14 ft 4 in flex compressed 4 %; 2 x elbow 90; wall cap';
const ductCommand = duct as AnswerCommand<unknown>;

const at = (store = storeAt().scoped('crew')) => {
  const act = (name: string, options: Readonly<Record<string, string>> = {}) => done(fan, name, options, { store });
  const words = (name: string, options: Readonly<Record<string, string>> = {}) => wordsOfReply(act(name, options));
  /** Puts answers on the sheet, as /duct does. */
  const note = (given: Readonly<Record<string, string>>) =>
    begin(store, ductCommand, given, { channel: 'thread-1', who: 'ann' });
  return { act, words, note };
};

describe('comparing', () => {
  const withDemo = () => {
    const desk = at();
    desk.act('demo');
    return desk;
  };
  const deliveredByDuct = (label: Readonly<Record<string, string>>): number => {
    const words = [...Object.entries(label).map(([id, text]) => `${id}=${text}`), `duct-run=${run}`];
    const known = words.filter((word) => duct.takes.some(({ id }) => word.startsWith(`${id}=`)));
    const answer = oneShot(ductCommand, known, { units: 'inch-pound' });
    return answer.reply?.findings.find(({ id }) => id === 'delivered-airflow')?.value?.number ?? Number.NaN;
  };

  it('gives each fan what /duct would say it delivers', () => {
    const { act, note } = withDemo();
    note({ 'duct-run': run });
    const { chart, tables } = act('compare');
    expect(tables?.[0]?.rows).toHaveLength(demoFans.length);
    const moved = chart?.marks.map(({ at: [flow] }) => flow);
    // The chart is in cfm: 1 cfm is 0.000471947443 m3/s (NIST SP 811, appendix B.8).
    const expected = demoFans.map(({ label }) => deliveredByDuct(label) / 0.000471947443).sort((a, b) => b - a);
    expect(moved).toHaveLength(expected.length);
    for (const [index, flow] of expected.entries()) expect(moved?.[index]).toBeCloseTo(flow, 3);
  });

  it('chooses the quietest that is surely enough', () => {
    const { words, note, act } = withDemo();
    note({ 'duct-run': run, 'airflow-needed': '50 cfm' });
    const [best] = act('compare').findings;
    expect(best).toMatchObject({ id: 'best-fan', weight: 'good' });
    expect(best?.says).toContain('Take Demo 110 selector (invented): the quietest that is surely enough');
    expect(words('compare', { first: 'Demo 50' })).toContain('None of these is surely enough');
    expect(words('compare', { first: 'Demo 80', second: 'Demo 50' })).toContain(
      'Only Demo 80 (invented) is surely enough',
    );
  });

  it('warns where a fan would work past the points on its label, and draws that part as a guess', () => {
    const { act, note } = withDemo();
    // At 0.1 and 0.25 in. w.g. the demo fans are known; a long 3 in run asks more of most of them.
    note({ 'duct-run': '20 ft 3 in flex; 3 x elbow 90; wall cap' });
    const { findings, chart } = act('compare');
    const warning = findings.find(({ id }) => id === 'past-the-label');
    expect(warning).toMatchObject({ weight: 'caution' });
    expect(warning?.says).toContain('Demo 80 (invented) (known to 0.25 in. w.g., would work at');
    expect(warning?.working.length).toBeGreaterThan(3);
    expect(chart?.lines.filter(({ role }) => role === 'guess').length).toBeGreaterThan(1);
    const easy = withDemo();
    easy.note({ 'duct-run': '3 ft 6 in smooth; wall cap' });
    expect(easy.act('compare').findings.map(({ id }) => id)).not.toContain('past-the-label');
  });

  it('says what was taken for granted where no duct is on the sheet', () => {
    const { act } = withDemo();
    expect(act('compare').assumed?.join(' ')).toContain('A common run stands in');
    expect(act('compare').findings[0]?.says).toContain('Say what airflow is needed');
  });

  it('takes up to four, each once, by whole names, parts or a list with commas', () => {
    const { act, words } = withDemo();
    act('add', { name: 'Long, with a comma', 'fan-curve': '84' });
    const compared = (given: Readonly<Record<string, string>>) =>
      act('compare', given).tables?.[0]?.rows.map(([name]) => name);
    expect(compared({ first: 'demo 50, selector; Demo 50' })).toHaveLength(2);
    expect(compared({ first: 'Long, with a comma', third: 'demo 80' })).toHaveLength(2);
    expect(words('compare')).toContain('Name up to 4 fans');
    expect(words('compare', { first: 'a,b,c,d,e' })).toContain('At most 4 fans');
    expect(words('compare', { first: 'demo' })).toContain('Which:');
    expect(words('compare', { first: ',' })).toContain('Name a fan of the shelf');
    expect(at().words('compare')).toContain('The shelf is empty');
  });

  it('draws one line of the duct for each width of collar, and says it all in words', () => {
    const { act, note } = withDemo();
    note({ 'duct-run': run });
    const chart = act('compare').chart;
    expect(chart?.lines.filter(({ role }) => role === 'system').map(({ label }) => label)).toEqual([
      'duct from a 4 in collar',
      'duct from a 6 in collar',
    ]);
    expect(act('compare', { first: 'demo 50', second: 'demo 80' }).chart?.lines.at(-1)?.label).toBe('this duct');
    for (const { name } of demoFans) expect(chart?.alt).toContain(name);
  });

  it('never says that more need can be met by a fan that was not enough for less', () => {
    const { act, note } = withDemo();
    note({ 'duct-run': run });
    const sureOf = (need: number): number => {
      note({ 'airflow-needed': `${need} cfm` });
      return act('compare').tables?.[0]?.rows.filter((row) => row.includes('enough')).length ?? 0;
    };
    const counts = [20, 35, 50, 60, 70, 90].map(sureOf);
    expect(counts).toEqual(counts.toSorted((a, b) => b - a));
    expect([counts[0], counts.at(-1)]).toEqual([demoFans.length, 0]);
  });
});
