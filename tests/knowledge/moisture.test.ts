import { describe, expect, it } from 'vitest';
import { runTimeDirections } from '#engine/moisture/run-time-directions.ts';
import { combustionBackground, combustionFigures, combustionSentences } from '#knowledge/combustion.ts';
import { efficacyFigures, energyDefaults, energySentences } from '#knowledge/energy.ts';
import type { CitedSentence, Default, PrintedFigure } from '#knowledge/figure.ts';
import {
  doorPressureLimits,
  makeUpDefaults,
  makeUpFigures,
  makeUpSentences,
  otherExhausts,
} from '#knowledge/make-up.ts';
import {
  bathroomDefaults,
  ductCondensationDefaults,
  ductCondensationSentences,
  moistureFigures,
  moistureMethods,
  moldSentences,
  runTimeSentences,
  runTimeSteps,
  squeegeeLeft,
} from '#knowledge/moisture.ts';
import { siteHazardFigures, siteHazardSentences } from '#knowledge/site-hazards.ts';
import { type Citation, sources } from '#knowledge/sources.ts';
import moistureSources from '../../knowledge/sources/moisture.json' with { type: 'json' };

const defaults: Readonly<Record<string, Default>> = {
  ...bathroomDefaults,
  ...ductCondensationDefaults,
  ...makeUpDefaults,
  ...energyDefaults,
  'squeegee-left': squeegeeLeft,
};
const sentences: Readonly<Record<string, CitedSentence>> = {
  ...runTimeSentences,
  ...ductCondensationSentences,
  ...moldSentences,
  ...makeUpSentences,
  ...energySentences,
  ...combustionSentences,
  ...combustionBackground,
  ...siteHazardSentences,
};
const figures: readonly (readonly [string, PrintedFigure])[] = [
  ...Object.values(moistureFigures),
  makeUpFigures,
  efficacyFigures,
  combustionFigures,
  siteHazardFigures,
].flatMap((table) => Object.entries(table));

const citations: readonly (readonly [string, Citation])[] = [
  ...Object.entries({ ...defaults, ...sentences, ...moistureMethods, ...doorPressureLimits, ...otherExhausts }),
  ...figures,
].map(([id, { citation }]) => [id, citation]);

describe('what is assumed when nobody knows', () => {
  it.each(Object.entries(defaults))('%s has a reason in a sentence, and a value between its ends', (_, entry) => {
    const { low, typical, high } = entry.estimate;
    expect(entry.reason).toMatch(/\.$/);
    expect(low).toBeLessThanOrEqual(typical);
    expect(typical).toBeLessThanOrEqual(high);
    expect(high).toBeGreaterThan(low);
  });

  it('covers every number the run-time model needs, save the room, the airflow and the altitude', () => {
    const asked = ['deliveredAirflow', 'pressure', 'roomVolume'];
    const needed = Object.keys(runTimeDirections).filter((input) => !asked.includes(input));
    expect(Object.keys(bathroomDefaults).toSorted()).toEqual(needed.toSorted());
  });

  it('never assumes perfect mixing', () => {
    expect(bathroomDefaults.mixing.estimate).toEqual({ low: 0.5, typical: 0.6, high: 1 });
  });

  it('is in SI', () => {
    expect(makeUpDefaults['door-width'].estimate.typical).toBeCloseTo(0.762, 9);
    expect(ductCondensationDefaults['attic-temperature'].estimate.typical).toBeCloseTo(-6.667, 3);
    expect(ductCondensationDefaults['outside-film'].estimate.typical).toBeCloseTo(1 / 8.3, 9);
    expect(bathroomDefaults.moistureRelease.estimate.typical).toBeCloseTo(0.0007, 9);
    expect(energyDefaults['degree-days'].estimate.typical).toBeCloseTo(5000 / 1.8, 6);
    expect(runTimeSteps).toEqual({ step: 300, least: 900, most: 3600 });
  });
});

describe('what is said', () => {
  it.each(Object.entries(sentences))('%s reads as plain sentences', (_, { says }) => {
    expect(says).toMatch(/^[A-Z0-9]/);
    expect(says).toMatch(/\.$/);
    expect(says).not.toMatch(/!|\bplease\b/i);
    for (const each of says.split(/(?<=\.) /)) expect(each.split(' ').length, each).toBeLessThanOrEqual(27);
  });

  it('every run time is said to be a fit and not a proof', () => {
    expect(runTimeSentences.caution.says).toMatch(/fit and not a proof/);
  });

  it('the cost is an upper bound for heating only', () => {
    expect(energySentences['heating-only'].says).toMatch(/upper bound for heating only/);
  });
});

describe('where it comes from', () => {
  it('nothing from memory or of our own working is passed off as seen in print', () => {
    const passedOff = citations
      .filter(([, { source, verified }]) => {
        const { kind, note } = sources[source];
        return (
          verified && (['memory', 'own working', 'common practice'].includes(kind) || note?.startsWith('From memory'))
        );
      })
      .map(([id, { source }]) => `${id}: ${source} was not seen, so "verified" must be false`);
    expect(passedOff).toEqual([]);
  });

  it('every publication listed for moisture is cited by something', () => {
    const cited = new Set<string>(citations.map(([, { source }]) => source));
    const idle = Object.keys(moistureSources).filter((id) => !cited.has(id));
    expect(idle).toEqual([]);
  });

  it('a published figure names its unit and gives a number', () => {
    for (const [id, { value, low, unit, name }] of figures) {
      expect(Number.isFinite(value ?? low), id).toBe(true);
      expect(unit.length, id).toBeGreaterThan(0);
      expect(name.length, id).toBeGreaterThan(5);
    }
  });
});
