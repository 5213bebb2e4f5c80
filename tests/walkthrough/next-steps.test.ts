import { describe, expect, it } from 'vitest';
import { carrySheet } from '#walkthrough/carry-sheet.ts';
import { nextSteps, stageScreen } from '#walkthrough/next-steps.ts';
import { crew, type Role } from './crew.ts';
import { dayOn, plainHouse, why } from './day.ts';

const asking = (role: Role) => ({ who: role, standing: crew[role], day: '2027-03-01' });

describe('what comes next for a person', () => {
  it('is the stage the job is in, ticks together, the rest one by one', () => {
    const day = dayOn({ until: 'gear-on' });
    const screen = stageScreen(day.state(), asking('apprentice'));
    expect(screen.stage).toBe('protect');
    expect(screen.ticks.map(({ id }) => id)).toEqual(['gear-on']);
    expect(screen.waitsFor).toBeNull();
  });

  it('is nothing while somebody else is waited for, and says who', () => {
    const day = dayOn({ until: 'duct-inspected' });
    const apprentice = stageScreen(day.state(), asking('apprentice'));
    expect(apprentice).toMatchObject({ stage: 'duct', step: null, waitsFor: 'a lead' });
    expect(stageScreen(day.state(), asking('lead')).step?.id).toBe('duct-inspected');
  });

  it('never offers an apprentice a signature, nor anybody another one’s lock', () => {
    const day = dayOn({ until: 'lock-on@apprentice' });
    const yours = (role: Role) => nextSteps(day.state(), asking(role)).yours.map(({ id }) => id);
    expect(yours('apprentice')).toContain('lock-on@apprentice');
    expect(yours('apprentice')).not.toContain('lock-on@qualified');
    expect(yours('qualified')).toContain('lock-on@qualified');
    for (const until of ['breaker-locked', 'sign-dead@fan', 'plan-stands', 'wiring-signed', 'close-job']) {
      const later = dayOn({ until });
      const offered = nextSteps(later.state(), asking('apprentice')).yours;
      expect(
        offered.filter(({ step }) => step.hold),
        until,
      ).toEqual([]);
    }
  });

  it('does not send anybody back to the locks once nothing is left to do under them', () => {
    const day = dayOn({ until: 'lock-off@qualified' });
    expect(day.status('lock-on@apprentice')).toBe('served');
    const yours = nextSteps(day.state(), asking('apprentice')).yours.map(({ step }) => step.stage);
    expect(yours).not.toContain('isolate');
  });

  it('offers the step that answers a stop to those who may lift it', () => {
    const day = dayOn({ until: 'look-behind' });
    day.enter('apprentice', { what: 'done', step: 'look-behind', value: { picture: 'p', found: 'wet-or-moldy' } });
    expect(nextSteps(day.state(), asking('qualified')).yours.map(({ id }) => id)).toContain('look-behind');
    expect(nextSteps(day.state(), asking('apprentice')).yours.map(({ id }) => id)).not.toContain('look-behind');
  });
});

describe('how far the job is', () => {
  it('counts what is done, names the next hold and everyone who is waited for', () => {
    const day = dayOn({ until: 'breaker-locked' });
    const { progress, holds } = day.state();
    expect(progress.of).toBe(day.state().list.count);
    expect(progress.done).toBe(day.events.length);
    expect(progress.nextHold?.title).toBe('Breaker locked (E02)');
    expect(holds[0]).toMatchObject({ reached: true, waitsFor: ['electrically-qualified', 'licensed-electrician'] });
    expect(holds.slice(1).every(({ reached }) => !reached)).toBe(true);
  });

  it('ends with everything done and no hold open', () => {
    const day = dayOn();
    day.goOn();
    const { progress, holds, closed, stops, deadProofs } = day.state();
    expect(progress).toEqual({ done: progress.of, of: progress.of, nextHold: null });
    expect([holds, stops]).toEqual([[], []]);
    expect(closed?.name).toBe('Cleo');
    expect(deadProofs.get('fan')?.state).toBe('lapsed');
  });

  it('is closed with nothing left open, even what is no hold', () => {
    const day = dayOn({ until: 'clean-up' });
    const close = { what: 'signed', step: 'close-job', value: { 'open-points': 'none' } } as const;
    expect(why(day.enter('lead', close))).toBe(
      'Not yet: 4 still open. Clean up (C01); Alarm tested (C01b); Show customer (C02) and more.',
    );
    expect(nextSteps(day.state(), asking('lead')).yours.map(({ id }) => id)).not.toContain('close-job');
    day.goOn('close-job');
    expect(day.enter('lead', close)).toMatchObject({ closes: true });
  });

  it('counts time at work, and apart from it pauses and long silences', () => {
    const day = dayOn({ until: 'gear-on' });
    const before = day.state().spent;
    expect(before).toEqual({ working: (day.events.length - 1) * 60_000, away: 0 });
    day.enter('apprentice', { what: 'paused' });
    day.enter('apprentice', { what: 'resumed', after: 1800 });
    expect(day.state().spent).toEqual({ working: before.working + 60_000, away: 1_800_000 });
    day.enter('apprentice', { what: 'noted', value: { says: 'back' }, after: 7200 });
    expect(day.state().spent.away).toBe(9_000_000);
  });
});

describe('the sheet for an attic without signal', () => {
  it('has a line for every step that is left, with its blanks and limits', () => {
    const day = dayOn({ facts: { ...plainHouse, 'duct-material': 'flex' }, until: 'flex-support' });
    const lines = carrySheet(day.state(), ['duct']);
    expect(lines[0]).toMatchObject({
      id: 'flex-support',
      title: 'Flex support (D08)',
      blanks: [
        'Between straps (ft): at most 4 ft',
        'Sag (in/ft): at least 0 in for each foot, at most 0.5 in for each foot',
      ],
      mayBeEnteredLater: true,
    });
    expect(lines.map(({ id }) => id)).not.toContain('duct-clear');
  });

  it('says which steps are entered at once or not at all', () => {
    const lines = carrySheet(dayOn({ until: 'strip-fan' }).state(), ['remove']);
    expect(lines.find(({ id }) => id === 'strip-fan')?.mayBeEnteredLater).toBe(false);
    expect(lines.find(({ id }) => id === 'look-behind')?.mayBeEnteredLater).toBe(true);
  });
});
