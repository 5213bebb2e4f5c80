import { describe, expect, it } from 'vitest';
import { toSi } from '#quantity/unit-factors.ts';
import { dayOn, why } from './day.ts';

const inches = (value: number) => toSi(value, 'in', 'm');
const fits = { overlap: inches(0.5) };

describe('an answer', () => {
  it('closes its step, and the same again changes nothing', () => {
    const day = dayOn({ until: 'housing-fits' });
    expect(day.enter('apprentice', { what: 'done', step: 'housing-fits', value: fits })).toMatchObject({
      closes: true,
    });
    expect(day.enter('qualified', { what: 'done', step: 'housing-fits', value: fits })).toMatchObject({ closes: true });
    expect(day.state().corrections).toEqual([]);
    expect(day.state().steps.get('housing-fits')?.answer?.name).toBe('Ben');
  });

  it('given anew is a correction that shows both names', () => {
    const day = dayOn({ until: 'housing-fits' });
    day.enter('apprentice', { what: 'done', step: 'housing-fits', value: fits });
    day.enter('qualified', { what: 'done', step: 'housing-fits', value: { overlap: inches(1) } });
    const [correction] = day.state().corrections;
    expect([correction?.before.name, correction?.after.name]).toEqual(['Ben', 'Cleo']);
    expect(day.state().steps.get('housing-fits')?.answer?.value).toEqual({ overlap: inches(1) });
    expect(day.state().steps.get('housing-fits')?.history).toHaveLength(2);
  });

  it('out of range is kept and does not close', () => {
    const day = dayOn({ until: 'housing-fits' });
    const verdict = day.enter('apprentice', { what: 'done', step: 'housing-fits', value: { overlap: inches(0.2) } });
    expect(verdict).toEqual({
      accepted: true,
      closes: false,
      says: 'Least overlap: at least 0.25 in. The step stays open.',
    });
    expect(day.status('housing-fits')).toBe('open');
    expect(day.state().outOfRange[0]).toMatchObject({ says: 'Least overlap: at least 0.25 in.', passed: false });
    day.enter('apprentice', { what: 'done', step: 'housing-fits', value: { overlap: inches(0.25) } });
    expect(day.status('housing-fits')).toBe('closed');
    expect(day.state().outOfRange).toEqual([]);
  });

  it('is refused with what is missing, misread or not asked', () => {
    const day = dayOn({ until: 'measured-airflow' });
    const said = (value: unknown) => why(day.enter('apprentice', { what: 'done', step: 'measured-airflow', value }));
    expect(said({ mean: 0.04 })).toBe('Still to say: Low end of its range.');
    expect(said({ mean: 'forty', 'low-end': 1 })).toBe('Mean of three: give a number.');
    expect(said({ mean: 0.04, 'low-end': 0.04, door: 'shut' })).toBe('This step does not ask for “door”.');
    expect(said('yes')).toBe('This answer cannot be read. Give it again.');
    expect(said({ mean: Number.NaN, 'low-end': 1 })).toBe('This answer cannot be read. Give it again.');
  });

  it('counts a photo that was sent before', () => {
    const day = dayOn({ until: 'look-behind' });
    expect(why(day.enter('apprentice', { what: 'done', step: 'look-behind', value: { found: 'sound' } }))).toBe(
      'Still to say: The bay.',
    );
    day.enter('apprentice', { what: 'photo', step: 'look-behind', value: { reference: 'message 12' } });
    expect(day.status('look-behind')).toBe('open');
    expect(day.enter('apprentice', { what: 'done', step: 'look-behind', value: { found: 'sound' } })).toMatchObject({
      closes: true,
    });
  });

  it('holds the measured airflow against what was agreed, by the low end of its range', () => {
    const day = dayOn({ until: 'target-airflow' });
    const agreed = { airflow: toSi(80, 'cfm', 'm^3/s'), agreed: 'the customer' };
    day.enter('qualified', { what: 'done', step: 'target-airflow', value: agreed });
    day.goOn('measured-airflow');
    const measured = (mean: number, low: number) => ({
      what: 'done',
      step: 'measured-airflow',
      value: { mean: toSi(mean, 'cfm', 'm^3/s'), 'low-end': toSi(low, 'cfm', 'm^3/s') },
    });
    expect(day.enter('apprentice', measured(88, 76))).toMatchObject({ accepted: true, closes: false });
    expect(day.enter('apprentice', measured(92, 80))).toMatchObject({ accepted: true, closes: true });
  });

  it('passes the door by the measured drop alone: less than a tenth', () => {
    const dropped = (open: number, shut: number) => {
      const day = dayOn({ until: 'door-test' });
      return day.enter('apprentice', { what: 'done', step: 'door-test', value: { open, shut } });
    };
    expect(dropped(100, 91)).toMatchObject({ closes: true });
    expect(dropped(100, 90)).toMatchObject({ closes: false });
    expect(dropped(0, 0)).toMatchObject({ closes: false });
  });

  it('takes noise as advice', () => {
    const day = dayOn({ until: 'sound' });
    const value = { character: 'rattle', background: 30, level: 50 };
    expect(day.enter('apprentice', { what: 'done', step: 'sound', value })).toMatchObject({ closes: true });
    expect(day.state().advice.map(({ says }) => says)).toEqual([
      'Find the rattle: grille spring, loose screw, duct end.',
      'Over 45 dBA is loud for a bath fan. Compare with the level worked out.',
    ]);
  });
});
