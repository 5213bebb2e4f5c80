import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CombustionFacts, CombustionLimits, FuelAppliance } from '#engine/pressure/combustion-facts.ts';
import { combustionJudgement, combustionWeights } from '#engine/pressure/combustion-judgement.ts';
import { pascals } from '#quantity/units.ts';

const runs = { seed: 1, numRuns: 300 };
const kinds: readonly FuelAppliance[] = [
  'natural draft',
  'unvented',
  'solid fuel',
  'induced draft',
  'power vented',
  'sealed',
  'unknown',
];
const limits: CombustionLimits = {
  depressurisation: {
    'natural draft': pascals(2),
    unvented: pascals(2),
    'solid fuel': pascals(2),
    'induced draft': pascals(5),
    'power vented': pascals(15),
    sealed: pascals(25),
    unknown: pascals(2),
  },
  garage: pascals(5),
  carbonMonoxideRaised: 9,
  carbonMonoxideHigh: 35,
};

const appliances = fc.oneof(
  fc.constantFrom('unknown' as const, 'not asked' as const),
  fc.uniqueArray(fc.constantFrom(...kinds), { maxLength: 3 }),
);
const yesNoUnknown = fc.constantFrom('yes' as const, 'no' as const, 'unknown' as const);
const anyFacts: fc.Arbitrary<CombustionFacts> = fc.record({
  appliances,
  appliancesInBathZone: appliances,
  recordedBy: fc.constantFrom('lead' as const, 'other' as const),
  sealedProof: fc.constantFrom('two pipes seen' as const, 'rating plate seen' as const, 'nothing seen' as const),
  houseDepressurisation: fc.oneof(
    fc.constant('unknown' as const),
    fc
      .double({ min: 0, max: 40, noNaN: true })
      .map((high) => ({ low: pascals(high / 4), typical: pascals(high / 2), high: pascals(high) })),
  ),
  attachedGarage: yesNoUnknown,
  carbonMonoxideAlarm: fc.constantFrom(
    'sounding' as const,
    'fitted and tested' as const,
    'none' as const,
    'unknown' as const,
  ),
  spillageSeen: fc.oneof(yesNoUnknown, fc.constant('not asked' as const)),
  carbonMonoxide: fc.oneof(fc.constant('not measured' as const), fc.integer({ min: 0, max: 500 })),
});

const codes = (facts: CombustionFacts) => combustionJudgement(facts, limits).map(({ code }) => code);
const stops = (facts: CombustionFacts) =>
  combustionJudgement(facts, limits).filter(({ weight }) => weight === 'stop').length;

