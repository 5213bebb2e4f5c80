import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { condensationDirections } from '#engine/condensation/condensation-directions.ts';
import { condensationStart, ductVerdict } from '#engine/condensation/condensation-start.ts';
import { airTemperature, ductCooling, wallTemperature } from '#engine/condensation/duct-cooling.ts';
import { ductProfile } from '#engine/condensation/duct-profile.ts';
import { type ExhaustDuct, exhaustAir, exhaustDewPoint } from '#engine/condensation/exhaust-duct.ts';
import { insulationToStayDry } from '#engine/condensation/insulation-to-stay-dry.ts';
import { atmosphericPressure } from '#engine/psychrometrics/atmospheric-pressure.ts';
import { celsius, cubicMetresPerSecond, metres, pascals, ratio, squareMetreKelvinsPerWatt } from '#quantity/units.ts';

const runs = { seed: 1, numRuns: 200 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A 4 in duct of 15 ft through a cold attic. */
const coldDuct: ExhaustDuct = {
  diameter: metres(0.1016),
  length: metres(4.572),
  insulation: squareMetreKelvinsPerWatt(0),
  outsideFilm: squareMetreKelvinsPerWatt(1 / 8.3),
  airflow: cubicMetresPerSecond(0.0378),
  exhaustTemperature: celsius(23),
  exhaustDampness: { held: 'relative humidity', relativeHumidity: ratio(0.7) },
  surroundings: celsius(-5),
  pressure: pascals(101_325),
};

const anyDuct: fc.Arbitrary<ExhaustDuct> = fc
  .record({
    diameter: between(0.075, 0.2),
    length: between(1, 12),
    insulation: between(0, 2),
    airflow: between(0.005, 0.08),
    exhaustTemperature: between(18, 28),
    humidity: between(0.4, 0.99),
    surroundings: between(-30, 15),
    altitude: between(0, 3000),
  })
  .map((drawn) => ({
    ...coldDuct,
    diameter: metres(drawn.diameter),
    length: metres(drawn.length),
    insulation: squareMetreKelvinsPerWatt(drawn.insulation),
    airflow: cubicMetresPerSecond(drawn.airflow),
    exhaustTemperature: celsius(drawn.exhaustTemperature),
    exhaustDampness: { held: 'relative humidity', relativeHumidity: ratio(drawn.humidity) },
    surroundings: celsius(drawn.surroundings),
    pressure: atmosphericPressure(metres(drawn.altitude)),
  }));

/** Metres from the fan to the first wet wall; farther than any duct when it stays dry. */
const reach = (duct: ExhaustDuct) => {
  const start = condensationStart(duct);
  return start.found ? start.distance : Number.POSITIVE_INFINITY;
};

describe('the laws of a sweating duct', () => {
  it('more insulation never moves condensation nearer', () => {
    fc.assert(
      fc.property(anyDuct, between(0, 3), (duct, extra) => {
        const wrapped = { ...duct, insulation: squareMetreKelvinsPerWatt(duct.insulation + extra) };
        expect(reach(wrapped)).toBeGreaterThanOrEqual(reach(duct) * (1 - 1e-9));
      }),
      runs,
    );
  });

  it('low flow is worse', () => {
    fc.assert(
      fc.property(anyDuct, between(0.2, 1), (duct, share) => {
        const slower = { ...duct, airflow: cubicMetresPerSecond(duct.airflow * share) };
        expect(reach(slower)).toBeLessThanOrEqual(reach(duct) * (1 + 1e-9));
      }),
      runs,
    );
  });

  it('a colder attic never moves condensation away, nor does damper exhaust', () => {
    fc.assert(
      fc.property(anyDuct, between(0, 20), between(0, 0.3), (duct, colder, damper) => {
        expect(reach({ ...duct, surroundings: celsius(duct.surroundings - colder) })).toBeLessThanOrEqual(
          reach(duct) * (1 + 1e-9),
        );
        const { exhaustDampness: dampness } = duct;
        if (dampness.held !== 'relative humidity') throw new Error('drawn by relative humidity');
        const relativeHumidity = ratio(Math.min(1, dampness.relativeHumidity + damper));
        const wetter = { ...duct, exhaustDampness: { held: 'relative humidity', relativeHumidity } as const };
        expect(reach(wetter)).toBeLessThanOrEqual(reach(duct) * (1 + 1e-9));
      }),
      runs,
    );
  });

  it('the wall lies between the air and the attic, and the air cools all the way', () => {
    fc.assert(
      fc.property(anyDuct, between(0, 12), between(0, 12), (duct, one, other) => {
        const [near, far] = one <= other ? [metres(one), metres(other)] : [metres(other), metres(one)];
        expect(wallTemperature(duct, near)).toBeLessThanOrEqual(airTemperature(duct, near));
        expect(wallTemperature(duct, near)).toBeGreaterThanOrEqual(duct.surroundings);
        expect(airTemperature(duct, far)).toBeLessThanOrEqual(airTemperature(duct, near));
      }),
      runs,
    );
  });

  it('the wall meets the dew point exactly where the water starts', () => {
    fc.assert(
      fc.property(anyDuct, (duct) => {
        const [start, dew] = [condensationStart(duct), exhaustDewPoint(duct)];
        if (!start.found || start.distance === 0 || !dew.found) return;
        expect(wallTemperature(duct, start.distance)).toBeCloseTo(dew.temperature, 6);
      }),
      runs,
    );
  });

  it('the least insulation is enough, and a hair less is not', () => {
    fc.assert(
      fc.property(anyDuct, (duct) => {
        const needed = insulationToStayDry(duct, squareMetreKelvinsPerWatt(10));
        if (!needed.found) return;
        const wrapped = (share: number) =>
          ductVerdict({ ...duct, insulation: squareMetreKelvinsPerWatt(needed.insulation * share) });
        expect(wrapped(1.001).wet).toBe(false);
        if (needed.insulation > 0) expect(wrapped(0.99).wet).toBe(true);
      }),
      runs,
    );
  });
});

describe('a run of several pieces', () => {
  it('cut anywhere, a duct of one width sweats where it did and needs the wrap it did', () => {
    fc.assert(
      fc.property(anyDuct, between(0.1, 0.9), (duct, share) => {
        const cut = [share, 1 - share].map((part) => ({ ...duct, length: metres(duct.length * part) }));
        const [whole, pieced] = [ductVerdict(duct), ductVerdict(duct, cut)];
        expect(pieced.wet).toBe(whole.wet);
        expect(pieced.exitTemperature).toBeCloseTo(whole.exitTemperature, 9);
        expect(pieced.coldestWall).toBeCloseTo(whole.coldestWall, 9);
        if (whole.wet && pieced.wet) expect(pieced.startsAt).toBeCloseTo(whole.startsAt, 6);
        const most = squareMetreKelvinsPerWatt(10);
        const [one, two] = [insulationToStayDry(duct, most), insulationToStayDry(duct, most, { pieces: cut })];
        expect(two.found).toBe(one.found);
        if (one.found && two.found) expect(two.insulation).toBeCloseTo(one.insulation, 4);
      }),
      runs,
    );
  });

  it('a wide piece sweats before a narrow one would: its air is slow and its wall colder', () => {
    const dry: ExhaustDuct = {
      ...coldDuct,
      insulation: squareMetreKelvinsPerWatt(0.5),
      length: metres(3),
    };
    const narrow = { diameter: metres(0.1016), length: metres(3) };
    const [alone, widened] = [
      ductVerdict(dry, [narrow]),
      ductVerdict(dry, [narrow, { diameter: metres(0.2032), length: metres(3) }]),
    ];
    expect(alone.wet).toBe(false);
    expect(widened.coldestWall).toBeLessThan(ductVerdict(dry, [narrow, narrow]).coldestWall);
  });
});

describe('the directions declared for each input', () => {
  type Held = keyof typeof condensationDirections;
  type Input = keyof (typeof condensationDirections)[Held];
  const ranges: Readonly<Record<Input, readonly [min: number, max: number]>> = {
    diameter: [0.075, 0.2],
    insulation: [0, 2],
    outsideFilm: [0.06, 0.2],
    airflow: [0.005, 0.08],
    exhaustTemperature: [18, 28],
    dampness: [0.3, 0.99],
    surroundings: [-30, 35],
    length: [1, 12],
  };
  const withDampness = (duct: ExhaustDuct, held: Held, relativeHumidity: number): ExhaustDuct => {
    const share: ExhaustDuct = {
      ...duct,
      exhaustDampness: { held: 'relative humidity', relativeHumidity: ratio(relativeHumidity) },
    };
    if (held === 'relative humidity') return share;
    return { ...share, exhaustDampness: { held: 'moisture', humidityRatio: exhaustAir(share).humidityRatio } };
  };

  for (const held of ['relative humidity', 'moisture'] as const) {
    for (const [input, direction] of Object.entries(condensationDirections[held]) as [Input, string][]) {
      it(`with the ${held} held, more ${input} moves the start ${direction}`, () => {
        const [min, max] = ranges[input];
        fc.assert(
          fc.property(anyDuct, between(0.3, 0.99), between(min, max), between(min, max), (any, share, one, other) => {
            const duct = withDampness(any, held, share);
            const at = (value: number) =>
              reach(
                input === 'dampness' ? withDampness(any, held, value) : ({ ...duct, [input]: value } as ExhaustDuct),
              );
            const [less, more] = [at(Math.min(one, other)), at(Math.max(one, other))];
            if (direction !== 'down') expect(more).toBeGreaterThanOrEqual(less * (1 - 1e-9));
            if (direction !== 'up') expect(more).toBeLessThanOrEqual(less * (1 + 1e-9));
          }),
          runs,
        );
      });
    }
  }
});

describe('which of the two is held when the exhaust temperature is in doubt', () => {
  const wrapped: ExhaustDuct = { ...coldDuct, insulation: squareMetreKelvinsPerWatt(0.5) };
  const warmer = celsius(wrapped.exhaustTemperature + 3);

  it('with the relative humidity held, warmer exhaust wets the duct sooner', () => {
    expect(reach({ ...wrapped, exhaustTemperature: warmer })).toBeLessThan(reach(wrapped));
  });

  it('with the moisture held, warmer exhaust wets it later', () => {
    const { humidityRatio } = exhaustAir(wrapped);
    const held: ExhaustDuct = { ...wrapped, exhaustDampness: { held: 'moisture', humidityRatio } };
    expect(reach(held)).toBeCloseTo(reach(wrapped), 9);
    expect(reach({ ...held, exhaustTemperature: warmer })).toBeGreaterThan(reach(held));
  });
});

describe('the verdict on one duct', () => {
  it('says where the water starts, and freezes in a hard frost', () => {
    const verdict = ductVerdict({ ...coldDuct, surroundings: celsius(-30), length: metres(10) });
    expect(verdict).toMatchObject({ wet: true, freezes: true });
    expect(verdict.coldestWall).toBeLessThanOrEqual(0);
  });

  it('wet but above freezing is told apart', () => {
    expect(ductVerdict({ ...coldDuct, surroundings: celsius(5), length: metres(10) })).toMatchObject({
      wet: true,
      freezes: false,
    });
  });

  it('a short duct that would sweat later stays dry, and says where it would', () => {
    const damp: ExhaustDuct = {
      ...coldDuct,
      exhaustDampness: { held: 'relative humidity', relativeHumidity: ratio(0.5) },
    };
    const verdict = ductVerdict({ ...damp, length: metres(1) });
    if (verdict.wet) throw new Error('wet');
    expect(verdict.wouldStartAt).toBeGreaterThan(1);
    expect(ductVerdict({ ...damp, length: metres((verdict.wouldStartAt ?? 0) + 0.1) }).wet).toBe(true);
  });

  it('a duct in a hot attic stays dry at any length, and needs no wrap for it', () => {
    const hot = { ...coldDuct, surroundings: celsius(45) };
    expect(ductVerdict(hot)).toMatchObject({ wet: false, wouldStartAt: null });
    expect(insulationToStayDry(hot, squareMetreKelvinsPerWatt(2))).toEqual({ found: true, insulation: 0 });
  });

  it('more wrap than anybody can fit is an answer', () => {
    const soaked: ExhaustDuct = {
      ...coldDuct,
      exhaustDampness: { held: 'relative humidity', relativeHumidity: ratio(0.97) },
    };
    expect(insulationToStayDry(soaked, squareMetreKelvinsPerWatt(2))).toEqual({
      found: false,
      why: 'more than can be fitted',
    });
  });

  it('thin mountain air cools faster, so the water starts nearer the fan', () => {
    const high = { ...coldDuct, pressure: atmosphericPressure(metres(2500)) };
    expect(ductCooling(high).perMetre).toBeGreaterThan(ductCooling(coldDuct).perMetre);
    expect(reach(high)).toBeLessThanOrEqual(reach(coldDuct));
  });

  it('a fan that moves nothing leaves the duct wet from its first inch in a cold attic', () => {
    const still = { ...coldDuct, airflow: cubicMetresPerSecond(0) };
    expect(ductVerdict(still)).toMatchObject({ wet: true, startsAt: 0, exitTemperature: -5, coldestWall: -5 });
    expect(insulationToStayDry(still, squareMetreKelvinsPerWatt(3)).found).toBe(false);
  });

  it('the profile runs from the fan to the end in even steps', () => {
    const stations = ductProfile(coldDuct, 4);
    expect(stations.map(({ distance }) => distance / coldDuct.length)).toEqual([0, 0.25, 0.5, 0.75, 1]);
    expect(stations[4]?.air).toBeCloseTo(ductVerdict(coldDuct).exitTemperature, 9);
    expect(stations[4]?.wall).toBeCloseTo(ductVerdict(coldDuct).coldestWall, 9);
  });
});
