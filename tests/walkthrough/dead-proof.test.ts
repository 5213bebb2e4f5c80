import { describe, expect, it } from 'vitest';
import { replayWalk } from '#walkthrough/replay.ts';
import { crew } from './crew.ts';
import { dayOn, plainHouse, why } from './day.ts';

const readings = { controls: 'on', 'hot-neutral': 0.2, 'hot-ground': 0, 'neutral-ground': 0.1, 'other-legs': 0 };
const live = 'Hands off: the fan is not proven dead at this moment. Test it first.';

describe('proving a box dead', () => {
  it('takes tester proved, both tests, tester proved again, in that order', () => {
    const day = dayOn({ until: 'prove-tester-before@fan' });
    expect(why(day.enter('qualified', { what: 'done', step: 'test-dead-controls-on@fan', value: readings }))).toBe(
      'Prove tester before (E03), fan comes first.',
    );
    expect(why(day.enter('qualified', { what: 'signed', step: 'sign-dead@fan', value: {} }))).toBe(
      'Prove tester after (E05), fan comes first.',
    );
    day.goOn('strip-fan');
    expect(day.state().deadProofs.get('fan')).toMatchObject({ state: 'current', signedBy: 'Cleo', because: null });
    expect(Object.keys(day.state().deadProofs.get('fan')?.readings ?? {})).toHaveLength(5);
  });

  it('stops the job at a reading of one volt, even from an apprentice, and starts the whole test again', () => {
    const day = dayOn({ until: 'test-dead-controls-off@fan' });
    const verdict = day.enter('apprentice', {
      what: 'done',
      step: 'test-dead-controls-on@fan',
      value: { ...readings, 'hot-ground': 1 },
    });
    expect(verdict).toMatchObject({ accepted: true, closes: false });
    expect(day.status('test-dead-controls-on@fan')).toBe('stopped');
    expect(day.status('prove-tester-before@fan')).toBe('lapsed');
    expect(day.state().stops[0]?.says).toMatch(/^Treat it as live\. Hands off\./);
    expect(
      why(
        day.enter('qualified', {
          what: 'done',
          step: 'test-dead-controls-off@fan',
          value: { controls: 'all', highest: 0 },
        }),
      ),
    ).toMatch(/^The job is stopped at Test dead controls on \(E04\), fan\./);
    expect(why(day.enter('qualified', { what: 'done', step: 'test-dead-controls-on@fan', value: readings }))).toBe(
      'Prove tester before (E03), fan comes first.',
    );
    day.goOn('strip-fan');
    expect(day.state().deadProofs.get('fan')?.state).toBe('current');
  });

  it('is no test with a control left off', () => {
    const day = dayOn({ until: 'test-dead-controls-on@fan' });
    day.enter('qualified', {
      what: 'done',
      step: 'test-dead-controls-on@fan',
      value: { ...readings, controls: 'off' },
    });
    expect(day.status('test-dead-controls-on@fan')).toBe('stopped');
  });

  it('takes a proving unit, or a live point between 108 and 132 V (120 V give or take a tenth, common practice)', () => {
    const proved = (proof: unknown) => {
      const day = dayOn({ until: 'prove-tester-before@fan' });
      return day.enter('qualified', { what: 'done', step: 'prove-tester-before@fan', value: { proof } });
    };
    expect(proved('proving-unit')).toMatchObject({ closes: true });
    expect(proved(120)).toMatchObject({ closes: true });
    expect(proved(108)).toMatchObject({ closes: true });
    expect(proved(107)).toMatchObject({ accepted: true, closes: false });
    expect(why(proved('I looked at it'))).toBe('Tester proved on: say proving unit, or give the volts.');
  });

  it('is worth nothing when the tester fails afterwards', () => {
    const day = dayOn({ until: 'prove-tester-after@fan' });
    day.enter('qualified', { what: 'done', step: 'prove-tester-after@fan', value: { proof: 0 } });
    expect(day.status('test-dead-controls-on@fan')).toBe('lapsed');
  });

  it('holds for its own box and no other', () => {
    const boxes = [
      { id: 'fan', kind: 'fan', name: 'fan' },
      { id: 'door', kind: 'switch-box', name: 'switch by the door' },
    ] as const;
    const facts = { ...plainHouse, 'control-wanted': 'countdown-timer' };
    const day = dayOn({ facts, boxes, until: 'sign-dead@door' });
    expect(day.state().deadProofs.get('fan')?.state).toBe('current');
    expect(day.state().deadProofs.get('door')?.state).toBe('never');
    day.goOn('control-fitted');
    expect(day.enter('qualified', { what: 'undone', step: 'sign-dead@door' })).toMatchObject({ accepted: true });
    const fitted = { picture: 'photo', fitted: true };
    expect(why(day.enter('qualified', { what: 'done', step: 'control-fitted', value: fitted }))).toMatch(
      /^Sign dead \(E06\), switch by the door/,
    );
  });

  it('is neither corrected nor signed by a card that does not count', () => {
    const day = dayOn({ until: 'sign-dead@fan' });
    for (const role of ['expired', 'unseen', 'carded', 'lead', 'apprentice', 'office', 'renovator'] as const) {
      expect(why(day.enter(role, { what: 'signed', step: 'sign-dead@fan', value: {} })), role).not.toBe('accepted');
    }
    const other = { ...readings, 'hot-neutral': 0.4 };
    expect(why(day.enter('qualified', { what: 'done', step: 'test-dead-controls-on@fan', value: other }))).toBe(
      'A test is not corrected. Take it back, and test again from the start.',
    );
  });
});

