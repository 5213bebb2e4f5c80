import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ConditionalRule,
  type Facts,
  factsStillToAsk,
  rulesThatApply,
} from '#engine/electrical/rules-that-apply.ts';

const rules = {
  always: { applies: {}, weight: 'advice' },
  'no-ground': { applies: { ground: ['none'] }, weight: 'stop', whenUnknown: { weight: 'stop' } },
  'heater-shared': {
    applies: { unit: ['heater'], circuit: ['shared', 'rooms'] },
    weight: 'stop',
    whenUnknown: { weight: 'caution' },
  },
  'timer-tip': { applies: { control: ['timer'] }, weight: 'advice' },
} as const satisfies Record<string, ConditionalRule>;

const spoken = (facts: Facts) =>
  rulesThatApply(facts, rules).map(
    ({ id, weight, unknown }) => `${id} ${weight}${unknown.map((fact) => ` ?${fact}`).join('')}`,
  );

describe('a rule speaks', () => {
  it('when every condition holds, and one that asks nothing always does', () => {
    expect(spoken({ ground: 'none', unit: 'heater', circuit: 'rooms', control: 'timer' })).toEqual([
      'no-ground stop',
      'heater-shared stop',
      'always advice',
      'timer-tip advice',
    ]);
  });

  it('not at all once one condition is answered otherwise, however little is known of the rest', () => {
    expect(spoken({ ground: 'yes', unit: 'fan', control: 'switch' })).toEqual(['always advice']);
  });

  it('with its own weight for not knowing when an answer is missing or "unknown"', () => {
    expect(spoken({ ground: 'unknown', unit: 'heater', control: 'switch' })).toEqual([
      'no-ground stop ?ground',
      'heater-shared caution ?circuit',
      'always advice',
    ]);
  });

  it('gravest first, and the certain before the uncertain of the same weight', () => {
    expect(spoken({ unit: 'heater', circuit: 'shared' }).slice(0, 2)).toEqual([
      'heater-shared stop',
      'no-ground stop ?ground',
    ]);
  });
});

describe('what is left to ask', () => {
  const order = ['unit', 'circuit', 'ground', 'control', 'colour'] as const;

  it('is what some rule still reads, in the order given', () => {
    expect(factsStillToAsk({}, rules, order)).toEqual(['unit', 'circuit', 'ground', 'control']);
  });

  it('leaves out what an answer has made idle, and what was asked and not known', () => {
    expect(factsStillToAsk({ unit: 'fan', ground: 'unknown' }, rules, order)).toEqual(['control']);
  });

  it('still asks on when the deciding answer is not known', () => {
    expect(factsStillToAsk({ unit: 'unknown' }, rules, order)).toEqual(['circuit', 'ground', 'control']);
  });
});

describe('laws of the rules', () => {
  const answer = (values: readonly string[]) => fc.option(fc.constantFrom('unknown', ...values), { nil: undefined });
  const facts = fc.record({
    ground: answer(['none', 'yes']),
    unit: answer(['heater', 'fan']),
    circuit: answer(['shared', 'rooms', 'own']),
    control: answer(['timer', 'switch']),
  });

  it('forgetting an answer never silences a stop', () => {
    fc.assert(
      fc.property(facts, fc.constantFrom('ground', 'unit', 'circuit', 'control'), (known, forgotten) => {
        const stops = rulesThatApply(known, rules).filter(({ rule }) => rule.weight === 'stop');
        const after = rulesThatApply({ ...known, [forgotten]: undefined }, rules).map(({ id }) => id);
        for (const { id } of stops) expect(after).toContain(id);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('an answer that is not asked for changes nothing', () => {
    fc.assert(
      fc.property(facts, fc.constantFrom('none', 'heater', 'own', 'timer'), (known, value) => {
        const order = ['unit', 'circuit', 'ground', 'control'] as const;
        const idle = order.filter(
          (fact) => known[fact] === undefined && !factsStillToAsk(known, rules, order).includes(fact),
        );
        for (const fact of idle) {
          const ids = (facts: Facts) => rulesThatApply(facts, rules).map(({ id, weight }) => `${id} ${weight}`);
          expect(ids({ ...known, [fact]: value })).toEqual(ids(known));
        }
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});
