import { describe, expect, it } from 'vitest';
import { fanCurve, freeAirflow, shutOffPressure } from '#engine/fan/fan-curve.ts';
import { typicalShape } from '#engine/fan/fan-shape.ts';
import { airflowMethods, fieldStudies } from '#knowledge/airflow.ts';
import { efficacyJudgedAt, fanEfficacyEditions, fanKinds, ratingPressures, usualHeldTo } from '#knowledge/fans.ts';
import { fieldMethods, methodTrust } from '#knowledge/field-methods.ts';
import { dwellingFormulas, dwellingTable, localExhaust, partTimeFactors } from '#knowledge/required-airflow.ts';
import { soundAllowances, soundRatedAt } from '#knowledge/sound.ts';
import { sources } from '#knowledge/sources.ts';
import { cubicMetresPerSecond } from '#quantity/units.ts';

const ownFigures = {
  airflowMethods,
  fieldStudies,
  efficacyJudgedAt,
  fanEfficacyEditions,
  fanKinds,
  ratingPressures,
  usualHeldTo,
  fieldMethods,
  dwellingFormulas,
  dwellingTable,
  localExhaust,
  partTimeFactors,
  soundAllowances,
};

/** Every citation anywhere inside some figures, with the path to it. */
function citations(value: unknown, path: string): { path: string; source: string; verified: boolean }[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === 'citation'
      ? [{ path, ...(inner as { source: string; verified: boolean }) }]
      : citations(inner, `${path} › ${key}`),
  );
}

describe('what is known about airflow', () => {
  it('names a known publication beside every figure', () => {
    const all = citations(ownFigures, 'airflow');
    expect(all.length).toBeGreaterThan(80);
    expect(all.filter(({ source }) => !(source in sources))).toEqual([]);
  });

  it('never calls practice, memory or own working a published figure', () => {
    const honest = ['common practice', 'own working', 'memory'];
    const wrong = citations(ownFigures, 'airflow').filter(
      ({ source, verified }) => verified && honest.includes(sources[source as keyof typeof sources].kind),
    );
    expect(wrong).toEqual([]);
  });

  it('asks no more of a fan that never stops than of one run on demand', () => {
    for (const { name, bathroom } of Object.values(localExhaust)) {
      expect(bathroom.continuous.inchPound, name).toBeLessThan(bathroom.intermittent.inchPound);
    }
  });

  it('keeps both printed units within a rounding of each other', () => {
    for (const { name, bathroom } of Object.values(localExhaust)) {
      for (const { inchPound, metric } of [bathroom.intermittent, bathroom.continuous]) {
        expect(Math.abs(metric / inchPound - 1), name).toBeLessThan(0.07);
      }
    }
  });

  it('asks for the listed pressure from 2021 on and not before', () => {
    const asks = (['irc-2015', 'irc-2018', 'irc-2021', 'irc-2024'] as const).map(
      (edition) => localExhaust[edition].listedAt !== undefined,
    );
    expect(asks).toEqual([false, false, true, true]);
  });

  it('tabulates more air for more floor and more bedrooms', () => {
    const { airflow } = dwellingTable;
    for (const [row, rates] of airflow.entries()) {
      expect(rates).toEqual(rates.toSorted((a, b) => a - b));
      expect(rates.every((rate, column) => rate > (airflow[row - 1]?.[column] ?? 0))).toBe(true);
    }
  });
});

describe('kinds of fan', () => {
  it('each make a curve from one carton number', () => {
    for (const { name, shape } of Object.values(fanKinds)) {
      const airflow = cubicMetresPerSecond(0.04);
      const outcome = fanCurve(
        { kind: 'points', points: [{ airflow, staticPressure: ratingPressures.low }] },
        typicalShape(shape),
      );
      expect(outcome.valid && freeAirflow(outcome.curve), name).toBeGreaterThanOrEqual(airflow);
      expect(outcome.valid && shutOffPressure(outcome.curve), name).toBeGreaterThan(ratingPressures.high);
    }
  });

  it('run from the weakest to the one that holds its airflow', () => {
    const strengths = (['economy', 'standard', 'electronic', 'constant-flow'] as const).map(
      (kind) => fanKinds[kind].shape.strength.typical,
    );
    expect(strengths).toEqual(strengths.toSorted((a, b) => a - b));
    expect(fanKinds.unknown.shape.strength.low).toBe(fanKinds.economy.shape.strength.low);
    expect(fanKinds.unknown.shape.strength.high).toBe(fanKinds['constant-flow'].shape.strength.high);
  });
});

describe('limits by size', () => {
  it('rise in order and end where the programme ends', () => {
    for (const edition of Object.values(fanEfficacyEditions)) {
      for (const steps of [edition.bath, edition.inLine, edition.rangeHood]) {
        const ends = steps.map(({ below }) => below);
        expect(ends, edition.name).toEqual(ends.toSorted((a, b) => a - b));
        expect(
          steps.every(({ least }) => least > 0),
          edition.name,
        ).toBe(true);
      }
    }
  });
});

describe('ranges', () => {
  it('of sound and measuring run from low to high', () => {
    expect(soundAllowances.airNoiseFrom.estimate.low).toBeLessThan(soundAllowances.airNoiseFrom.estimate.high);
    expect(methodTrust.box.leastPressure).toBeLessThan(methodTrust.box.mostPressure);
    expect(methodTrust.hood.powered).toBeLessThan(methodTrust.hood.unpowered);
    expect(soundRatedAt.pressure).toBe(ratingPressures.low);
  });
});