describe('a proof does not outlast', () => {
  const atWork = () => dayOn({ until: 'strip-fan' });
  const strip = { what: 'done', step: 'strip-fan', value: { out: true } } as const;

  it('a clock that was set back, by which it would never grow old', () => {
    const day = atWork();
    expect(day.state(-30).deadProofs.get('fan')?.state).toBe('current');
    expect(day.state(-3600).deadProofs.get('fan')).toMatchObject({
      state: 'lapsed',
      because: 'It lapsed: the clock was set back, so nobody knows how old it is.',
    });
    expect(why(day.enter('apprentice', { ...strip, after: -3600 }))).toBe(live);
  });

  it('a pause', () => {
    const day = atWork();
    day.enter('apprentice', { what: 'paused' });
    expect(why(day.enter('apprentice', strip))).toBe('The job is paused by Ben. Resume it first.');
    day.enter('apprentice', { what: 'resumed' });
    expect(why(day.enter('apprentice', strip))).toBe(live);
    expect(day.state().deadProofs.get('fan')).toMatchObject({ state: 'lapsed', because: 'Ben paused the job.' });
    expect(day.status('breaker-locked')).toBe('closed');
    day.goOn();
    expect(day.state().closed).not.toBeNull();
  });

  it('an hour in which nobody on site wrote anything down', () => {
    const day = atWork();
    expect(day.status('sign-dead@fan', 3599)).toBe('closed');
    expect(day.status('sign-dead@fan', 3601)).toBe('lapsed');
    expect(why(day.enter('apprentice', { ...strip, after: 3601 }))).toBe(live);
  });

  it('four hours, however busy', () => {
    const day = atWork();
    for (let count = 0; count < 8; count += 1) {
      day.enter('apprentice', { what: 'noted', step: 'strip-fan', value: { says: 'still here' }, after: 1700 });
    }
    expect(day.status('sign-dead@fan')).toBe('closed');
    day.enter('apprentice', { what: 'noted', step: 'strip-fan', value: { says: 'still here' }, after: 600 });
    expect(day.status('sign-dead@fan')).toBe('lapsed');
  });

  it('the day, where the crew works', () => {
    const day = atWork();
    const left = (Date.parse('2027-03-02T00:00:00Z') - Date.parse(day.events.at(-1)?.enteredAt ?? '')) / 1000;
    expect(day.status('breaker-locked', left - 1)).toBe('closed');
    expect(day.status('breaker-locked', left)).toBe('lapsed');
    const later = (instant: string) => new Date(Date.parse(instant) - 5 * 3_600_000).toISOString().slice(0, 10);
    const eastern = replayWalk(day.list, day.events, { now: '2027-03-02T04:59:00Z', dayOf: later });
    expect(eastern.steps.get('breaker-locked')?.status).toBe('closed');
    const nextDay = replayWalk(day.list, day.events, { now: '2027-03-02T05:00:00Z', dayOf: later });
    expect(nextDay.steps.get('breaker-locked')).toMatchObject({ status: 'lapsed', because: 'A new day has begun.' });
  });

  it('a new person, whose own lock goes on first', () => {
    const day = atWork();
    expect(day.enter('lead', { what: 'joined' })).toMatchObject({ accepted: true });
    expect(day.state().deadProofs.get('fan')?.because).toBe('Ana has come to the job.');
    expect(day.status('lock-on@lead')).toBe('open');
    expect(why(day.enter('lead', { what: 'done', step: 'look-behind', value: { picture: 'p', found: 'sound' } }))).toBe(
      'Hang your own lock on the breaker first.',
    );
  });

  it('a lock that comes off, or the power', () => {
    const day = dayOn({ until: 'lock-off@apprentice' });
    expect(day.state().deadProofs.get('fan')?.state).toBe('current');
    day.enter('apprentice', { what: 'done', step: 'lock-off@apprentice', value: { lock: 'mine' } });
    expect(day.state().deadProofs.get('fan')?.state).toBe('lapsed');
    day.goOn('control-works');
    expect(why(day.enter('electrician', { what: 'done', step: 'join-wires', value: { tugged: 4 } }))).toMatch(
      /not proven dead/,
    );
  });

  it('the undoing of anything it rests on', () => {
    for (const step of [
      'find-breaker',
      'breaker-locked',
      'open-cover@fan',
      'prove-tester-before@fan',
      'prove-tester-after@fan',
    ]) {
      const day = atWork();
      expect(day.enter('qualified', { what: 'undone', step }), step).toMatchObject({ accepted: true });
      expect(day.state().deadProofs.get('fan')?.state, step).toBe('lapsed');
      expect(why(day.enter('apprentice', strip)), step).not.toBe('accepted');
    }
  });
});

