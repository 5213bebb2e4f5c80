import { expect } from 'vitest';
import { loudnessChanged, loudnessLevel } from '#engine/sound/loudness.ts';
import { soundBand } from '#engine/sound/sound-band.ts';
import { levelSum, meterLevel, meterLevelBand, speedSoundChange } from '#engine/sound/sound-level.ts';
import { meterRule, soundAllowanceRanges, soundLimits } from '#knowledge/sound.ts';
import { toSi } from '#quantity/unit-factors.ts';
import { metresPerSecond, ratio, sones } from '#quantity/units.ts';
import { agrees, type Check, inchesOfWater, workedExamples } from './airflow-checks.ts';
import figures from './figures/sound.json' with { type: 'json' };

interface OffRating {
  readonly ratedSones: number;
  readonly ratedAt: number;
  readonly pressure: number;
  readonly quietVelocity: number;
  readonly fastVelocity: number;
}

workedExamples('what is published about sound', figures, {
  'loudness level': (check: Check<{ sones: number }>) => agrees(loudnessLevel(sones(check.given.sones)), check),
  'meter level': (check: Check<{ sones: number }>) => {
    const loudness = sones(check.given.sones);
    agrees(meterLevel(loudness, meterRule), check);
    // The rule is good to 2 dB either way, and says nothing below 0.7 sone.
    const band = meterLevelBand(loudness, meterRule);
    if (loudness < 0.7) expect(band).toEqual({ known: false, why: 'too quiet for the rule' });
    else expect(band.known && band.level.high - band.level.low).toBeCloseTo(4, 9);
  },
  'speed change': (check: Check<{ speedRatio: number }>) =>
    agrees(speedSoundChange(ratio(check.given.speedRatio)), check),
  'level sum': (check: Check<{ levels: readonly number[] }>) => agrees(levelSum(check.given.levels), check),
  'two fans level': (check: Check<{ fans: number }>) => agrees(levelSum(Array(check.given.fans).fill(0)), check),
  'two fans loudness': (check: Check<{ fans: number; sones: number }>) =>
    agrees(loudnessChanged(sones(check.given.sones), levelSum(Array(check.given.fans).fill(0))), check),
  'sound limit': (check: Check<{ figure: 'continuous' | 'demand' }>) => agrees(soundLimits[check.given.figure], check),
  'louder off its rating': (check: Check<OffRating>) => {
    const { ratedSones, ratedAt, pressure, quietVelocity, fastVelocity } = check.given;
    const bandAt = (staticPressure: number, feetPerMinute: number) => {
      const band = soundBand({
        ratedSones: sones(ratedSones),
        ratedAt: inchesOfWater(ratedAt),
        staticPressure: inchesOfWater(staticPressure),
        speedRatio: ratio(1),
        ductVelocity: metresPerSecond(toSi(feetPerMinute, 'fpm', 'm/s')),
        allowances: soundAllowanceRanges,
      });
      if (!band.told) throw new TypeError(band.why);
      return band;
    };
    const atRating = bandAt(ratedAt, quietVelocity);
    expect(atRating.sones.typical).toBeCloseTo(ratedSones, 9);
    expect(atRating.changes.airNoise.high).toBe(0);
    expect(bandAt(pressure, quietVelocity).sones.typical).toBeGreaterThan(atRating.sones.typical);
    expect(bandAt(ratedAt, fastVelocity).sones.typical).toBeGreaterThan(atRating.sones.typical);
  },
});
