import { expect, it } from 'vitest';
import { walkedHouse } from './walked-house.ts';

it('the picture of a list counts as the list does, and names the holds that remain with who is waited for', () => {
  const { say, status } = walkedHouse({ until: 'straight-start' });
  say('done', { step: 'D07', value: '0.2', as: 'apprentice' });
  const { headline, chart } = status('apprentice');
  const marks = chart?.progress?.stages.flatMap((stage) => stage.marks) ?? [];
  const [, done, of] = /(\d+) of (\d+)/.exec(headline) ?? [];
  expect(marks.filter((mark) => mark === 'done' || mark === 'passed')).toHaveLength(Number(done));
  expect(marks).toHaveLength(Number(of));
  expect(marks).not.toContain('passed');
  expect(chart?.progress?.remarks).toEqual([
    'Out of range: Straight start (D07). Straight, in duct widths: at least 1.',
    'Hold: Duct inspected (D15) waits for a lead',
    'Hold: Ground first (W02) waits for an electrically qualified person or a licensed electrician',
    'Hold: Wiring signed (W07) waits for an electrically qualified person or a licensed electrician',
    'Hold: Close job (C04) waits for a lead',
  ]);
  say('override', { step: 'D07', reason: 'The joist leaves no room.', as: 'lead' });
  const after = status('lead').chart;
  expect(after?.progress?.stages.flatMap((stage) => stage.marks)).toContain('passed');
  expect(after?.progress?.remarks[0]).toContain('Passed over by a lead.');
  expect(after?.alt).toMatch(/^Fan swap, job 1: \d+ of 85 steps\. Survey done; .*Close 5 of 5 left\./);
});
