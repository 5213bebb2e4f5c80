import { describe, expect, it } from 'vitest';
import { dilutionTime } from '#engine/moisture/dilution.ts';
import { runTime } from '#engine/moisture/run-time.ts';
import { roundedUp, runTimeAdvice } from '#engine/moisture/run-time-advice.ts';
import { shortening, squeegeed } from '#engine/moisture/shortening.ts';
import { roomTrajectory } from '#engine/moisture/trajectory.ts';
import { cubicMetres, cubicMetresPerSecond, ratio, seconds } from '#quantity/units.ts';
import { lateness, limits, smallBathroom } from './bathrooms.ts';

const minutes = (count: number) => seconds(60 * count);
const steps = { step: minutes(5), least: minutes(15), most: minutes(60) };
const minutesIn = (count: number) => ({ found: true, after: minutes(count) }) as const;

describe('what to set the timer to', () => {
  it('rounds up to five minutes, from fifteen to an hour', () => {
    expect(runTimeAdvice(minutesIn(3), steps)).toEqual({ kind: 'run', for: minutes(15) });
    expect(runTimeAdvice(minutesIn(22.7), steps)).toEqual({ kind: 'run', for: minutes(25) });
    expect(runTimeAdvice(minutesIn(25), steps)).toEqual({ kind: 'run', for: minutes(25) });
    expect(runTimeAdvice(minutesIn(60), steps)).toEqual({ kind: 'run', for: minutes(60) });
  });

  it('past an hour asks for more air instead of hiding the failure behind 60', () => {
    expect(runTimeAdvice(minutesIn(60.1), steps)).toEqual({ kind: 'more air' });
    expect(runTimeAdvice({ found: false, why: 'longer than followed' }, steps)).toEqual({ kind: 'more air' });
  });

  it('says why there is none', () => {
    expect(runTimeAdvice({ found: false, why: 'no air moves' }, steps)).toEqual({ kind: 'never', why: 'no air moves' });
    expect(runTimeAdvice({ found: false, why: 'house air too humid' }, steps)).toEqual({
      kind: 'never',
      why: 'house air too humid',
    });
  });

  it('never tells anybody "zero minutes"', () => {
    expect(roundedUp(seconds(0), steps.step)).toBe(minutes(5));
    expect(roundedUp(minutes(5.1), steps.step)).toBe(minutes(10));
  });
});

describe('what would shorten it', () => {
  const now = { ...smallBathroom, fanDuringShower: false };
  const stronger = (times: number) => cubicMetresPerSecond(now.deliveredAirflow * times);
  const ranked = shortening(runTime(now, limits).fanMayStop, limits, [
    { name: 'nothing', bathroom: now },
    { name: 'fan on in the shower', bathroom: { ...now, fanDuringShower: true } },
    { name: 'squeegee', bathroom: squeegeed(now, ratio(0.25)) },
    { name: 'half as much air again', bathroom: { ...now, deliveredAirflow: stronger(1.5) } },
    { name: 'fan unplugged', bathroom: { ...now, deliveredAirflow: stronger(0) } },
  ]);

  it('puts the shortest first and no time at all last', () => {
    const times = ranked.map(({ fanMayStop }) => lateness(fanMayStop));
    expect(times).toEqual(times.toSorted((a, b) => a - b));
    expect(ranked.at(-1)?.name).toBe('fan unplugged');
    expect(ranked.at(-1)?.sooner).toBeNull();
  });

  it('says by how much, and nothing for doing nothing', () => {
    const sooner = Object.fromEntries(ranked.map((each) => [each.name, each.sooner]));
    expect(sooner['nothing']).toBe(0);
    expect(sooner['squeegee']).toBeGreaterThan(0);
    expect(sooner['half as much air again']).toBeGreaterThan(0);
    expect(sooner['fan on in the shower']).toBeGreaterThan(0);
  });

  it('a squeegee takes off film and leaves the rest alone', () => {
    expect(squeegeed(now, ratio(0.25))).toEqual({ ...now, splashFilm: now.splashFilm / 4 });
  });
});

describe('the picture of a run', () => {
  const moments = roomTrajectory(smallBathroom, { every: seconds(60), until: minutes(30) });

  it('starts with the shower, has the moment the water stops, and ends where asked', () => {
    expect(moments[0]?.at).toBe(-smallBathroom.showerDuration);
    expect(moments.filter(({ at }) => at === 0)).toHaveLength(1);
    expect(moments.at(-1)?.at).toBeGreaterThanOrEqual(minutes(30));
    expect(moments.length).toBeLessThan(45);
  });

  it('shows the room that the times are read from', () => {
    const { endOfShower } = runTime(smallBathroom, limits);
    const stop = moments.find(({ at }) => at === 0);
    expect(stop?.relativeHumidity).toBeCloseTo(endOfShower.relativeHumidity, 9);
    expect(stop?.fog).toBeCloseTo(endOfShower.fog, 9);
    expect(stop?.mirrorFilm).toBeCloseTo(endOfShower.mirrorFilm, 9);
    expect(stop?.splashFilm).toBe(smallBathroom.splashFilm);
  });

  it('the films only shrink once the air has cleared', () => {
    const late = moments.filter(({ at }) => at > 300);
    for (const [index, moment] of late.entries()) {
      const next = late[index + 1];
      if (next === undefined) continue;
      expect(next.splashFilm).toBeLessThanOrEqual(moment.splashFilm);
      expect(next.mirrorFilm).toBeLessThanOrEqual(moment.mirrorFilm);
    }
  });
});

describe('flushing a room with nothing wet in it', () => {
  const room = { roomVolume: cubicMetres(10), airflow: cubicMetresPerSecond(0.05), slowness: ratio(1) };

  it('takes no time when there is nothing to do', () => {
    const levels = { start: ratio(0.3), target: ratio(0.4), supply: ratio(0.1) };
    expect(dilutionTime(room, levels)).toEqual({ found: true, after: 0 });
  });

  it('has no answer without air, or with air as bad as the target', () => {
    const levels = { start: ratio(0.9), target: ratio(0.4), supply: ratio(0.1) };
    expect(dilutionTime({ ...room, airflow: cubicMetresPerSecond(0) }, levels)).toMatchObject({ why: 'no air moves' });
    expect(dilutionTime(room, { ...levels, supply: ratio(0.4) })).toMatchObject({ why: 'supply air too humid' });
  });

  it('takes three times as long when the room is three times as slow', () => {
    const levels = { start: ratio(0.9), target: ratio(0.4), supply: ratio(0.1) };
    const [one, three] = [dilutionTime(room, levels), dilutionTime({ ...room, slowness: ratio(3) }, levels)];
    if (!one.found || !three.found) throw new Error('no time');
    expect(three.after).toBeCloseTo(3 * one.after, 9);
  });
});
