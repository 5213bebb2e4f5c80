import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airAt, standardAir } from '#engine/air/air.ts';
import { flexPressureFactor } from '#engine/duct/flex-compression.ts';
import { type DuctPiece, frictionLoss, type Piece, pieceLosses, systemCurve } from '#engine/duct/run.ts';
import { ductArea, ductVelocity, velocityPressure, velocityPressureCoefficient } from '#engine/duct/velocity.ts';
import { fromSi, toSi } from '#quantity/unit-factors.ts';
import {
  celsius,
  cubicMetresPerSecond,
  kilogramsPerCubicMetre,
  type Metres,
  metres,
  ratio,
  squareMetres,
} from '#quantity/units.ts';

const laws = { seed: 1, numRuns: 300 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const diameters = between(0.06, 0.3).map(metres);
const roughness = between(0, 0.002).map(metres);
const airflows = between(1e-4, 0.15).map(cubicMetresPerSecond);
const ductPiece = fc.record({
  kind: fc.constant('duct' as const),
  diameter: diameters,
  length: between(0.1, 30).map(metres),
  roughness,
  pressureFactor: between(1, 10).map(ratio),
});
const lossPiece = fc.record({
  kind: fc.constant('loss' as const),
  diameter: diameters,
  coefficient: between(0.001, 6).map(ratio),
});
const openingPiece = fc.record({
  kind: fc.constant('opening' as const),
  area: between(0.002, 0.1).map(squareMetres),
  dischargeCoefficient: between(0.5, 1).map(ratio),
});
const anyPiece: fc.Arbitrary<Piece> = fc.oneof(ductPiece, lossPiece, openingPiece);
const runs = fc.array(anyPiece, { minLength: 1, maxLength: 8 });

const close = (actual: number, expected: number, relative = 1e-9) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected) + 1e-12);

/** Fifteen feet of 4 in with two elbows and a wall cap. */
const usual = (diameter: Metres, change: Partial<DuctPiece> = {}): readonly Piece[] => [
  { kind: 'duct', diameter, length: metres(4.6), roughness: metres(9e-5), pressureFactor: ratio(1), ...change },
  { kind: 'loss', diameter, coefficient: ratio(0.8) },
  { kind: 'loss', diameter, coefficient: ratio(2.2) },
];
const usualPressure = (diameter: Metres, airflow: number, change: Partial<DuctPiece> = {}) =>
  systemCurve(usual(diameter, change), standardAir)(cubicMetresPerSecond(airflow));

describe('the pressure a run takes', () => {
  it('is the sum of what its pieces take', () => {
    fc.assert(
      fc.property(runs, airflows, (pieces, airflow) => {
        const sum = pieceLosses(pieces, standardAir, airflow).reduce((total, loss) => total + loss, 0);
        close(systemCurve(pieces, standardAir)(airflow), sum);
      }),
      laws,
    );
  });

  it('does not care in which order the pieces stand, nor how a duct is cut into lengths', () => {
    fc.assert(
      fc.property(runs, ductPiece, airflows, between(0.05, 0.95), (pieces, duct, airflow, cut) => {
        const whole = systemCurve([...pieces, duct], standardAir)(airflow);
        const first = { ...duct, length: metres(duct.length * cut) };
        const second = { ...duct, length: metres(duct.length * (1 - cut)) };
        close(systemCurve([first, ...[...pieces].reverse(), second], standardAir)(airflow), whole);
      }),
      laws,
    );
  });

  it('rises with the airflow, and nothing takes nothing', () => {
    fc.assert(
      fc.property(runs, airflows, between(1e-6, 1), (pieces, airflow, more) => {
        const curve = systemCurve(pieces, standardAir);
        const low = curve(airflow);
        const high = curve(cubicMetresPerSecond(airflow * (1 + more)));
        expect(high).toBeGreaterThan(low);
        expect(curve(cubicMetresPerSecond(0))).toBe(0);
      }),
      laws,
    );
  });

  it('has no jump anywhere from still air to a gale', () => {
    const curve = systemCurve(usual(metres(0.1016)), standardAir);
    let before = 0;
    for (let step = 1; step <= 4000; step++) {
      const airflow = step * 2.5e-6;
      const now = curve(cubicMetresPerSecond(airflow));
      expect(now).toBeGreaterThan(before);
      // Between Reynolds numbers 2300 and 4000 pressure rises fastest, still under the cube of the flow there.
      expect(now - before).toBeLessThan((6 * now) / step + 1e-9);
      before = now;
    }
  });

  it('rises with length, roughness and slack', () => {
    fc.assert(
      fc.property(diameters, between(0.01, 0.15), between(0.01, 0.3), (diameter, airflow, more) => {
        const here = usualPressure(diameter, airflow);
        expect(usualPressure(diameter, airflow, { length: metres(4.6 + more) })).toBeGreaterThan(here);
        expect(usualPressure(diameter, airflow, { roughness: metres(9e-5 + more / 1000) })).toBeGreaterThan(here);
        const slack = flexPressureFactor({ compression: ratio(more), diameter });
        expect(usualPressure(diameter, airflow, { pressureFactor: slack.low })).toBeGreaterThan(here);
      }),
      laws,
    );
  });

  it('falls when the whole run is made wider', () => {
    fc.assert(
      fc.property(diameters, airflows, between(1e-3, 0.1), roughness, (diameter, airflow, more, rough) => {
        const narrow = usualPressure(diameter, airflow, { roughness: rough });
        expect(usualPressure(metres(diameter + more), airflow, { roughness: rough })).toBeLessThan(narrow);
      }),
      laws,
    );
  });

  it('reads the same in feet and cfm as in metres and litres', () => {
    fc.assert(
      fc.property(between(3, 10), between(1, 60), between(10, 300), (inches, feet, cfm) => {
        const duct = {
          diameter: metres(toSi(inches, 'in', 'm')),
          length: metres(toSi(feet, 'ft', 'm')),
          roughness: metres(toSi(0.0003, 'ft', 'm')),
          pressureFactor: ratio(1),
        };
        const trade = frictionLoss({
          duct,
          airflow: cubicMetresPerSecond(toSi(cfm, 'cfm', 'm^3/s')),
          air: standardAir,
        });
        const litres = fromSi(toSi(cfm, 'cfm', 'm^3/s'), 'litre/s', 'm^3/s');
        const metric = {
          diameter: metres((inches * 25.4) / 1000),
          length: metres((feet * 304.8) / 1000),
          roughness: metres(0.00009144),
          pressureFactor: ratio(1),
        };
        close(
          frictionLoss({ duct: metric, airflow: cubicMetresPerSecond(litres / 1000), air: standardAir }),
          trade,
          1e-7,
        );
      }),
      laws,
    );
  });

  it('goes with the weight of the air where the flow tumbles fully', () => {
    const heavy = { density: kilogramsPerCubicMetre(1.2), kinematicViscosity: 1.5e-5 };
    const light = { density: kilogramsPerCubicMetre(0.9), kinematicViscosity: 1.5e-5 };
    const airflow = cubicMetresPerSecond(0.04);
    const pieces = usual(metres(0.1016));
    close(systemCurve(pieces, light)(airflow) / systemCurve(pieces, heavy)(airflow), 0.75);
  });

  it('is lower at 5000 ft by the weight of the air, give or take the thicker-for-its-weight air', () => {
    const airflow = cubicMetresPerSecond(0.04);
    const high = airAt({ altitude: metres(1524), temperature: celsius(21.11) });
    const share = systemCurve(usual(metres(0.1016)), high)(airflow) / usualPressure(metres(0.1016), airflow);
    expect(share).toBeGreaterThan(0.832);
    expect(share).toBeLessThan(0.86);
  });
});

