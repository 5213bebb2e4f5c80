import { describe, expect, it } from 'vitest';
import { toSi } from '#quantity/unit-factors.ts';
import { replayWalk } from '#walkthrough/replay.ts';
import { event, instant } from './crew.ts';
import { dayOn, plainHouse, why } from './day.ts';

const inches = (value: number) => toSi(value, 'in', 'm');
const fits = { overlap: inches(0.5) };

describe('passing a step over', () => {
  it('takes a lead and a reason, and shows as skipped', () => {
    const day = dayOn({ until: 'housing-fits' });
    const skip = { what: 'overridden', step: 'housing-fits', value: { reason: 'patched with trim' } } as const;
    expect(why(day.enter('apprentice', skip))).toBe('Only a lead passes a step over, with a reason.');
    expect(why(day.enter('electrician', skip))).toBe('Only a lead passes a step over, with a reason.');
    expect(why(day.enter('carded', skip))).toBe('Only a lead passes a step over, with a reason.');
    expect(why(day.enter('lead', { ...skip, value: { reason: ' ' } }))).toBe('Give the reason in a few words.');
    expect(day.enter('lead', skip)).toMatchObject({ closes: true });
    expect(day.state().steps.get('housing-fits')).toMatchObject({ status: 'skipped', because: 'patched with trim' });
  });

  it('is refused wherever somebody can be hurt', () => {
    const day = dayOn();
    for (const { id, step } of day.list.steps) {
      if (step.risk === 'none' && !step.hold && step.overridable) continue;
      expect(
        why(day.enter('qualified', { what: 'overridden', step: id, value: { reason: 'it will do' } })),
        id,
      ).toMatch(/cannot be passed over/);
    }
  });
});

describe('taking back', () => {
  it('is an event of its own, by the same person or a lead', () => {
    const day = dayOn({ until: 'housing-fits' });
    day.enter('apprentice', { what: 'done', step: 'housing-fits', value: fits });
    expect(why(day.enter('renovator', { what: 'undone', step: 'housing-fits' }))).toBe(
      'Ben recorded this. It is taken back by the same person or a lead.',
    );
    day.enter('lead', { what: 'undone', step: 'housing-fits' });
    expect(day.status('housing-fits')).toBe('open');
    expect(day.state().steps.get('housing-fits')?.because).toBe('Taken back by Ana.');
    expect(why(day.enter('lead', { what: 'undone', step: 'housing-fits' }))).toBe(
      'Housing fits (O01) is open already.',
    );
  });

  it('takes back the fact as well', () => {
    const day = dayOn({ facts: {}, until: 'duct-plan' });
    const now = () => day.state().facts['rated-ceiling'];
    expect(now()).toBe('no');
    day.enter('lead', { what: 'undone', step: 'ceiling-kind' });
    expect(now()).toBeUndefined();
    expect(day.state().list.byId.has('rated-detail')).toBe(true);
  });

  it('opens a closed job again, and nothing else may be entered until then', () => {
    const day = dayOn();
    day.goOn();
    expect(day.state().closed?.name).toBe('Cleo');
    expect(why(day.enter('apprentice', { what: 'undone', step: 'clean-up' }))).toBe(
      'This list is closed. Its close is taken back first.',
    );
    expect(why(day.enter('apprentice', { what: 'done', step: 'clean-up', value: { picture: 'q' } }))).toBe(
      'This list is closed. Its close is taken back first.',
    );
    expect(day.enter('apprentice', { what: 'noted', value: { says: 'customer called' } })).toMatchObject({
      accepted: true,
    });
    expect(day.enter('lead', { what: 'undone', step: 'close-job' })).toMatchObject({ accepted: true });
    expect(day.state().closed).toBeNull();
  });
});

describe('what is entered late', () => {
  it('counts where there was no signal, with the time it was done', () => {
    const day = dayOn({ until: 'slope' });
    day.enter('apprentice', { what: 'noted', value: { says: 'in the attic' }, after: 3000 });
    const slope = { what: 'done', step: 'slope', value: { fall: 0.02 }, late: 1200 } as const;
    expect(day.enter('apprentice', slope)).toMatchObject({ closes: true });
    const answer = day.state().steps.get('slope')?.answer;
    expect(Date.parse(answer?.enteredAt ?? '') - Date.parse(answer?.at ?? '')).toBe(1_200_000);
  });

  it('never counts at the wiring, nor before the hold in front of it was signed', () => {
    const day = dayOn({ until: 'strip-fan' });
    expect(why(day.enter('apprentice', { what: 'done', step: 'strip-fan', value: { out: true }, late: 120 }))).toBe(
      'A step at the wiring is entered when it is done, never later.',
    );
    const after = dayOn({ until: 'flange-sealed' });
    expect(
      why(after.enter('apprentice', { what: 'done', step: 'flange-sealed', value: { sealed: true }, late: 3000 })),
    ).toMatch(/was closed only after that\. Give a later time\.$/);
  });

  it('is not taken from the future', () => {
    const day = dayOn({ until: 'slope' });
    expect(why(day.enter('apprentice', { what: 'done', step: 'slope', value: { fall: 0.02 }, late: -120 }))).toBe(
      'The time given lies ahead.',
    );
  });
});

