import { within } from '#quantity/meets.ts';
import type { Amperes, Ratio, Watts } from '#quantity/units.ts';
import { mostCurrent, wireAllowsBreaker } from './circuit-load.ts';
import { controlCarries, controlHolds } from './control-load.ts';
import type { Gauge } from './gauge.ts';

/** The numbers behind the answers nobody can give by looking. What is not known is left out, and its answer stays open. */
export interface CircuitNumbers {
  readonly breaker?: Amperes;
  readonly thinnestWire?: Gauge;
  /** Fixed equipment on a circuit that also feeds lamps or plugs, all of it together. */
  readonly fixedLoad?: Amperes;
  readonly controlRating?: Amperes;
  /** What the control is to switch. */
  readonly controlledLoad?: Amperes;
  readonly controlMinimum?: Watts;
  /** Watts of the switched load at its lowest speed. */
  readonly lowestLoad?: Watts;
}

export interface CircuitLimits {
  readonly fixedShareOfSharedCircuit: Ratio;
  readonly motorShareOfSwitch: Ratio;
  readonly breakerCeilings: ReadonlyMap<Gauge, Amperes>;
}

/** Answers in the words the rules read. */
export interface WorkedOutFacts {
  readonly 'fixed-load-share'?: 'within-half' | 'over-half';
  readonly 'wire-and-breaker'?: 'wire-allows-breaker' | 'wire-too-thin';
  readonly 'control-rating'?: 'enough' | 'too-small';
  readonly 'control-minimum-load'?: 'met' | 'not-met';
}

/**
 * The answers that follow from numbers: whether fixed equipment leaves room on a shared circuit, whether the wire suits its
 * breaker, and whether the control suits its load. An answer is given only when all its numbers are; a wire too thin for
 * any breaker needs none.
 *
 * @source NFPA 70 (National Electrical Code), 210.23(A)(2), 240.4(D) and 404.14
 */
export function workedOutFacts(numbers: CircuitNumbers, limits: CircuitLimits): WorkedOutFacts {
  const { breaker, thinnestWire, fixedLoad, controlRating, controlledLoad, controlMinimum, lowestLoad } = numbers;
  return {
    ...(breaker !== undefined &&
      fixedLoad !== undefined && {
        'fixed-load-share': within(fixedLoad, mostCurrent(breaker, limits.fixedShareOfSharedCircuit))
          ? 'within-half'
          : 'over-half',
      }),
    ...(thinnestWire !== undefined &&
      (breaker !== undefined || !limits.breakerCeilings.has(thinnestWire)) && {
        'wire-and-breaker':
          breaker !== undefined && wireAllowsBreaker({ awg: thinnestWire, breaker }, limits.breakerCeilings)
            ? 'wire-allows-breaker'
            : 'wire-too-thin',
      }),
    ...(controlRating !== undefined &&
      controlledLoad !== undefined && {
        'control-rating': controlCarries({
          current: controlledLoad,
          rating: controlRating,
          share: limits.motorShareOfSwitch,
        }).carries
          ? 'enough'
          : 'too-small',
      }),
    ...(controlMinimum !== undefined &&
      lowestLoad !== undefined && {
        'control-minimum-load': controlHolds({ lowest: lowestLoad, minimum: controlMinimum }) ? 'met' : 'not-met',
      }),
  };
}
