import { describe, expect, it } from 'vitest';
import { job, settled } from './settled-wiring.ts';
import { findingOf } from './talked.ts';

describe('loads', () => {
  const heater = { ...settled, 'unit-kind': 'fan-light-and-heater', 'heater-circuit': 'matches-label' };

  it('counts a 1545 W unit as the code forum does: 12.875 A, at 125 % 16.09 A', () => {
    const answer = job(heater, 'fan-watts=145', 'heater-watts=1300', 'lamp-watts=100', 'breaker=20');
    const { value, weight, working } = findingOf(answer, 'circuit-load');
    expect(value?.number).toBeCloseTo(1545 / 120, 9);
    // The motor may draw twice its watts over the volts (common practice): 145/60 in place of 145/120.
    expect(value?.high).toBeCloseTo(1400 / 120 + 145 / 60, 9);
    expect(weight).toBe('advice');
    expect(working.find(({ what }) => what.startsWith('Counted'))?.value).toBe('16.1 to 17.6 A');
    const small = findingOf(
      job(heater, 'fan-watts=145', 'heater-watts=1300', 'lamp-watts=100', 'breaker=15'),
      'circuit-load',
    );
    expect(small).toMatchObject({ weight: 'stop' });
    expect(small.says).toMatch(/^Do not connect it/);
  });

  it('takes the amps on the label before the watts', () => {
    const { value } = findingOf(job(settled, 'fan-watts=30', 'fan-amps=0.4'), 'circuit-load');
    expect(value).toMatchObject({ number: 0.4, unit: 'A', shown: '0.4 A' });
    expect(value).not.toHaveProperty('high');
  });

  it('lets a breaker carry four fifths for hours: 12 A of 15 A (NEC 210.20(A))', () => {
    const { says } = findingOf(job(settled, 'fan-amps=0.4', 'breaker=15'), 'circuit-load');
    expect(says).toContain('12 A for hours');
  });

  it('stops when fixed load is over half of a shared circuit: 7.5 A of 15 A (NEC 210.23(A)(2))', () => {
    const shared = { ...settled, 'circuit-serves': 'other-rooms' };
    const stops = (other: string) =>
      job(shared, 'fan-amps=0.5', `other-fixed-load=${other}`, 'breaker=15', 'thinnest-wire=14').reply?.findings.some(
        ({ id, weight }) => id === 'fixed-load-over-half' && weight === 'stop',
      );
    expect(stops('7 A')).toBe(false);
    expect(stops('7.1 A')).toBe(true);
  });

  it('stops at 14 AWG on 20 A (NEC 240.4(D))', () => {
    const by = (...more: string[]) => job(settled, 'fan-amps=0.4', ...more).reply?.findings.map(({ id }) => id);
    expect(by('breaker=20', 'thinnest-wire=14')).toContain('wire-too-thin-for-breaker');
    expect(by('breaker=20', 'thinnest-wire=12')).not.toContain('wire-too-thin-for-breaker');
    expect(by('breaker=15', 'thinnest-wire=16')).toContain('wire-too-thin-for-breaker');
  });

  it('stops a control too small for its load: a motor may take 4 A of 5 A (NEC 404.14)', () => {
    const by = (amps: string) => job(settled, `fan-amps=${amps}`, 'control-amps=5');
    expect(findingOf(by('4.1'), 'control-overloaded').weight).toBe('stop');
    expect(findingOf(by('4.1'), 'control-load')).toMatchObject({ weight: 'stop', value: { number: 4.1 } });
    expect(findingOf(by('4'), 'control-load').weight).toBe('advice');
  });

  it('warns of a fan too small for its control at its lowest speed', () => {
    const answer = job(settled, 'fan-amps=0.3', 'control-amps=5', 'control-minimum=25 W', 'fan-watts-low=5 W');
    expect(findingOf(answer, 'below-minimum-load').weight).toBe('caution');
    expect(findingOf(answer, 'control-load').says).toContain('too little to hold it');
    const none = job(settled, 'fan-amps=0.3', 'control-amps=5', 'control-minimum=none', 'fan-watts-low=5 W');
    expect(none.reply?.findings.map(({ id }) => id)).not.toContain('below-minimum-load');
  });

  it('says what is not in the sum because nobody read it', () => {
    const { weight, says } = findingOf(job(heater, 'fan-watts=30'), 'circuit-load');
    expect(weight).toBe('caution');
    expect(says).toContain('nobody read it: the heater and the lamps');
  });

  it('does not take a guess for a reading: without the watts no share is worked out', () => {
    const shared = job({ ...settled, 'circuit-serves': 'other-rooms' }, 'other-fixed-load=none', 'breaker=15');
    expect(findingOf(shared, 'fixed-load-over-half').weight).toBe('caution');
    expect(findingOf(shared, 'circuit-load')).toMatchObject({ weight: 'caution' });
    expect(findingOf(shared, 'circuit-load').says).toContain('Nobody read what the fan draws');
  });
});
