import { describe, expect, it } from 'vitest';
import { listedAirflowOutcome } from '#engine/airflow/listed-airflow.ts';
import { cubicMetresPerSecond, pascals } from '#quantity/units.ts';

const listed = (...points: readonly (readonly [number, number])[]) =>
  listedAirflowOutcome({
    points: points.map(([airflow, pressure]) => ({
      airflow: cubicMetresPerSecond(airflow),
      staticPressure: pascals(pressure),
    })),
    needed: cubicMetresPerSecond(0.024),
    atPressure: pascals(62.3),
  });

describe('the airflow a listing shows at the pressure the code names', () => {
  it('is proved by a point there or at more pressure', () => {
    expect(listed([0.03, 25], [0.025, 62.3])).toBe('meets');
    expect(listed([0.025, 80])).toBe('meets');
  });

  it('is disproved by a point there, or already short at less pressure', () => {
    expect(listed([0.03, 25], [0.02, 62.3])).toBe('falls short');
    expect(listed([0.02, 25])).toBe('falls short');
  });

  it('is not known from a carton number at less pressure, however large', () => {
    expect(listed([0.06, 25])).toBe('not listed there');
    expect(listed()).toBe('not listed there');
  });
});
