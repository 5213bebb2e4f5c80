import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ductRun } from '#commands/questions/duct.ts';
import { fanCurve } from '#commands/questions/fan.ts';
import { velocityPressureCoefficient } from '#engine/duct/velocity.ts';
import { airflowAt } from '#engine/fan/fan-curve.ts';
import type { UnitSystem } from '#interview/question.ts';
import { pascals } from '#quantity/units.ts';
import { flow, found, inventedFan, valueIn } from './duct-inputs.ts';

const settings = { seed: 1, numRuns: 60 };
const systems: readonly UnitSystem[] = ['inch-pound', 'metric'];

const kind = fc.constantFrom('smooth', 'spiral', 'flex', 'foil flex');
const inches = fc.constantFrom(3, 4, 5, 6, 7, 8);
const feet = fc.integer({ min: 1, max: 60 });
const end = fc.constantFrom('wall cap', 'roof cap', 'wall cap k=2', 'bare end');
const bends = fc.integer({ min: 1, max: 6 });
const fan = fc.constantFrom(
  inventedFan,
  '84@0.1 66@0.25',
  '110',
  'constant 110 to 0.3',
  'low: 50@0.1; high: 110@0.1 90@0.25',
);
const house = fc.record({ fan, kind, size: inches, length: feet, bends, end });

type House = typeof house extends fc.Arbitrary<infer Value> ? Value : never;

const runOf = ({ kind: duct, size, length, bends: count, end: cap }: House, lie = ''): string =>
  `${length} ft ${size} in ${duct}${lie}; ${count} x elbow 90; ${cap}`;

const flowOf = (given: House, lie = '') => flow({ fan: given.fan, run: runOf(given, lie) });

/** Less than this is lost in the last digits of the solver: a hundredth of a cubic foot a minute. */
const noise = 5e-6;

describe('what a fan delivers', () => {
  it('never falls when the whole run is a size larger', () => {
    fc.assert(
      fc.property(house, (given) => {
        fc.pre(given.size < 8);
        expect(flowOf({ ...given, size: (given.size + 1) as House['size'] })).toBeGreaterThan(flowOf(given) - noise);
      }),
      settings,
    );
  });

  it('never rises with a longer run, another elbow, or flex squeezed further', () => {
    fc.assert(
      fc.property(house, fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 20 }), (given, squeezed, more) => {
        const now = flowOf(given);
        expect(flowOf({ ...given, length: given.length + more })).toBeLessThan(now + noise);
        expect(flowOf({ ...given, bends: given.bends + 1 })).toBeLessThan(now + noise);
        if (!given.kind.includes('flex')) return;
        const lie = (percent: number) => ` compressed ${percent} %`;
        expect(flowOf(given, lie(squeezed + more))).toBeLessThan(flowOf(given, lie(squeezed)) + noise);
      }),
      settings,
    );
  });

  it('really rises and falls, by more than a hair, on an ordinary run', () => {
    const ordinary: House = { fan: inventedFan, kind: 'flex', size: 4, length: 15, bends: 2, end: 'wall cap' };
    const now = flowOf(ordinary);
    expect(flowOf({ ...ordinary, size: 5 })).toBeGreaterThan(1.1 * now);
    expect(flowOf({ ...ordinary, length: 30 })).toBeLessThan(0.9 * now);
    expect(flowOf({ ...ordinary, bends: 6 })).toBeLessThan(0.97 * now);
    expect(flowOf(ordinary, ' compressed 4 %')).toBeGreaterThan(1.1 * flowOf(ordinary, ' compressed 30 %'));
  });

  it('is the same whichever units it was written in', () => {
    fc.assert(
      fc.property(kind, inches, feet, bends, (duct, size, length, count) => {
        const inch = `${length} ft ${size} in ${duct}; ${count} x elbow 90; wall cap`;
        const metric = `${(length * 0.3048).toFixed(6)} m ${(size * 25.4).toFixed(3)} mm ${duct}; ${count} x elbow 90; wall cap`;
        const one = flow({ fan: '84 cfm@0.1 in wg 66 cfm@0.25 in wg', collar: `${size} in`, run: inch });
        // 1 cfm = 0.4719474432 L/s (0.3048³ m³ ÷ 60 s); 1 in. w.g. = 249.08891 Pa (NIST SP 811, appendix B.8).
        const points = [
          [84, 0.1],
          [66, 0.25],
        ].map(([cfm = 0, inwg = 0]) => `${(cfm * 0.4719474432).toFixed(7)} L/s@${(inwg * 249.08891).toFixed(6)} Pa`);
        const other = flow({ fan: points.join(' '), collar: `${size * 25.4} mm`, run: metric }, 'metric');
        // Both are solved to a thousandth of a pascal; what is printed has three figures.
        expect(Math.abs(other / one - 1)).toBeLessThan(1e-4);
      }),
      settings,
    );
  });

  /** How far the airflow moves when the same fan and duct stand at 5000 ft. */
  const shift = (given: House): number => {
    const low = flow({ fan: given.fan, run: runOf(given) });
    return Math.abs(flow({ fan: given.fan, run: runOf(given), altitude: '5000 ft' }) / low - 1);
  };

  it('hardly changes at 5000 ft, since fan and duct both feel the thin air', () => {
    fc.assert(
      fc.property(house, (given) => {
        fc.pre(given.size >= 4 && given.length <= 30);
        expect(shift(given)).toBeLessThan(0.01);
      }),
      settings,
    );
  });

  it('changes a little more where nearly all is friction in smooth pipe, which grows as the Reynolds number falls', () => {
    fc.assert(
      fc.property(house, (given) => {
        expect(shift(given)).toBeLessThan(0.02);
      }),
      settings,
    );
  });
});

