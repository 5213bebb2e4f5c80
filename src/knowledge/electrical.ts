import { z } from 'zod';
import { amperes, ratio, volts } from '#quantity/units.ts';
import limitsFile from '../../knowledge/electrical/circuit-limits.json' with { type: 'json' };
import motorsFile from '../../knowledge/electrical/motor-full-load.json' with { type: 'json' };
import { checked } from './checked.ts';
import { citationFields } from './sources.ts';

const limit = <const Unit extends string>(unit: Unit) =>
  z.strictObject({
    says: z.string(),
    value: z.number().positive(),
    unit: z.literal(unit),
    ...citationFields,
  });

/** Shares, factors and ratings that circuit sums are made with, each with its source. */
export const circuitLimits = checked(
  'knowledge/electrical/circuit-limits.json',
  z.strictObject({
    'fixed-share-of-shared-circuit': limit('1'),
    'motor-share-of-switch': limit('1'),
    'continuous-share': limit('1'),
    'continuous-factor': limit('1'),
    'fixed-heat-factor': limit('1'),
    'breaker-ceiling-14': limit('A'),
    'breaker-ceiling-12': limit('A'),
    'breaker-ceiling-10': limit('A'),
    'standard-breaker-15': limit('A'),
    'standard-breaker-20': limit('A'),
    'standard-breaker-25': limit('A'),
    'standard-breaker-30': limit('A'),
    'dead-reading': limit('V'),
    'nominal-voltage': limit('V'),
    'small-motor-power-factor': limit('1'),
  }),
  limitsFile,
);
export type CircuitLimitId = keyof typeof circuitLimits;

/** The most a fixed load may take of a circuit that also feeds lamps or plugs. */
export const fixedShareOfSharedCircuit = ratio(circuitLimits['fixed-share-of-shared-circuit'].value);
/** The most a motor may take of a general-use switch. */
export const motorShareOfSwitch = ratio(circuitLimits['motor-share-of-switch'].value);
/** The most a load that stays on for hours may take of its breaker. */
export const continuousShare = ratio(circuitLimits['continuous-share'].value);
/** What a load that stays on for hours counts as. */
export const continuousFactor = ratio(circuitLimits['continuous-factor'].value);
/** What fixed electric heat counts as. */
export const fixedHeatFactor = ratio(circuitLimits['fixed-heat-factor'].value);
/** The largest breaker ahead of copper wire of each size. */
export const breakerCeilings = new Map([
  [14, amperes(circuitLimits['breaker-ceiling-14'].value)],
  [12, amperes(circuitLimits['breaker-ceiling-12'].value)],
  [10, amperes(circuitLimits['breaker-ceiling-10'].value)],
] as const);
/** Ratings that breakers are made in, as far as a bathroom needs them. */
export const standardBreakers = [
  amperes(circuitLimits['standard-breaker-15'].value),
  amperes(circuitLimits['standard-breaker-20'].value),
  amperes(circuitLimits['standard-breaker-25'].value),
  amperes(circuitLimits['standard-breaker-30'].value),
];
/** What a circuit for lamps and fans is counted at. */
export const nominalVoltage = volts(circuitLimits['nominal-voltage'].value);
/** The least power factor to expect of a small fan motor. */
export const smallMotorPowerFactor = ratio(circuitLimits['small-motor-power-factor'].value);

/** Full-load current of small single-phase motors that are marked in horsepower only. */
export const motorFullLoad = checked(
  'knowledge/electrical/motor-full-load.json',
  z.record(
    z.string(),
    z.strictObject({
      horsepower: z.string(),
      voltage: z.strictObject({ value: z.number(), unit: z.literal('V') }).transform(({ value }) => volts(value)),
      current: z.strictObject({ value: z.number(), unit: z.literal('A') }).transform(({ value }) => amperes(value)),
      ...citationFields,
    }),
  ),
  motorsFile,
);
