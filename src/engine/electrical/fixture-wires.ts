import type { BoxFillRules, Conductors } from './box-contents.ts';
import type { Gauge } from './gauge.ts';

interface FixtureWireLine {
  readonly what: 'fixture-wire' | 'fixture-wire-left-out';
  readonly awg: Gauge;
  readonly count: number;
}

/**
 * The leads of the light or fan, parted into those that count and those that may be left out.
 *
 * left out = the first few thin leads, under a domed canopy only; everything else counts one each
 *
 * The thinnest leads are left out first, so that the sum errs on the full side. No `canopy`: nothing is left out.
 *
 * @source NFPA 70 (National Electrical Code), 314.16(B)(1) exception
 */
export function fixtureWireLines(
  conductors: readonly Conductors[],
  canopy: BoxFillRules['canopy'] | undefined,
): FixtureWireLine[] {
  let spare = canopy?.upTo ?? 0;
  return conductors
    .filter(({ kind }) => kind === 'fixture-wire')
    .toSorted((a, b) => b.awg - a.awg)
    .flatMap(({ awg, count }) => {
      const leftOut = canopy !== undefined && awg > canopy.thinnerThan ? Math.min(count, spare) : 0;
      spare -= leftOut;
      return [
        { what: 'fixture-wire', awg, count: count - leftOut } as const,
        { what: 'fixture-wire-left-out', awg, count: leftOut } as const,
      ];
    });
}
