import type { BoundedParameter, Direction } from '#engine/uncertainty/outer-bound.ts';
import type { UnitSystem } from '#interview/question.ts';
import { type Estimate, isExact } from '#quantity/estimate.ts';

/** Something not known exactly, with the way it moves the airflow and what a person would measure to know it. */
interface Unknown {
  readonly estimate: Estimate;
  /** Which way the airflow goes as this grows. */
  readonly direction: Direction;
  /** What to measure to know it; left out where no measurement on site would tell. */
  measure?(units: UnitSystem): string;
  /** Unknowns under one pair of hands move together. */
  readonly driver?: string;
}

/** The unknowns of one answer, gathered while it is put together. */
export interface Parameters {
  /** Enters an unknown and gives back how to read its value. */
  enter(unknown: Unknown): (values: Float64Array) => number;
  readonly bounded: readonly BoundedParameter[];
  readonly drivers: readonly number[];
  readonly measures: readonly Unknown['measure'][];
}

export function parameters(): Parameters {
  const bounded: BoundedParameter[] = [];
  const drivers: number[] = [];
  const measures: Unknown['measure'][] = [];
  const known = new Map<string, number>();
  return {
    bounded,
    drivers,
    measures,
    enter({ estimate, direction, measure, driver }) {
      if (isExact(estimate)) return () => estimate.typical;
      const index = bounded.length;
      bounded.push({ ...estimate, direction });
      measures.push(measure);
      drivers.push(
        driver === undefined ? 0 : (known.get(driver) ?? known.set(driver, known.size + 1).get(driver) ?? 0),
      );
      return (values) => values[index] as number;
    },
  };
}
