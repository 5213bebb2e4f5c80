import { describe, expect, it } from 'vitest';
import power from '#commands/power.ts';
import { observations, plannedObservations } from '#knowledge/circuit-rules.ts';
import { job, settled } from './settled-wiring.ts';
import { findingOf, once } from './talked.ts';

// Every unit here is invented.

const heats = { ...settled, 'unit-kind': 'fan-and-heater', 'heater-circuit': 'matches-label' };
const ids = (answer: ReturnType<typeof once>) => [
  ...(answer.reply?.findings.map(({ id }) => id) ?? []),
  ...(answer.reply?.findings.flatMap(({ table }) => table?.rows.map(([, says]) => says) ?? []) ?? []),
];

describe('a number that contradicts an answer is named, and the worse one holds', () => {
  it('counts the heater of a “fan only” and lets the rules on heaters speak', () => {
    const answer = job(settled, 'heater-watts=1400', 'fan-amps=0.4', 'breaker=15');
    // 1400 W at 120 V and 0.4 A, counted at a quarter more (NEC 424.4(B)): 15.08 A on 15 A.
    expect(findingOf(answer, 'circuit-load')).toMatchObject({ weight: 'stop' });
    expect(findingOf(answer, 'circuit-load').value?.number).toBeCloseTo(1400 / 120 + 0.4, 9);
    expect(findingOf(answer, 'told-two-ways').says).toContain('“Fan only” was told, but a heater of 1400 W too');
    expect(findingOf(answer, 'heater-circuit-differs').weight).toBe('stop');
  });

  it('counts other fixed equipment on a circuit that was told to feed nothing else', () => {
    const answer = job(heats, 'heater-watts=1300', 'fan-watts=40', 'other-fixed-load=2 A', 'breaker=15');
    const { weight, value, says } = findingOf(answer, 'circuit-load');
    expect(weight).toBe('stop');
    expect(value?.low).toBeCloseTo(1340 / 120 + 2, 9);
    expect(says).toContain('13.2 to 13.5 A');
    expect(findingOf(answer, 'told-two-ways').says).toContain('2 A of other fixed equipment');
    expect(findingOf(answer, 'heater-on-shared-circuit').weight).toBe('stop');
    // 12 A, four fifths of 15 A (NEC 210.20(A)), is as much as may stay on for hours.
    const most = (amps: string) =>
      findingOf(job(settled, 'fan-amps=1', `other-fixed-load=${amps}`, 'breaker=15'), 'circuit-load').weight;
    expect([most('11 A'), most('11.3 A')]).toEqual(['advice', 'stop']);
  });

  it.each([
    ['unit-kind=fan-and-heater', 'heater-watts=none', 'counted as not read'],
    ['unit-kind=fan-only', 'lamp-watts=60 W', 'counted with the lamps'],
    ['fan-watts=60 W', 'fan-amps=0.2', 'counted by the watts'],
    ['fan-watts-low=60 W', 'fan-amps=0.2', 'counted by the watts'],
    ['fan-watts=20 W', 'fan-watts-low=60 W', 'the worse'],
  ])('%s with %s', (one, other, says) => {
    const [name = '', value = ''] = one.split('=');
    const answer = name === 'unit-kind' ? job({ ...settled, [name]: value }, other) : job(settled, one, other);
    expect(findingOf(answer, 'told-two-ways')).toMatchObject({ weight: 'caution' });
    expect(findingOf(answer, 'told-two-ways').says).toContain(says);
  });

  it('says nothing of the sort where all can be true', () => {
    const answer = job(settled, 'fan-watts=30', 'fan-amps=0.4', 'heater-watts=none', 'other-fixed-load=none');
    expect(ids(answer)).not.toContain('told-two-ways');
  });
});

describe('a number that cannot be judged yet says what is missing', () => {
  it('holds a thin wire against the load without a breaker (NEC 240.4(D): 14 AWG takes 15 A)', () => {
    const by = (wire: string) => job(heats, 'heater-watts=1500', 'fan-amps=1', `thinnest-wire=${wire}`);
    expect(findingOf(by('14'), 'circuit-load')).toMatchObject({ weight: 'stop' });
    expect(findingOf(by('14'), 'circuit-load').says).toContain('14 AWG wire takes');
    expect(findingOf(by('12'), 'circuit-load').weight).toBe('advice');
    expect(ids(by('16'))).toContain('wire-too-thin-for-breaker');
  });

  it('names what nobody read beside the rating and the least load of a control', () => {
    const rated = findingOf(job(settled, 'control-amps=5'), 'control-load');
    expect(rated).toMatchObject({ weight: 'caution' });
    expect(rated.says).toContain('nobody read the fan');
    const both = { ...heats, 'switch-controls': 'fan-and-heater' };
    expect(findingOf(job(both, 'fan-amps=6', 'control-amps=5'), 'control-load')).toMatchObject({ weight: 'stop' });
    expect(findingOf(job(settled, 'control-minimum=25 W'), 'control-load').says).toContain('nobody has read');
    expect(findingOf(job(settled, 'fan-watts=20', 'control-minimum=25 W'), 'below-minimum-load').weight).toBe(
      'caution',
    );
  });

  it('keeps the letters of names as they are written', () => {
    const answer = job({ ...settled, 'insulation-near': 'within-3-in', 'unit-kind': 'fan-and-light' });
    expect(findingOf(answer, 'find-out-first').says).toContain('Type IC');
    expect(findingOf(once(power, 'unit-kind=fan-only'), 'find-out-first').says).toContain('GFCI');
  });
});

describe('whatever is told changes the reply or is named in it', () => {
  const numbers: Readonly<Record<string, string>> = {
    'fan-watts': '47 W',
    'fan-amps': '0.7 A',
    'heater-watts': '700 W',
    'lamp-watts': '33 W',
    'other-fixed-load': '1.5 A',
    breaker: '20 A',
    'thinnest-wire': '12',
    'control-amps': '3 A',
    'control-minimum': '22 W',
    'fan-watts-low': '11 W',
  };
  const bases = { nothing: {}, 'a settled job': settled, 'a heater': heats };

  it('knows every option', () => {
    expect([...plannedObservations, ...Object.keys(numbers)].toSorted()).toEqual(
      power.takes.map(({ id }) => id).toSorted(),
    );
  });

  for (const [name, base] of Object.entries(bases)) {
    it.each(power.takes.map(({ id }) => id))(`beside ${name}: %s`, (id) => {
      const others = Object.fromEntries(Object.entries(base).filter(([each]) => each !== id));
      const isNumber = Object.hasOwn(numbers, id);
      const before = job(others).reply?.findings;
      const values = isNumber
        ? [numbers[id] as string]
        : observations[id as keyof typeof observations].options.map((option) => option.id);
      for (const value of values) {
        // A fact may do no more than rule the dangerous answer out: then nobody is told to find it out any more.
        const after = job(others, `${id}=${value}`);
        expect(after.problems).toEqual([]);
        expect([value, after.reply?.findings, after.reply?.assumed]).not.toEqual([
          value,
          before,
          job(others).reply?.assumed,
        ]);
        if (isNumber) expect(after.reply?.findings).not.toEqual(before);
      }
    });
  }
});
