import { describe, expect, it } from 'vitest';
import { toSi } from '#quantity/unit-factors.ts';
import { dayOn, plainHouse, why } from './day.ts';

const inches = (value: number) => toSi(value, 'in', 'm');
const fits = { overlap: inches(0.5) };

describe('a hold', () => {
  it('keeps everything behind it shut and says who is waited for', () => {
    const day = dayOn({ until: 'duct-inspected' });
    const screws = { what: 'done', step: 'housing-fixed', value: { screws: 4 } } as const;
    expect(why(day.enter('apprentice', screws))).toBe('Duct inspected (D15) comes first. It waits for a lead.');
    expect(why(day.enter('apprentice', { what: 'signed', step: 'duct-inspected', value: {} }))).toBe(
      'An apprentice cannot record this. It takes a lead.',
    );
    expect(why(day.enter('lead', { what: 'done', step: 'duct-inspected', value: {} }))).toBe(
      'Duct inspected (D15) is signed, not ticked.',
    );
    expect(why(day.enter('qualified', { what: 'overridden', step: 'duct-inspected', value: { reason: 'late' } }))).toBe(
      'Duct inspected (D15) cannot be passed over. It is done, or the job stops.',
    );
    expect(day.enter('lead', { what: 'signed', step: 'duct-inspected', value: {} })).toMatchObject({ closes: true });
    expect(day.enter('apprentice', screws)).toMatchObject({ closes: true });
  });

  it('once signed is not answered otherwise, only taken back by somebody who may sign it', () => {
    const facts = { ...plainHouse, 'duct-against-collar': 'smaller' };
    const day = dayOn({ facts, until: 'duct-inspected' });
    expect(why(day.enter('lead', { what: 'signed', step: 'narrow-duct', value: { way: 'one-reducer' } }))).toBe(
      'Cleo has signed Narrow duct (D02). To change it, the signature is taken back first.',
    );
    expect(why(day.enter('apprentice', { what: 'undone', step: 'narrow-duct' }))).toBe(
      'Cleo recorded this. It is taken back by a lead.',
    );
    expect(day.enter('lead', { what: 'undone', step: 'narrow-duct' })).toMatchObject({ accepted: true });
    expect(day.state().progress.nextHold?.id).toBe('narrow-duct');
  });

  it('opens again when what it rests on is changed', () => {
    const day = dayOn({ until: 'flange-sealed' });
    day.enter('apprentice', { what: 'done', step: 'metal-joints', value: { screws: 4 } });
    expect(day.state().steps.get('duct-inspected')).toMatchObject({
      status: 'lapsed',
      because: 'Ben has answered anew what Ben had answered.',
    });
    expect(why(day.enter('apprentice', { what: 'done', step: 'flange-sealed', value: { sealed: true } }))).toMatch(
      /^Duct inspected \(D15\) comes first/,
    );
  });

  it('asks certain answers of certain people', () => {
    const facts = { ...plainHouse, 'fuel-appliances': 'natural-draft' };
    const day = dayOn({ facts, until: 'spillage-test' });
    const pass = { result: 'pass', certificate: 'Finn, 77' };
    expect(why(day.enter('lead', { what: 'signed', step: 'spillage-test', value: pass }))).toBe(
      'This takes a certified combustion tester, with a number and a last day that has not passed.',
    );
    expect(day.enter('lead', { what: 'signed', step: 'spillage-test', value: { result: 'not-tested' } })).toMatchObject(
      { closes: true },
    );
    expect(day.state().progress.nextHold?.id).toBe('fan-left-off');
    day.goOn();
    expect(day.state().steps.get('fan-left-off')?.status).toBe('closed');
    expect(day.state().closed).not.toBeNull();
  });

  it('of a booked test stays open: there is no such answer', () => {
    const facts = { ...plainHouse, 'fuel-appliances': 'natural-draft' };
    const day = dayOn({ facts, until: 'spillage-test' });
    expect(why(day.enter('tester', { what: 'signed', step: 'spillage-test', value: { result: 'booked' } }))).toBe(
      'The test: pick one of the answers.',
    );
    expect(
      why(day.enter('qualified', { what: 'signed', step: 'close-job', value: { 'open-points': 'test booked' } })),
    ).toMatch(/^Spillage test \(T07\) comes first/);
  });

  it('leaves no way round the fan that is left off when the test has not passed', () => {
    const facts = { ...plainHouse, 'fuel-appliances': 'unknown' };
    const day = dayOn({ facts, until: 'spillage-test' });
    day.enter('tester', { what: 'signed', step: 'spillage-test', value: { result: 'pass', certificate: 'Finn, 77' } });
    expect(day.state().list.byId.has('fan-left-off')).toBe(false);
    day.enter('tester', { what: 'undone', step: 'spillage-test' });
    expect(day.state().list.byId.has('fan-left-off')).toBe(true);
    day.enter('lead', { what: 'fact', value: { fact: 'spillage-result', value: 'pass' } });
    expect(day.state().list.byId.has('fan-left-off')).toBe(true);
  });
});