describe('an event', () => {
  it('reported twice happens once, and is not replaced by another of its name', () => {
    const day = dayOn({ until: 'housing-fits' });
    const done = { what: 'done', step: 'housing-fits', value: fits, id: 'press-1', after: 0 } as const;
    day.enter('apprentice', done);
    day.enter('apprentice', done);
    expect(day.state().steps.get('housing-fits')?.history).toHaveLength(1);
    expect(why(day.enter('apprentice', { ...done, value: { overlap: 1 } }))).toBe(
      'Something else was entered under this name before.',
    );
  });

  it('that does not count is kept apart with the reason', () => {
    const day = dayOn({ until: 'duct-inspected' });
    const forged = event('forged', 'apprentice', 9000, { what: 'signed', step: 'duct-inspected', value: {} });
    const state = replayWalk(day.list, [...day.events, forged], { now: instant(9000) });
    expect(state.refused).toEqual([{ event: forged, because: 'An apprentice cannot record this. It takes a lead.' }]);
    expect(state.steps.get('duct-inspected')?.status).toBe('open');
  });

  it('of somebody nobody knows, or of no known kind, is refused', () => {
    const day = dayOn();
    expect(why(day.enter('stranger', { what: 'noted', value: { says: 'hello' } }))).toBe(
      'The crew does not know this person. A lead adds them first, with /crew add.',
    );
    expect(why(day.enter('lead', { what: 'conjured', step: 'house-age' }))).toBe(
      'Nothing of this kind happens on a list.',
    );
    expect(why(day.enter('lead', { what: 'toString', step: 'house-age' }))).toBe(
      'Nothing of this kind happens on a list.',
    );
    expect(why(day.enter('lead', { what: 'done', step: 'no-such-step' }))).toBe('This step is not on the list.');
    expect(why(day.enter('office', { what: 'done', step: 'way-in', value: { way: 'attic' } }))).toMatch(
      /^This takes anyone of the crew/,
    );
  });

  it('of time that cannot be read is refused', () => {
    const { list } = dayOn();
    const odd = { ...event('odd', 'lead', 0, { what: 'noted', step: null, value: { says: 'x' } }), at: 'soon' };
    expect(replayWalk(list, [odd], { now: instant(0) }).refused[0]?.because).toBe('The time given cannot be read.');
  });
});

describe('what is known of the job', () => {
  it('changes the list as it is recorded, and counts once a lead confirms it', () => {
    const day = dayOn({ facts: {}, until: 'tub-distance' });
    expect(day.state().list.byId.has('wet-marking')).toBe(true);
    day.enter('apprentice', { what: 'done', step: 'tub-distance', value: { place: 'elsewhere', distance: 3 } });
    expect(day.state().list.byId.has('wet-marking')).toBe(true);
    expect(day.state().reported.map(({ fact }) => fact)).toContain('fan-place');
    day.goOn('lead-paint-area');
    expect(day.state().facts['fan-place']).toBe('elsewhere');
    expect(day.state().list.byId.has('wet-marking')).toBe(false);
    day.enter('lead', { what: 'undone', step: 'survey-checked' });
    expect(day.state().list.byId.has('wet-marking')).toBe(true);
  });

  it('counts at once when it is dangerous, whoever says it', () => {
    const day = dayOn({ until: 'measured-airflow' });
    expect(day.state().list.byId.has('spillage-test')).toBe(false);
    day.enter('apprentice', { what: 'fact', value: { fact: 'fuel-appliances', value: 'natural-draft' } });
    expect(day.state().list.byId.has('spillage-test')).toBe(true);
    expect(day.state().progress.nextHold?.id).toBe('burners-off');
    day.enter('apprentice', { what: 'fact', value: { fact: 'fuel-appliances', value: 'none' } });
    expect(day.state().list.byId.has('spillage-test')).toBe(true);
    day.enter('lead', { what: 'fact', value: { fact: 'fuel-appliances', value: 'none' } });
    expect(day.state().list.byId.has('spillage-test')).toBe(false);
    expect(why(day.enter('lead', { what: 'fact', value: { fact: 'fuel-appliances', value: 'maybe' } }))).toMatch(
      /Pick one of the answers\.$/,
    );
    expect(why(day.enter('lead', { what: 'fact', value: { fact: 'weather', value: 'fine' } }))).toBe(
      'This list does not ask for that.',
    );
  });

  it('that changes opens the steps that hang on it', () => {
    const facts = { ...plainHouse, 'fan-place': 'over-tub-or-shower' };
    const day = dayOn({ facts, until: 'strip-fan' });
    expect(day.status('wet-marking')).toBe('closed');
    day.enter('lead', { what: 'fact', value: { fact: 'fan-place', value: 'sprayed' } });
    expect(day.state().steps.get('wet-marking')).toMatchObject({
      status: 'lapsed',
      because: 'What is known has changed: Where does it sit?',
    });
  });

  it('includes boxes that are found on the way', () => {
    const day = dayOn({ until: 'part-splices' });
    day.enter('apprentice', { what: 'box', value: { id: 'above', kind: 'junction-box', name: 'box above the fan' } });
    expect(day.state().progress.nextHold?.id).toBe('sign-dead@above');
    expect(why(day.enter('apprentice', { what: 'box', value: { id: 'above', gone: 'yes' } }))).toBe(
      'Only a lead takes a box off the list.',
    );
    day.goOn();
    expect(day.state().closed).not.toBeNull();
  });
});
