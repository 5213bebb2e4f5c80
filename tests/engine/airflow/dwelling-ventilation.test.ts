import { describe, expect, it } from 'vitest';
import { dwellingVentilationByTable, intermittentFactor } from '#engine/airflow/dwelling-ventilation.ts';
import { cubicMetresPerSecond, ratio, squareMetres } from '#quantity/units.ts';

const table = {
  areaUpTo: [squareMetres(100)],
  bedroomsUpTo: [1],
  airflow: [
    [cubicMetresPerSecond(1), cubicMetresPerSecond(2)],
    [cubicMetresPerSecond(3), cubicMetresPerSecond(4)],
  ],
};
const look = (area: number, bedrooms: number) =>
  dwellingVentilationByTable({ dwelling: { floorArea: squareMetres(area), bedrooms }, table });

describe('the whole-house table', () => {
  it('counts a value at a limit to the lower bin', () => {
    expect([look(100, 1), look(100, 2), look(100.1, 1), look(9999, 99)]).toEqual([1, 2, 3, 4]);
  });
});

describe('running part of the time', () => {
  const factors = [
    { runShare: ratio(1), factor: ratio(1) },
    { runShare: ratio(0.5), factor: ratio(2) },
    { runShare: ratio(0.25), factor: ratio(4) },
  ];
  const at = (runShare: number) => intermittentFactor({ runShare: ratio(runShare), table: factors });

  it('interpolates between columns', () => {
    expect(at(0.375)).toEqual({ found: true, factor: 3 });
    expect(at(0.75)).toEqual({ found: true, factor: 1.5 });
  });

  it('never extrapolates', () => {
    expect(at(0.25)).toEqual({ found: true, factor: 4 });
    expect(at(0.24)).toEqual({ found: false, why: 'runs too little' });
    expect(at(1.1)).toEqual({ found: false, why: 'no such share' });
  });
});
