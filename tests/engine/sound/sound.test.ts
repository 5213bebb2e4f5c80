import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loudness, loudnessChanged, loudnessLevel } from '#engine/sound/loudness.ts';
import { ratedSoundOutcome, type SoundAllowances, type SoundQuestion, soundBand } from '#engine/sound/sound-band.ts';
import { meterLevelBand } from '#engine/sound/sound-level.ts';
import { metresPerSecond, pascals, ratio, sones } from '#quantity/units.ts';

const runs = { seed: 1, numRuns: 200 };

describe('sones and phons', () => {
  it('there and back again are the same loudness', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 20, noNaN: true }), (value) => {
        expect(loudness(loudnessLevel(sones(value))) / value).toBeCloseTo(1, 9);
      }),
      runs,
    );
  });

  it('rise together, without a step at one sone', () => {
    expect(loudnessLevel(sones(0.999999))).toBeCloseTo(loudnessLevel(sones(1)), 3);
    expect(loudnessLevel(sones(0.3))).toBeLessThan(loudnessLevel(sones(0.5)));
  });

  it('ten decibels twice as loud, above one sone', () => {
    expect(loudnessChanged(sones(1.5), 10)).toBeCloseTo(3, 9);
  });
});

const allowances: SoundAllowances = {
  asInstalled: { low: -1, typical: 0, high: 3 },
  perPressureDecade: { low: 0, typical: 10, high: 20 },
  airNoiseFrom: { low: metresPerSecond(4.5), typical: metresPerSecond(4.8), high: metresPerSecond(5) },
  perVelocityDecade: { low: 0, typical: 25, high: 50 },
};
const question: SoundQuestion = {
  ratedSones: sones(1),
  ratedAt: pascals(25),
  staticPressure: pascals(25),
  speedRatio: ratio(1),
  ductVelocity: metresPerSecond(3),
  allowances,
};
function told(change: Partial<SoundQuestion>) {
  const band = soundBand({ ...question, ...change });
  if (!band.told) throw new TypeError(band.why);
  return band;
}

describe('how loud a fan is where it works', () => {
  it('is its rating at the rated point, with the doubt of mounting it', () => {
    const { sones: band } = told({});
    expect(band.typical).toBeCloseTo(1, 9);
    expect(band.low).toBeLessThan(1);
    expect(band.high).toBeCloseTo(2 ** 0.3, 9);
  });

  it('is never told of a fan without a rating', () => {
    const { ratedSones: _unrated, ...rest } = question;
    expect(soundBand(rest)).toEqual({ told: false, why: 'no sound rating' });
    expect(soundBand({ ...question, ratedSones: sones(0) })).toEqual({ told: false, why: 'no sound rating' });
  });

  it('falls steeply on a lower setting along the same duct', () => {
    // Own arithmetic: 50 log10 0.8 = −4.85 dB at the similar point, from 40 phons to 35.15.
    const slow = told({ speedRatio: ratio(0.8), staticPressure: pascals(16) });
    expect(slow.changes.speed).toBeCloseTo(-4.85, 2);
    expect(slow.changes.pressure.high).toBeCloseTo(0, 9);
    expect(slow.sones.typical).toBeCloseTo((35.154 / 40) ** (1 / 0.35), 3);
  });

  it('is a band in order, whatever the fan and the duct', () => {
    const any = fc.record({
      rated: fc.double({ min: 0.3, max: 6, noNaN: true }),
      pressure: fc.double({ min: 0, max: 200, noNaN: true }),
      speed: fc.double({ min: 0.4, max: 1.3, noNaN: true }),
      velocity: fc.double({ min: 0, max: 12, noNaN: true }),
    });
    fc.assert(
      fc.property(any, ({ rated, pressure, speed, velocity }) => {
        const { sones: band } = told({
          ratedSones: sones(rated),
          staticPressure: pascals(pressure),
          speedRatio: ratio(speed),
          ductVelocity: metresPerSecond(velocity),
        });
        expect(band.low).toBeLessThan(band.typical);
        expect(band.typical).toBeLessThan(band.high);
      }),
      runs,
    );
  });

  it('is not called much quieter for working at less than its rated pressure', () => {
    expect(told({ staticPressure: pascals(0) }).changes.pressure).toEqual({
      low: expect.closeTo(-6.02, 2),
      typical: expect.closeTo(-3.01, 2),
      high: expect.closeTo(0, 9),
    });
  });
});

describe('a rating against the limit', () => {
  const judged = (rated: number | undefined, exempt = false) =>
    ratedSoundOutcome({ ...(rated === undefined ? {} : { ratedSones: sones(rated) }), most: sones(3), exempt });

  it('meets it, misses it, or is not known', () => {
    expect([judged(3), judged(3.1), judged(undefined), judged(5, true)]).toEqual([
      'meets',
      'too loud',
      'no sound rating',
      'exempt',
    ]);
  });
});

describe('what a meter would read', () => {
  const rule = { atOneSone: 28, perDecade: 33.2, accuracy: 2, leastSones: sones(0.7) };
  it('carries the error of the rule, and nothing for a very quiet fan', () => {
    expect(meterLevelBand(sones(1), rule)).toEqual({ known: true, level: { low: 26, typical: 28, high: 30 } });
    expect(meterLevelBand(sones(0.3), rule)).toEqual({ known: false, why: 'too quiet for the rule' });
  });
});