describe('the range', () => {
  it('holds the most likely airflow, and lies inside what cannot be exceeded', () => {
    fc.assert(
      fc.property(house, (given) => {
        const { airflow, outer } = found({ fan: given.fan, run: runOf(given) }).result;
        expect(airflow.low).toBeLessThanOrEqual(airflow.typical);
        expect(airflow.typical).toBeLessThanOrEqual(airflow.high);
        expect(outer.low).toBeLessThanOrEqual(airflow.low);
        expect(outer.high).toBeGreaterThanOrEqual(airflow.high);
      }),
      settings,
    );
  });
});

describe('the operating point', () => {
  it('lies on the fan’s curve and on the duct’s', () => {
    fc.assert(
      fc.property(house, (given) => {
        const { result } = found({ fan: given.fan, run: runOf(given) });
        const { ready, staticPressure, airflow, losses, doorLoss } = result;
        const moved = airflow.typical as Parameters<ReturnType<typeof ready.staticDemand>>[0];
        const onFan = airflowAt(ready.curve(ready.typical), staticPressure);
        expect(Math.abs(onFan - moved)).toBeLessThan(noise);
        const onDuct = ready.staticDemand(ready.typical)(moved);
        expect(Math.abs(onDuct - staticPressure)).toBeLessThan(0.01);
        const size = ready.pieces[0]?.diameter as Parameters<typeof velocityPressureCoefficient>[0];
        const paid = velocityPressureCoefficient(size, ready.air) * moved ** 2;
        const lost = pascals(losses.reduce((sum, loss) => sum + loss, 0) + doorLoss);
        expect(Math.abs(lost - paid - staticPressure)).toBeLessThan(0.01);
      }),
      settings,
    );
  });
});

describe('reading what is printed', () => {
  const part = fc.oneof(
    fc.tuple(feet, inches, kind).map(([length, size, duct]) => `${length} ft ${size} in ${duct}`),
    fc
      .tuple(feet, fc.constantFrom('slack', 'sloppy', 'pulled tight', 'compressed 7.5 %'))
      .map(([length, lie]) => `${length} ft flex ${lie}`),
    fc.tuple(feet, feet).map(([low, more]) => `${low} to ${low + more} ft 4 in smooth`),
    fc
      .tuple(bends, fc.constantFrom('elbow 90', 'elbow 45', 'stamped elbow 90', 'flex bend 90'))
      .map(([count, name]) => `${count} x ${name}`),
    fc.constantFrom(
      'reducer 6 to 4 in',
      'increaser 4 to 6 in k=0.3',
      'fitting 3 in k=0.21',
      'backdraft damper',
      'elbow 90 5 in k=0.35',
      '3 ft 4 in smooth roughness=0.0003 ft',
    ),
  );
  const run = fc
    .tuple(fc.array(part, { maxLength: 6 }), end)
    .map(([parts, cap]) => ['4 ft 4 in smooth', ...parts, cap].join('; '));

  it.each(systems)('of a run gives the same run, %s', (units) => {
    fc.assert(
      fc.property(run, (typed) => {
        const value = valueIn(ductRun.read(typed, 'inch-pound'));
        const printed = ductRun.show(value, units);
        const again = valueIn(ductRun.read(printed, units));
        expect(again.parts.map(({ part: sort }) => sort)).toEqual(value.parts.map(({ part: sort }) => sort));
        expect(ductRun.show(again, units)).toBe(printed);
        const lies = ({ parts }: typeof value) => parts.map((each) => (each.part === 'duct' ? each.compression : null));
        expect(lies(again)).toEqual(lies(value));
      }),
      settings,
    );
  });

  const rated = fc
    .tuple(fc.integer({ min: 60, max: 200 }), fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 20 }))
    .chain(([most, step, drop]) =>
      fc.constantFrom(
        `${most}`,
        `${most}@0.1`,
        `${most}@0.1 ${most - step}@0.25`,
        `${most}@0 ${most - step}@0.125 0@0.${drop + 25}`,
        `low: ${most - step}@0.1; high: ${most}@0.1`,
        `constant ${most} to 0.3`,
      ),
    );

  it.each(systems)('of a fan gives the same fan, %s', (units) => {
    fc.assert(
      fc.property(rated, (typed) => {
        const value = valueIn(fanCurve.read(typed, 'inch-pound'));
        const printed = fanCurve.show(value, units);
        const again = valueIn(fanCurve.read(printed, units));
        expect(again.kind).toBe(value.kind);
        expect(fanCurve.show(again, units)).toBe(printed);
      }),
      settings,
    );
  });
});
