import { describe, expect, it } from 'vitest';
import { breakerForLoad, wireAllowsBreaker } from '#engine/electrical/circuit-load.ts';
import { controlCarries, controlHolds } from '#engine/electrical/control-load.ts';
import { currentDrawn } from '#engine/electrical/current.ts';
import { workedOutFacts } from '#engine/electrical/worked-out-facts.ts';
import { observations } from '#knowledge/circuit-rules.ts';
import {
  breakerCeilings,
  fixedShareOfSharedCircuit,
  motorFullLoad,
  motorShareOfSwitch,
  standardBreakers,
} from '#knowledge/electrical.ts';
import { amperes, ratio, volts, watts } from '#quantity/units.ts';

const limits = { fixedShareOfSharedCircuit, motorShareOfSwitch, breakerCeilings };

describe('circuits', () => {
  it('draws more amps for the same watts when the power factor is low', () => {
    const amps = (powerFactor: number) =>
      currentDrawn({ power: watts(60), voltage: volts(120), powerFactor: ratio(powerFactor) });
    expect(amps(1)).toBe(0.5);
    expect(amps(0.5)).toBe(1);
  });

  it('picks the smallest breaker that carries the load, and none past the list', () => {
    expect(breakerForLoad(amperes(15), standardBreakers)).toEqual({ found: true, breaker: 15 });
    expect(breakerForLoad(amperes(15.01), standardBreakers)).toEqual({ found: true, breaker: 20 });
    expect(breakerForLoad(amperes(31), standardBreakers)).toEqual({ found: false, why: 'more-than-any-listed' });
  });

  it('stops 14 AWG on a 20 A breaker and any size with no listed ceiling (NEC 240.4(D))', () => {
    expect(wireAllowsBreaker({ awg: 14, breaker: amperes(15) }, breakerCeilings)).toBe(true);
    expect(wireAllowsBreaker({ awg: 14, breaker: amperes(20) }, breakerCeilings)).toBe(false);
    expect(wireAllowsBreaker({ awg: 12, breaker: amperes(20) }, breakerCeilings)).toBe(true);
    expect(wireAllowsBreaker({ awg: 18, breaker: amperes(15) }, breakerCeilings)).toBe(false);
  });
});

describe('controls', () => {
  it('lets a motor take four fifths of a switch and no more (NEC 404.14(A))', () => {
    const motor = (current: number) =>
      controlCarries({ current: amperes(current), rating: amperes(15), share: motorShareOfSwitch });
    expect(motor(12)).toEqual({ carries: true, most: 12 });
    expect(motor(12.1).carries).toBe(false);
  });

  it('drops a fan that draws less than the least load of the control', () => {
    expect(controlHolds({ lowest: watts(25), minimum: watts(25) })).toBe(true);
    expect(controlHolds({ lowest: watts(4), minimum: watts(25) })).toBe(false);
  });

  it('knows the full-load current of a motor marked in horsepower only (NEC table 430.248, from memory)', () => {
    expect(motorFullLoad['hp-1-4']).toMatchObject({ current: 5.8, verified: false });
  });
});

describe('answers worked out from numbers', () => {
  it('are given only when all their numbers are', () => {
    expect(workedOutFacts({}, limits)).toEqual({});
    expect(workedOutFacts({ breaker: amperes(20), controlRating: amperes(5), lowestLoad: watts(4) }, limits)).toEqual(
      {},
    );
  });

  it('put a 1500 W heater over half of a shared 20 A circuit and over a 5 A timer', () => {
    const heater = amperes(12.5);
    expect(
      workedOutFacts(
        {
          breaker: amperes(20),
          fixedLoad: heater,
          thinnestWire: 12,
          controlRating: amperes(5),
          controlledLoad: heater,
        },
        limits,
      ),
    ).toEqual({
      'fixed-load-share': 'over-half',
      'wire-and-breaker': 'wire-allows-breaker',
      'control-rating': 'too-small',
    });
  });

  it('pass a small fan on its own and fail it under a large minimum', () => {
    expect(
      workedOutFacts(
        {
          breaker: amperes(20),
          fixedLoad: amperes(10),
          thinnestWire: 14,
          controlRating: amperes(15),
          controlledLoad: amperes(0.25),
          controlMinimum: watts(15),
          lowestLoad: watts(6),
        },
        limits,
      ),
    ).toEqual({
      'fixed-load-share': 'within-half',
      'wire-and-breaker': 'wire-too-thin',
      'control-rating': 'enough',
      'control-minimum-load': 'not-met',
    });
  });

  it('use the words the rules read', () => {
    const words = (id: keyof typeof observations) => observations[id].options.map((option) => option.id);
    expect(words('fixed-load-share')).toEqual(['within-half', 'over-half']);
    expect(words('wire-and-breaker')).toEqual(['wire-allows-breaker', 'wire-too-thin']);
    expect(words('control-rating')).toEqual(['enough', 'too-small']);
    expect(words('control-minimum-load')).toEqual(['met', 'not-met']);
  });
});
