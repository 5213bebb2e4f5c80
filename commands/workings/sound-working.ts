import { loudnessLevel } from '#engine/sound/loudness.ts';
import { leastPressureRatio, type SoundBand } from '#engine/sound/sound-band.ts';
import type { Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { soundAllowanceCitations, soundAllowanceRanges, soundRatedAt } from '#knowledge/sound.ts';
import { airSpeed, loudness, staticPressure } from '#quantity/kinds.ts';
import { type MetresPerSecond, metresPerSecond, type Pascals, type Ratio, type Sones } from '#quantity/units.ts';

/** What a fan's noise is worked out from. */
export interface SoundHeard {
  readonly rated: Sones;
  readonly band: Extract<SoundBand, { told: true }>;
  readonly speedRatio: Ratio;
  readonly against: Pascals;
  readonly velocity: MetresPerSecond;
}

const minus = (text: string): string => text.replaceAll('-', '−');

const decibels = (low: number, high: number): string => minus(`${low.toFixed(1)} to ${high.toFixed(1)} dB`);

/** A sum with its signs, to a tenth. */
const sumOf = (parts: readonly number[]): string =>
  minus(
    parts
      .map((part) => part.toFixed(1))
      .join(' + ')
      .replaceAll('+ -', '- '),
  );

/** How the label's sones become a band in this duct, line by line. */
export function soundSteps({ rated, band, speedRatio, against, velocity }: SoundHeard, units: UnitSystem): Step[] {
  const { speed, pressure, airNoise } = band.changes;
  const { asInstalled, perPressureDecade, airNoiseFrom, perVelocityDecade } = soundAllowanceRanges;
  const ratio = against / (speedRatio ** 2 * soundRatedAt.pressure);
  const counted = Math.max(leastPressureRatio, ratio);
  const shown = (metres: number) => airSpeed.showShort(metresPerSecond(metres), units);
  return [
    { what: 'Sones on the label', value: loudness.show(rated, units), source: soundRatedAt.citation },
    {
      what: 'Change by speed of the setting',
      how: `50 × log₁₀ ${speedRatio.toFixed(3)}`,
      value: minus(`${speed.toFixed(1)} dB`),
      source: airflowMethods['fan-sound-law'].citation,
    },
    {
      what: `Change by pressure, ${staticPressure.showShort(against, units)} against ${staticPressure.showShort(soundRatedAt.pressure, units)}`,
      how: `${perPressureDecade.low} to ${perPressureDecade.high} dB × log₁₀ ${counted.toFixed(3)}, the one over the other at this speed${counted > ratio ? ', never counted under a half' : ''}`,
      value: decibels(pressure.low, pressure.high),
      source: soundAllowanceCitations.perPressureDecade,
    },
    {
      what: 'Noise of the air itself',
      how: `none under ${shown(airNoiseFrom.low)} to ${shown(airNoiseFrom.high)}; over it ${perVelocityDecade.low} to ${perVelocityDecade.high} dB × log₁₀ of ${shown(velocity)} over that`,
      value: decibels(airNoise.low, airNoise.high),
      source: soundAllowanceCitations.perVelocityDecade,
    },
    {
      what: 'As screwed to joists instead of hung in a test room',
      value: decibels(asInstalled.low, asInstalled.high),
      source: soundAllowanceCitations.asInstalled,
    },
    ...loudnessSteps(rated, band, units),
  ];
}

/** The changes together, and what they make of the sones: ten decibels double a loudness of one sone and more. */
function loudnessSteps(rated: Sones, band: SoundHeard['band'], units: UnitSystem): Step[] {
  const { speed, pressure, airNoise } = band.changes;
  const { asInstalled } = soundAllowanceRanges;
  const parts = (end: 'low' | 'high') => [speed, pressure[end], airNoise[end], asInstalled[end]];
  const total = (end: 'low' | 'high') => parts(end).reduce((sum, part) => sum + part, 0);
  const level = loudnessLevel(rated);
  const made = (change: number) => {
    const phons = level + change;
    return phons >= 40 ? `2^((${phons.toFixed(1)} − 40) ÷ 10)` : `(${phons.toFixed(1)} ÷ 40)^(1 ÷ 0.35)`;
  };
  const { low, high } = band.sones;
  return [
    {
      what: 'All changes together',
      how: `${sumOf(parts('low'))} to ${sumOf(parts('high'))}`,
      value: decibels(total('low'), total('high')),
    },
    {
      what: 'The label’s sones as phons',
      how:
        rated >= 1
          ? `40 + 10 × log₂ ${loudness.showShort(rated, units)}`
          : `40 × (${loudness.showShort(rated, units)})^0.35`,
      value: `${level.toFixed(1)} phons`,
      source: airflowMethods.loudness.citation,
    },
    {
      what: 'Sones in this duct',
      how: `${made(total('low'))} to ${made(total('high'))}`,
      value: loudness.showRangeShort({ low, high }, units),
      source: airflowMethods.loudness.citation,
    },
  ];
}