describe('judging fans and flames, whatever the facts', () => {
  it('nothing is ever cleared: there is always a judgement, and no other weight than caution and stop', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const judgements = combustionJudgement(facts, limits);
        expect(judgements.at(-1)).toEqual({ code: 'estimate-clears-nothing', weight: 'caution' });
        for (const { code, weight } of judgements) expect(weight).toBe(combustionWeights[code]);
      }),
      runs,
    );
  });

  it('stops come first, and danger to life first of all', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const weights = combustionJudgement(facts, limits).map(({ weight }) => weight);
        expect(weights.indexOf('caution')).toBe(stops(facts));
        if (facts.carbonMonoxideAlarm === 'sounding') expect(codes(facts)[0]).toBe('carbon-monoxide-alarm');
        else if (facts.spillageSeen === 'yes') expect(codes(facts)[0]).toBe('spillage');
      }),
      runs,
    );
  });

  it('not knowing the appliances is never milder than a house with a natural-draft heater', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const unknown = stops({ ...facts, appliances: 'unknown' });
        const heater = stops({ ...facts, appliances: ['natural draft'] });
        expect(unknown).toBeGreaterThanOrEqual(heater);
      }),
      runs,
    );
  });

  it('an unknown bath zone always stops the job', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        expect(codes({ ...facts, appliancesInBathZone: 'unknown' })).toContain('bath-zone-unknown');
      }),
      runs,
    );
  });

  it('a bath zone nobody was asked about is said aloud, and stops nothing by itself', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const judged = codes({ ...facts, appliancesInBathZone: 'not asked' });
        expect(judged).toContain('bath-zone-not-asked');
        expect(judged).not.toContain('bath-zone-unknown');
        expect(judged).not.toContain('appliance-in-bath-zone');
      }),
      runs,
    );
  });

  it('smoke that nobody can say anything of stops the job where something that can spill was reported, and only there', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const said = [facts.appliances, facts.appliancesInBathZone].filter((each) => each !== 'not asked');
        const maySpill = said.some(
          (each) => each === 'unknown' || each.some((kind) => limits.depressurisation[kind] <= 2),
        );
        expect(codes({ ...facts, spillageSeen: 'unknown' }).includes('spillage-unknown')).toBe(maySpill);
        for (const spillageSeen of ['not asked', 'no', 'yes'] as const)
          expect(codes({ ...facts, spillageSeen })).not.toContain('spillage-unknown');
      }),
      runs,
    );
  });

  it('appliances nobody was asked about are unknown, and stop the job once the house can fall far enough', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const judged = codes({ ...facts, appliances: 'not asked', appliancesInBathZone: [] });
        expect(judged).toContain('appliances-unknown');
        expect(judged).not.toContain('house-pressure-unknown');
        const { houseDepressurisation: pressure } = facts;
        expect(judged.includes('house-pressure')).toBe(pressure !== 'unknown' && pressure.high >= 2);
      }),
      runs,
    );
  });

  it('without an estimate only an appliance that was reported stops the job; "none" and "sealed" unconfirmed warn', () => {
    for (const appliances of [[], ['sealed']] as const) {
      const facts: CombustionFacts = {
        appliances,
        appliancesInBathZone: [],
        recordedBy: 'other',
        sealedProof: 'two pipes seen',
        houseDepressurisation: 'unknown',
        attachedGarage: 'no',
        carbonMonoxideAlarm: 'fitted and tested',
        spillageSeen: 'no',
        carbonMonoxide: 'not measured',
      };
      expect(stops(facts)).toBe(0);
      expect(codes(facts)).toContain('house-pressure-not-estimated');
      expect(codes({ ...facts, appliances: ['unknown'] })).toContain('house-pressure-unknown');
      expect(codes({ ...facts, appliances: ['solid fuel'] })).toContain('house-pressure-unknown');
    }
  });

  it('anything in the bath zone but a sealed appliance proven by a lead stops the job', () => {
    fc.assert(
      fc.property(anyFacts, fc.constantFrom(...kinds), (facts, kind) => {
        const judged = codes({ ...facts, appliancesInBathZone: [kind] });
        const proven = kind === 'sealed' && facts.recordedBy === 'lead' && facts.sealedProof !== 'nothing seen';
        const stopped = judged.includes('appliance-in-bath-zone') || judged.includes('bath-zone-unknown');
        expect(stopped).toBe(!proven);
      }),
      runs,
    );
  });

  it('"none" and "sealed" from anybody but a lead are judged as unknown', () => {
    fc.assert(
      fc.property(anyFacts, fc.constantFrom([], ['sealed' as const]), (facts, answer) => {
        const judged = codes({ ...facts, appliances: answer, recordedBy: 'other' });
        expect(judged).toContain('appliances-unknown');
        const as = answer.length === 0 ? 'none-not-confirmed' : 'sealed-not-confirmed';
        expect(judged).toContain(as);
      }),
      runs,
    );
  });

  it('a stronger pull on the house never takes a stop away', () => {
    fc.assert(
      fc.property(anyFacts, fc.double({ min: 1, max: 5, noNaN: true }), (facts, times) => {
        const { houseDepressurisation: now } = facts;
        if (now === 'unknown') return;
        const more = { ...now, high: pascals(now.high * times) };
        expect(stops({ ...facts, houseDepressurisation: more })).toBeGreaterThanOrEqual(stops(facts));
      }),
      runs,
    );
  });

  it('not knowing how tight the house is is never milder than knowing, where something can spill', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const spills = { ...facts, appliances: ['natural draft'] } as const;
        expect(stops({ ...spills, houseDepressurisation: 'unknown' })).toBeGreaterThanOrEqual(stops(spills));
      }),
      runs,
    );
  });

  it('a limit that is not a number stops the job', () => {
    const facts: CombustionFacts = {
      appliances: ['power vented'],
      appliancesInBathZone: [],
      recordedBy: 'lead',
      sealedProof: 'nothing seen',
      houseDepressurisation: { low: pascals(0), typical: pascals(0), high: pascals(Number.NaN) },
      attachedGarage: 'no',
      carbonMonoxideAlarm: 'fitted and tested',
      spillageSeen: 'no',
      carbonMonoxide: 'not measured',
    };
    expect(codes(facts)).toContain('house-pressure');
    expect(codes({ ...facts, houseDepressurisation: 'unknown' })).toContain('house-pressure-not-estimated');
  });
});
