import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airAt, standardAir } from '#engine/air/air.ts';
import { airDensity, densityRatio, standardAirDensity, standardAirTemperature } from '#engine/air/density.ts';
import { dynamicViscosity, kinematicViscosity } from '#engine/air/viscosity.ts';
import { celsius, kilogramsPerCubicMetre, metres } from '#quantity/units.ts';

const laws = { seed: 1, numRuns: 200 };
const altitude = fc.double({ min: -100, max: 4000, noNaN: true }).map(metres);
const temperature = fc.double({ min: -40, max: 60, noNaN: true }).map(celsius);

describe('the air in a duct', () => {
  it('is standard air at sea level and 70 °F', () => {
    expect(standardAir.density).toBeCloseTo(standardAirDensity, 10);
    expect(densityRatio({ altitude: metres(0), temperature: standardAirTemperature })).toBeCloseTo(1, 12);
  });

  // U.S. Standard Atmosphere 1976, table at sea level: 1.2250 kg/m³, 1.7894e-5 Pa·s, 1.4607e-5 m²/s at 15 °C (from memory).
  it('agrees with the standard atmosphere at sea level and 15 °C', () => {
    const air = airAt({ altitude: metres(0), temperature: celsius(15) });
    expect(dynamicViscosity(celsius(15))).toBeCloseTo(1.7894e-5, 8);
    expect(Math.abs(air.density / 1.225 - 1)).toBeLessThan(0.002);
    expect(Math.abs(air.kinematicViscosity / 1.4607e-5 - 1)).toBeLessThan(0.002);
  });

  it('gets lighter with height and with warmth', () => {
    fc.assert(
      fc.property(altitude, temperature, fc.double({ min: 1, max: 500, noNaN: true }), (height, warmth, more) => {
        const here = airDensity({ altitude: height, temperature: warmth });
        expect(airDensity({ altitude: metres(height + more), temperature: warmth })).toBeLessThan(here);
        expect(airDensity({ altitude: height, temperature: celsius(warmth + more / 10) })).toBeLessThan(here);
      }),
      laws,
    );
  });

  it('gets thicker with warmth, and thicker for its weight with height', () => {
    fc.assert(
      fc.property(altitude, temperature, (height, warmth) => {
        expect(dynamicViscosity(celsius(warmth + 1))).toBeGreaterThan(dynamicViscosity(warmth));
        const low = airAt({ altitude: height, temperature: warmth });
        const high = airAt({ altitude: metres(height + 300), temperature: warmth });
        expect(high.kinematicViscosity).toBeGreaterThan(low.kinematicViscosity);
      }),
      laws,
    );
  });

  it('has half the kinematic viscosity at twice the weight', () => {
    const warm = celsius(20);
    const thin = kinematicViscosity({ temperature: warm, density: kilogramsPerCubicMetre(0.6) });
    const dense = kinematicViscosity({ temperature: warm, density: kilogramsPerCubicMetre(1.2) });
    expect(thin / dense).toBeCloseTo(2, 12);
  });
});
