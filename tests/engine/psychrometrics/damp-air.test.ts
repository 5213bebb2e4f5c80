import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { beforeAll, describe, expect, it } from 'vitest';
import { atmosphericPressure } from '#engine/psychrometrics/atmospheric-pressure.ts';
import { dewPoint } from '#engine/psychrometrics/dew-point.ts';
import {
  humidityRatio,
  relativeHumidity,
  saturationHumidityRatio,
  vapourPressure,
} from '#engine/psychrometrics/humidity.ts';
import { enthalpy, moistAirDensity, specificVolume } from '#engine/psychrometrics/moist-air.ts';
import { saturationPressure } from '#engine/psychrometrics/saturation-pressure.ts';
import { humidityRatioFromWetBulb, wetBulb } from '#engine/psychrometrics/wet-bulb.ts';
import { celsius, metres, pascals, ratio } from '#quantity/units.ts';

// The library keeps one unit system for everybody who uses it.
beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI));

const runs = { seed: 1, numRuns: 200 };
const temperatures = fc.double({ min: -40, max: 60, noNaN: true }).map(celsius);
const shares = fc.double({ min: 0.02, max: 1, noNaN: true }).map(ratio);
const altitudes = fc.double({ min: -300, max: 3500, noNaN: true }).map(metres);
const airs = fc
  .record({ temperature: temperatures, relativeHumidity: shares, altitude: altitudes })
  .map(({ temperature, relativeHumidity: share, altitude }) => {
    const pressure = atmosphericPressure(altitude);
    const W = humidityRatio({ temperature, relativeHumidity: share, pressure });
    return { temperature, share, pressure, altitude, humidityRatio: W };
  });

describe('an open library says the same of any air a house may hold', () => {
  it('in pressure, vapour and water', () => {
    fc.assert(
      fc.property(airs, ({ temperature, share, pressure, altitude, humidityRatio: W }) => {
        expect(pressure / psychrolib.GetStandardAtmPressure(altitude)).toBeCloseTo(1, 9);
        expect(saturationPressure(temperature) / psychrolib.GetSatVapPres(temperature)).toBeCloseTo(1, 9);
        expect(W / psychrolib.GetHumRatioFromRelHum(temperature, share, pressure)).toBeCloseTo(1, 6);
      }),
      runs,
    );
  });

  it('in weight, room taken up and heat', () => {
    fc.assert(
      fc.property(airs, ({ temperature, pressure, humidityRatio: W }) => {
        const air = { temperature, pressure, humidityRatio: W };
        expect(moistAirDensity(air) / psychrolib.GetMoistAirDensity(temperature, W, pressure)).toBeCloseTo(1, 9);
        expect(specificVolume(air) / psychrolib.GetMoistAirVolume(temperature, W, pressure)).toBeCloseTo(1, 9);
        expect(enthalpy(air)).toBeCloseTo(psychrolib.GetMoistAirEnthalpy(temperature, W), 5);
      }),
      runs,
    );
  });

  it('in dew point and wet bulb', () => {
    fc.assert(
      fc.property(airs, ({ temperature, pressure, humidityRatio: W }) => {
        // The library stops its own search at a thousandth of a degree, and has a least amount of water.
        fc.pre(W > 1e-6);
        const air = { temperature, pressure, humidityRatio: W };
        const [dew, wet] = [dewPoint(vapourPressure(air)), wetBulb(air)];
        expect(dew.found && wet.found).toBe(true);
        if (!dew.found || !wet.found) return;
        expect(Math.abs(dew.temperature - psychrolib.GetTDewPointFromHumRatio(temperature, W, pressure))).toBeLessThan(
          0.002,
        );
        const library = psychrolib.GetTWetBulbFromHumRatio(temperature, W, pressure);
        expect(Math.abs(wet.temperature - library)).toBeLessThan(0.002);
      }),
      runs,
    );
  });
});

describe('the laws of damp air', () => {
  it('warmer air can carry more water', () => {
    fc.assert(
      fc.property(temperatures, temperatures, altitudes, (one, other, altitude) => {
        const pressure = atmosphericPressure(altitude);
        const [cold, warm] = one <= other ? [one, other] : [other, one];
        expect(saturationHumidityRatio(cold, pressure)).toBeLessThanOrEqual(saturationHumidityRatio(warm, pressure));
      }),
      runs,
    );
  });

  it('the dew point never lies above the air, and the wet bulb lies between', () => {
    fc.assert(
      fc.property(airs, (air) => {
        const [dew, wet] = [dewPoint(vapourPressure(air)), wetBulb(air)];
        if (!dew.found || !wet.found) throw new Error('no dew point');
        expect(dew.temperature).toBeLessThanOrEqual(air.temperature + 1e-9);
        expect(wet.temperature).toBeGreaterThanOrEqual(dew.temperature - 1e-9);
        expect(wet.temperature).toBeLessThanOrEqual(air.temperature + 1e-9);
      }),
      runs,
    );
  });

  it('going to water and back gives the same relative humidity', () => {
    fc.assert(
      fc.property(airs, (air) => {
        expect(relativeHumidity(air)).toBeCloseTo(air.share, 9);
      }),
      runs,
    );
  });

  it('going to a wet bulb and back gives the same water', () => {
    fc.assert(
      fc.property(airs, ({ temperature, pressure, humidityRatio: W }) => {
        const wet = wetBulb({ temperature, pressure, humidityRatio: W });
        if (!wet.found) throw new Error(wet.why);
        const back = humidityRatioFromWetBulb({ dryBulb: temperature, wetBulb: wet.temperature, pressure });
        expect(Math.abs(back - W)).toBeLessThan(1e-8);
      }),
      runs,
    );
  });

  it('damp air is lighter than dry air, and mountain air than sea air', () => {
    fc.assert(
      fc.property(airs, ({ temperature, pressure, humidityRatio: W }) => {
        const dry = moistAirDensity({ temperature, pressure, humidityRatio: ratio(0) });
        expect(moistAirDensity({ temperature, pressure, humidityRatio: W })).toBeLessThan(dry);
        const higher = pascals(pressure * 0.9);
        expect(moistAirDensity({ temperature, pressure: higher, humidityRatio: W })).toBeLessThan(dry);
      }),
      runs,
    );
  });
});

describe('air that has no dew point', () => {
  it('dry air has none', () => {
    expect(dewPoint(pascals(0))).toEqual({ found: false, why: 'no vapour' });
    expect(wetBulb({ temperature: celsius(20), humidityRatio: ratio(0), pressure: pascals(101_325) })).toEqual({
      found: false,
      why: 'no vapour',
    });
  });

  it('nor has vapour beyond the correlation', () => {
    expect(dewPoint(pascals(2e6))).toEqual({ found: false, why: 'outside the correlation' });
    expect(dewPoint(pascals(1e-6))).toEqual({ found: false, why: 'outside the correlation' });
  });
});