describe('a stop', () => {
  const doubtful = { ground: 'none', insulation: 'sound', marking: 'suits' };

  it('is taken from anybody, at once, and lifted only by a right answer of somebody who may give it', () => {
    const day = dayOn({ until: 'read-cable' });
    expect(day.enter('apprentice', { what: 'done', step: 'read-cable', value: doubtful })).toMatchObject({
      accepted: true,
      closes: false,
      says: expect.stringMatching(/^Stop\. Cap the wires/),
    });
    expect(day.state().stops).toHaveLength(1);
    expect(why(day.enter('apprentice', { what: 'undone', step: 'read-cable' }))).toBe(
      'Read cable (X03) stopped the job. Put it right, then answer it anew.',
    );
    const right = { ...doubtful, ground: 'proven' };
    expect(why(day.enter('apprentice', { what: 'signed', step: 'read-cable', value: right }))).toMatch(
      /^An apprentice cannot/,
    );
    expect(day.enter('qualified', { what: 'signed', step: 'read-cable', value: right })).toMatchObject({
      closes: true,
    });
  });

  it('blocks behind a step that is no hold', () => {
    const day = dayOn({ until: 'look-behind' });
    day.enter('apprentice', { what: 'done', step: 'look-behind', value: { picture: 'p', found: 'wet-or-moldy' } });
    expect(why(day.enter('apprentice', { what: 'done', step: 'housing-fits', value: fits }))).toMatch(
      /^The job is stopped at Look behind \(X08\)\. Stop and tell the lead/,
    );
    expect(
      why(day.enter('apprentice', { what: 'done', step: 'look-behind', value: { picture: 'p', found: 'sound' } })),
    ).toBe('An apprentice does not lift a stop. A lead does.');
    expect(
      day.enter('qualified', { what: 'done', step: 'look-behind', value: { picture: 'p', found: 'sound' } }),
    ).toMatchObject({ closes: true });
  });

  it('opens a signed hold again', () => {
    const day = dayOn({ until: 'plan-stands' });
    day.enter('apprentice', { what: 'done', step: 'circuit-trouble', value: { trouble: 'heat-flicker-or-smell' } });
    expect(day.state().stops[0]?.says).toMatch(/^Switch the breaker off and leave it off\./);
    expect(day.state().corrections[0]?.after.name).toBe('Ben');
  });

  it('by a number out of range says what to do', () => {
    const day = dayOn({ facts: { ...plainHouse, access: 'attic' }, until: 'attic-air' });
    const value = { temperature: toSi(116, 'degF', 'degC'), boards: true, second: true };
    expect(day.enter('apprentice', { what: 'done', step: 'attic-air', value })).toMatchObject({
      says: 'Stay out. Come back in a cooler hour.',
    });
  });
});