describe('locks', () => {
  it('are hung and taken off by their owners', () => {
    const day = dayOn({ until: 'lock-on@apprentice' });
    expect(why(day.enter('qualified', { what: 'done', step: 'lock-on@apprentice', value: { mine: true } }))).toBe(
      "This is Ben's own lock. Only Ben records it.",
    );
    day.goOn('lock-off@apprentice');
    expect(why(day.enter('qualified', { what: 'done', step: 'lock-off@apprentice', value: { lock: 'mine' } }))).toBe(
      "This is Ben's own lock. Only Ben records it.",
    );
  });

  it('of somebody who has left come off by a qualified person who has reached the owner', () => {
    const day = dayOn({ until: 'lock-off@apprentice' });
    const gone = { lock: 'owner-gone', reached: 'by phone at ten, at home' };
    expect(why(day.enter('apprentice', { what: 'done', step: 'lock-off@apprentice', value: gone }))).toBe(
      'It is your own lock: say so.',
    );
    expect(why(day.enter('lead', { what: 'done', step: 'lock-off@apprentice', value: gone }))).toMatch(
      /^This takes an electrically qualified person/,
    );
    expect(day.enter('qualified', { what: 'done', step: 'lock-off@apprentice', value: gone })).toMatchObject({
      closes: true,
    });
  });

  it('all come off before the power', () => {
    const day = dayOn({ until: 'lock-off@qualified' });
    expect(why(day.enter('qualified', { what: 'done', step: 'power-on', value: { heard: 'quiet' } }))).toBe(
      'Lock off (T01L), Cleo comes first.',
    );
    expect(why(day.enter('qualified', { what: 'left' }))).toBe(
      "Cleo's lock is still on the breaker. It comes off first.",
    );
  });

  it('are needed by everyone who works between them', () => {
    const day = dayOn({ until: 'hood-flap' });
    const flap = { what: 'done', step: 'hood-flap', value: { swings: true } } as const;
    expect(why(day.enter('lead', flap))).toBe('Join the job first. Your own lock goes on before you work.');
    expect(crew.lead.kinds).toContain('lead');
    expect(day.enter('apprentice', flap)).toMatchObject({ closes: true });
  });
});
