import { expect, it } from 'vitest';
import { moistureFigures, recoveryLimits } from '#knowledge/moisture.ts';
import { siteHazardFigures, siteHazardSentences } from '#knowledge/site-hazards.ts';
import { fromSi, toSi } from '#quantity/unit-factors.ts';
import file from './figures/mold-hazards.json' with { type: 'json' };
import { expected, given, held, near, type RowFile, testEveryRow } from './moisture-rows.ts';

testEveryRow('mold and site hazards', file as unknown as RowFile, [
  [/^(epa-|cdc-|ashrae160)/, 'mold figures held as printed', held(moistureFigures.mold)],
  [/^(rrp-minor|asbestos|ladder|attic-fall)/, 'site hazard figures held as printed', held(siteHazardFigures)],
  [
    /^rrp-undercut-door/,
    'a strip off a painted door counts by the surface taken off',
    (row) => {
      const area = toSi(given(row, 'strip_in'), 'in', 'm') * toSi(given(row, 'door_in'), 'in', 'm');
      near(fromSi(area, 'in^2', 'm^2'), expected(row, 'in2'), { rel: 1e-9 });
      expect(siteHazardSentences['lead-area'].says).toContain(`${expected(row, 'in2')} square inches`);
    },
  ],
]);

it('the run time brings the air to the humidity that mold advice asks for', () => {
  expect(recoveryLimits.air * 100).toBe(moistureFigures.mold['humidity-most']?.value);
  expect(recoveryLimits.surface * 100).toBe(moistureFigures.mold['surface-humidity']?.value);
});

it('an enlarged painted ceiling opening is never waved through by its area', () => {
  // 40 CFR 745.83 leaves out demolition of painted surfaces; an 11 in square is under 6 sq ft all the same.
  expect(fromSi(toSi(11, 'in', 'm') ** 2, 'ft^2', 'm^2')).toBeLessThan(siteHazardFigures['lead-inside']?.value ?? 0);
  expect(siteHazardSentences['lead-ceiling-cut'].says).toContain('does not cover it');
});