describe('a gap in series with the duct', () => {
  // Orifice equation with C_d 0.60 and 1.2 kg/m³, own working: 110 cfm forced through 1/4 in under a 30 in door. Not what a fan would do.
  it('takes what the orifice equation says', () => {
    const air = { density: kilogramsPerCubicMetre(1.2), kinematicViscosity: 1.5e-5 };
    const gap: Piece = {
      kind: 'opening',
      area: squareMetres(30 * 0.25 * 0.0254 ** 2),
      dischargeCoefficient: ratio(0.6),
    };
    const pressure = systemCurve([gap], air)(cubicMetresPerSecond(toSi(110, 'cfm', 'm^3/s')));
    expect(Math.abs(pressure / 191.9 - 1)).toBeLessThan(0.02);
  });

  it('lets nothing through when there is no gap at all', () => {
    const shut: Piece = { kind: 'opening', area: squareMetres(0), dischargeCoefficient: ratio(0.6) };
    const curve = systemCurve([...usual(metres(0.1016)), shut], standardAir);
    expect(curve(cubicMetresPerSecond(1e-6))).toBe(Number.POSITIVE_INFINITY);
    expect(curve(cubicMetresPerSecond(0))).toBe(0);
  });
});

describe('velocity pressure', () => {
  it('at a diameter is its coefficient times the square of the airflow', () => {
    fc.assert(
      fc.property(diameters, airflows, (diameter, airflow) => {
        const pressure = velocityPressure(ductVelocity({ airflow, diameter }), standardAir.density);
        close(velocityPressureCoefficient(diameter, standardAir) * airflow ** 2, pressure);
      }),
      laws,
    );
  });

  // 4 in duct, 80 cfm: 917 fpm, 0.0524 in. w.g. (own working, ASHRAE velocity pressure at 0.075 lb/ft³).
  it('is 13 Pa in a 4 in duct at 80 cfm', () => {
    const diameter = metres(toSi(4, 'in', 'm'));
    const airflow = cubicMetresPerSecond(toSi(80, 'cfm', 'm^3/s'));
    expect(airflow / ductArea(diameter)).toBeCloseTo(4.657, 3);
    expect(velocityPressureCoefficient(diameter, standardAir) * airflow ** 2).toBeCloseTo(13.03, 1);
  });

  it('is exactly what a bare pipe end loses', () => {
    const diameter = metres(0.1016);
    const airflow = cubicMetresPerSecond(0.04);
    const end: Piece = { kind: 'loss', diameter, coefficient: ratio(1) };
    close(systemCurve([end], standardAir)(airflow), velocityPressureCoefficient(diameter, standardAir) * airflow ** 2);
  });
});
