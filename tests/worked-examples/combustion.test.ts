import { describe, expect, it } from 'vitest';
import type { CombustionFacts } from '#engine/pressure/combustion-facts.ts';
import { combustionJudgement, combustionWeights } from '#engine/pressure/combustion-judgement.ts';
import { combustionFigures, combustionLimits, combustionSentences } from '#knowledge/combustion.ts';
import { exactly } from '#quantity/estimate.ts';
import { pascals } from '#quantity/units.ts';
import file from './figures/combustion.json' with { type: 'json' };
import { held, type RowFile, testEveryRow } from './moisture-rows.ts';

testEveryRow('combustion', file as unknown as RowFile, [[/./, 'figures held as printed', held(combustionFigures)]]);

describe('the limits used are never looser than the ones printed', () => {
  const printed = (id: string) => {
    const { value, high } = combustionFigures[id] ?? {};
    return Math.abs(value ?? high ?? Number.NaN);
  };

  it.each([
    ['natural draft', 'limit-natural-draft-alone'],
    ['induced draft', 'limit-induced-draft-furnace'],
    ['power vented', 'limit-power-vented'],
    ['sealed', 'limit-sealed'],
  ] as const)('for an appliance that is %s', (kind, id) => {
    expect(combustionLimits.depressurisation[kind]).toBeLessThanOrEqual(printed(id));
  });

  it('for those without a printed limit the smallest counts', () => {
    const { unvented, 'solid fuel': solid, unknown, ...known } = combustionLimits.depressurisation;
    const smallest = Math.min(...Object.values(known));
    expect([unvented, solid, unknown]).toEqual([smallest, smallest, smallest]);
  });

  it('everybody is outside at or below every level of carbon monoxide listed as a danger', () => {
    const dangers = ['abort-testing', 'evacuate', 'niosh-8-hours', 'niosh-ceiling', 'osha-8-hours', 'outdoors-1-hour'];
    for (const id of dangers) {
      expect(combustionLimits.carbonMonoxideHigh, id).toBeLessThanOrEqual(combustionFigures[id]?.value ?? 0);
    }
    expect(combustionLimits.carbonMonoxideRaised).toBe(combustionFigures['outdoors-8-hours']?.value);
  });
});

describe('what people are told', () => {
  it('there is a sentence for every judgement, and none to spare', () => {
    expect(Object.keys(combustionSentences).toSorted()).toEqual(Object.keys(combustionWeights).toSorted());
  });

  it('leaving comes first, and nobody is sent back to the switch (fire department FAQ)', () => {
    for (const code of ['carbon-monoxide-alarm', 'spillage', 'carbon-monoxide-high'] as const) {
      expect(combustionSentences[code].says).toMatch(/^Everyone outside now\./);
      expect(combustionSentences[code].says).toContain('Do not go back');
    }
  });

  it('nothing says that an appliance is safe', () => {
    for (const { says } of Object.values(combustionSentences)) {
      expect(says).not.toMatch(/\b(safe|clear to|all right|no danger|fine)\b/i);
    }
  });
});

describe('cases from the trade', () => {
  const quietHouse: CombustionFacts = {
    appliances: [],
    appliancesInBathZone: [],
    recordedBy: 'lead',
    sealedProof: 'nothing seen',
    houseDepressurisation: exactly(pascals(0.5)),
    attachedGarage: 'no',
    carbonMonoxideAlarm: 'fitted and tested',
    spillageSeen: 'no',
    carbonMonoxide: 0,
  };
  const codes = (changes: Partial<CombustionFacts>) =>
    combustionJudgement({ ...quietHouse, ...changes }, combustionLimits).map(({ code }) => code);

  it('even a lead’s "none" leaves the reminder that an estimate clears nothing', () => {
    expect(codes({})).toEqual(['estimate-clears-nothing']);
  });

  it('a customer’s "none" is still unknown', () => {
    expect(codes({ recordedBy: 'other' })).toEqual(
      expect.arrayContaining(['bath-zone-not-confirmed', 'appliances-unknown', 'none-not-confirmed']),
    );
  });

  it('a water heater in the bathroom closet stops the job however leaky the house (IRC G2406.2)', () => {
    expect(codes({ appliancesInBathZone: ['natural draft'] })[0]).toBe('appliance-in-bath-zone');
    expect(codes({ appliancesInBathZone: ['unvented'] })[0]).toBe('appliance-in-bath-zone');
    expect(codes({ appliancesInBathZone: 'unknown' })[0]).toBe('bath-zone-unknown');
  });

  it('a sealed heater in the bathroom counts once a lead has seen its plate', () => {
    expect(codes({ appliancesInBathZone: ['sealed'] })).toContain('bath-zone-unknown');
    expect(codes({ appliancesInBathZone: ['sealed'], sealedProof: 'rating plate seen' })).toEqual([
      'estimate-clears-nothing',
    ]);
    expect(
      codes({ appliancesInBathZone: ['sealed'], sealedProof: 'rating plate seen', recordedBy: 'other' }),
    ).toContain('bath-zone-unknown');
  });

  it('two pascals beside a natural-draft heater stop the job, at the high end of the estimate', () => {
    const house = (high: number) => ({ low: pascals(0.3), typical: pascals(1), high: pascals(high) });
    expect(codes({ appliances: ['natural draft'], houseDepressurisation: house(2) })).toContain('house-pressure');
    expect(codes({ appliances: ['natural draft'], houseDepressurisation: house(1.9) })).toEqual([
      'natural-draft',
      'estimate-clears-nothing',
    ]);
  });

  it('not knowing the appliances is judged as the worst of them', () => {
    expect(codes({ appliances: 'unknown', houseDepressurisation: exactly(pascals(2)) })).toContain('house-pressure');
    expect(codes({ appliances: 'unknown', houseDepressurisation: 'unknown' })).toContain('house-pressure-unknown');
  });

  it('an alarm that sounds comes before everything else, symptoms or not', () => {
    expect(codes({ carbonMonoxideAlarm: 'sounding', appliancesInBathZone: ['natural draft'] })[0]).toBe(
      'carbon-monoxide-alarm',
    );
  });

  it('nine parts per million are looked into, thirty-five empty the house', () => {
    expect(codes({ carbonMonoxide: 8.9 })).toEqual(['estimate-clears-nothing']);
    expect(codes({ carbonMonoxide: 9 })).toContain('carbon-monoxide-raised');
    expect(codes({ carbonMonoxide: 35 })[0]).toBe('carbon-monoxide-high');
  });

  it('an attached garage is a worry of its own past five pascals, or when nobody knows', () => {
    expect(codes({ attachedGarage: 'yes', houseDepressurisation: exactly(pascals(5)) })).toContain('garage-air');
    expect(codes({ attachedGarage: 'unknown', houseDepressurisation: 'unknown' })).toContain('garage-air');
    expect(codes({ attachedGarage: 'yes', houseDepressurisation: exactly(pascals(1)) })).not.toContain('garage-air');
  });
});
