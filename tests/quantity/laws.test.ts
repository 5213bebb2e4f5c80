import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { dimensions } from '#quantity/dimensions.ts';
import type { Kind } from '#quantity/kind.ts';
import * as everyKind from '#quantity/kinds.ts';
import type { UnitSystem } from '#quantity/units.ts';

const settings = { seed: 1, numRuns: 40 };
const systems: readonly UnitSystem[] = ['inch-pound', 'metric'];
const kinds = Object.entries<Kind>(everyKind);
const kindsAndCrews = kinds.flatMap(([name, kind]) => systems.map((units) => [name, units, kind] as const));

const whole = new Set([everyKind.count as Kind]);
/** Any value a kind takes, and more often a round or an extreme one. */
const taken = (kind: Kind): fc.Arbitrary<number> =>
  whole.has(kind)
    ? fc.integer({ min: kind.least, max: kind.most })
    : fc.oneof(
        fc.double({ min: kind.least, max: kind.most, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }).map((part) => kind.least + (kind.most - kind.least) * part ** 6),
        fc.constantFrom(kind.least, kind.most),
      );

/** A kind that refuses zero also refuses what rounds to it; nobody is shown "0" and asked to type it. */
const roundsToNothing = (kind: Kind, value: number, units: UnitSystem): boolean =>
  kind.least > 0 && /^\$?0 /.test(kind.showShort(value, units));

describe('reading what we print gives back the same quantity, to the rounding shown', () => {
  test.each(kindsAndCrews)('%s, %s crew', (_, units, kind) => {
    fc.assert(
      fc.property(taken(kind), (value) => {
        fc.pre(!roundsToNothing(kind, value, units));
        for (const printed of [kind.show(value, units), kind.showShort(value, units)]) {
          const reading = kind.read(printed, units);
          expect(reading, printed).toHaveProperty('value');
          if ('value' in reading) expect(kind.showShort(reading.value, units)).toBe(kind.showShort(value, units));
        }
      }),
      settings,
    );
  });

  test.each(kindsAndCrews)('estimates: %s, %s crew', (_, units, kind) => {
    const three = fc.tuple(taken(kind), taken(kind), taken(kind));
    fc.assert(
      fc.property(three, (values) => {
        const [low = 0, typical = 0, high = 0] = [...values].sort((a, b) => a - b);
        fc.pre(!roundsToNothing(kind, low, units));
        const printed = kind.showEstimate({ low, typical, high }, units);
        const reading = kind.readEstimate(printed, units);
        expect(reading, printed).toHaveProperty('value');
        if (!('value' in reading)) return;
        const again = reading.value;
        expect(again.low <= again.typical && again.typical <= again.high).toBe(true);
        expect(kind.showRangeShort(again, units)).toBe(kind.showRangeShort({ low, high }, units));
      }),
      settings,
    );
  });
});

describe('both crews mean the same thing by the same words', () => {
  test.each(kinds)('%s', (_, kind) => {
    fc.assert(
      fc.property(taken(kind), fc.constantFrom(...systems), (value, printedFor) => {
        fc.pre(!systems.some((units) => roundsToNothing(kind, value, units)));
        const printed = kind.show(value, printedFor);
        expect(kind.read(printed, 'metric')).toEqual(kind.read(printed, 'inch-pound'));
      }),
      settings,
    );
  });

  it('and an inch-pound reading agrees with a metric one of the same thing', () => {
    const pairs: readonly (readonly [Kind, string, string])[] = [
      [everyKind.roomLength, '10 ft', '3.048 m'],
      [everyKind.ductDiameter, '4 in', '101.6 mm'],
      [everyKind.temperature, '-40 F', '-40 C'],
      [everyKind.temperature, '212 F', '100 C'],
      [everyKind.degreeDays, '9000 °F·d', '5000 K·d'],
      [everyKind.airSpeed, '1000 fpm', '5.08 m/s'],
      [everyKind.staticPressure, '1 in. w.g.', '249.08891 Pa'],
    ];
    for (const [kind, inchPound, metric] of pairs) {
      expect(kind.read(inchPound, 'metric'), inchPound).toEqual(kind.read(metric, 'inch-pound'));
    }
  });
});

/** Texts made of what the reader knows, so that it gets far into them before it must give up. */
const shards = [
  ...Object.values(dimensions).flatMap(({ units }) =>
    Object.values<string>(units).flatMap((words) => words.split('|')),
  ),
  ...'0 1 8 12 1/2 ½ 4½ 1,200 2,6 .25 5. 1/0 - – − ( ) , . \' " $ % R- RSI HDD65 = + * ^ ² ③ @ 😀'.split(' '),
  ...'to and between from about most likely half a an quarter three of point six hundred twenty none or so'.split(' '),
  '\0',
  '\n',
  '\u00a0',
  '\u202e',
  '\ud800',
  'ﷺ',
];
const anyText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 250 }),
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc.array(fc.constantFrom(...shards), { maxLength: 12 }).map((parts) => parts.join('')),
  fc.array(fc.constantFrom(...shards), { maxLength: 12 }).map((parts) => parts.join(' ')),
);

describe('whatever is typed', () => {
  it('is read within the limits or refused in one plain sentence, and nothing is thrown', () => {
    fc.assert(
      fc.property(anyText, fc.constantFrom(...kindsAndCrews), (text, [, units, kind]) => {
        for (const reading of [kind.read(text, units), kind.readEstimate(text, units)]) {
          if ('rejected' in reading) {
            expect(reading.rejected).toMatch(/^[^\p{C}]{10,240}\.$/u);
          } else {
            const { low, typical, high } =
              typeof reading.value === 'number'
                ? { low: reading.value, typical: reading.value, high: reading.value }
                : reading.value;
            const slack = (kind.most - kind.least) * 0.01;
            expect(low).toBeGreaterThanOrEqual(kind.least - slack);
            expect(high).toBeLessThanOrEqual(kind.most + slack);
            expect(low <= typical && typical <= high).toBe(true);
          }
        }
      }),
      { seed: 1, numRuns: 3000 },
    );
  });

  it('takes the examples it gives, each with both crews', () => {
    for (const [name, kind] of kinds) {
      for (const example of kind.example.split(' or ')) {
        for (const units of systems) expect(kind.read(example, units), `${name}: ${example}`).toHaveProperty('value');
      }
    }
  });

  it('takes the limits it names', () => {
    for (const [name, kind] of kinds) {
      for (const units of systems) {
        for (const limit of [kind.least, kind.most]) {
          const printed = kind.showShort(limit, units);
          expect(kind.read(printed, units), `${name}: ${printed}`).toHaveProperty('value');
        }
      }
    }
  });
});
