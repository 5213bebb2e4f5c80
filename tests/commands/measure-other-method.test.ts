import { describe, expect, it } from 'vitest';
import measure from '#commands/measure.ts';
import { findingOf, once } from './talked.ts';

/** RESNET 804, timed bag: 8.02 × 55 gallons ÷ 6.2 s = 71 cfm; filled to 85 to 105 % (common practice). */
const bag = ['bag-volume=55 gal', 'fill-times=6.2, 6.0, 6.4, 6.1, 6.3 s'];
const box = (pressure: string) => ['method=flow-box', 'box-opening=36 sq in', `box-pressure=${pressure}`];
const beside = (...words: string[]) =>
  once(measure, ...words).reply?.findings.find(({ id }) => id === 'against-other-method');

describe('a second way of measuring on the sheet', () => {
  it('agrees where the errors of both explain the difference', () => {
    expect(beside(...box('4 Pa'), ...bag)).toMatchObject({ weight: 'good' });
    expect(beside(...box('4 Pa'), ...bag)?.says).toContain('The sheet has 71 cfm with a bag too');
  });

  it('is a caution where they do not, whichever was measured last', () => {
    expect(beside(...box('9 Pa'), ...bag)).toMatchObject({ weight: 'caution' });
    const other = beside('method=bag', 'box-opening=36 sq in', 'box-pressure=9 Pa', ...bag);
    expect(other).toMatchObject({ weight: 'caution' });
    expect(other?.says).toContain('with a flow box too, 44 cfm more, and their errors do not explain it');
  });

  it('says nothing where there is but one', () => {
    expect(beside(...box('4 Pa'))).toBeUndefined();
    expect(beside('method=bag', ...bag)).toBeUndefined();
    expect(findingOf(once(measure, 'method=bag', ...bag), 'measured-airflow').says).toContain('71 cfm');
  });
});

describe('the need of a measurement', () => {
  const room = ['room-length=9 ft', 'room-width=7 ft', 'ceiling-height=8 ft', 'fixtures=toilet, tub'];

  it('is what the room on the sheet needs, where nobody told another', () => {
    const answer = once(measure, 'method=bag', 'bag-volume=55 gal', 'fill-times=9.1, 9.4, 9.0, 9.3, 9.2 s', ...room);
    expect(findingOf(answer, 'against-needed')).toMatchObject({ weight: 'caution' });
    // 9 × 7 = 63 sq ft at 1 cfm each (HVI guideline).
    expect(findingOf(answer, 'against-needed').says).toContain('63 cfm');
    expect(answer.reply?.assumed?.join(' ')).toContain('63 cfm (29.7 L/s), worked out from the room on the sheet');
  });

  it('is the one that was told, where one was', () => {
    const answer = once(measure, 'method=bag', ...bag, ...room, 'airflow-needed=50');
    expect(findingOf(answer, 'against-needed').says).toContain('50 cfm');
  });
});
