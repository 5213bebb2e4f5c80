import { describe, expect, it } from 'vitest';
import { understood } from '#diagnosis/answers.ts';
import { callbackDangers } from '#knowledge/callback-scale.ts';
import { callbackKnowledge } from '#knowledge/causes.ts';
import { chanceOf, diagnosed, reasoning } from './reasoning-at-hand.ts';

describe('a danger comes before any ranking', () => {
  it('an alarm sends everyone outside, in one sentence', () => {
    const { outcome, dangers } = diagnosed({ seen: ['fog', 'spill'] });
    expect(outcome).toBe('stopped');
    expect(dangers).toHaveLength(1);
    expect(dangers[0]?.says).toMatch(/^Everyone outside now; call the fire service from outside/);
    expect(dangers[0]?.says).toMatch(/do not go back to turn the fan off/);
  });

  it('the finding stops by itself, whichever cause ranks first', () => {
    for (const id of [
      'slow',
      'cut-hot',
      'drip-use',
      'radiation',
      'wet-wiring',
      'hum-noturn',
      'ground-as-neutral',
      'trips',
    ]) {
      const { outcome, dangers, ranking } = diagnosed({ seen: ['rattle', 'lint', id] });
      expect(outcome, id).toBe('stopped');
      expect(dangers[0]?.findings, id).toEqual([id]);
      expect(ranking.length, id).toBeGreaterThan(0);
    }
  });

  it('the gravest is said first', () => {
    const { dangers } = diagnosed({ seen: ['breaker', 'smell', 'spill'] });
    expect(dangers.map(({ danger }) => danger)).toEqual(['carbon-monoxide', 'burning', 'tripping']);
    expect(Object.keys(callbackDangers).slice(0, 2)).toEqual(['carbon-monoxide', 'burning']);
  });

  it('no neutral in an old switch box stops nobody; a neutral on bare ground does', () => {
    expect(diagnosed({ seen: ['no-neutral'] }).dangers).toEqual([]);
    expect(diagnosed({ seen: ['ground-as-neutral'] }).dangers).toHaveLength(1);
  });

  it('a danger said both ways still stops', () => {
    const { dangers, contradictions } = diagnosed({ seen: ['smell'], notSeen: ['smell'] });
    expect(dangers).toHaveLength(1);
    expect(contradictions).toEqual([['smell']]);
  });
});

describe('a cause that can hurt is ruled out first', () => {
  it('a door that pulls shut beside a draft-hood heater may be spillage, though nobody saw fumes', () => {
    const { dangers, ruleOutFirst } = diagnosed({ seen: ['door-slam'], context: ['combustion'] });
    expect(dangers).toEqual([]);
    expect(ruleOutFirst.map(({ cause }) => cause)).toContain('spillage');
  });

  it('not where it is unlikely enough', () => {
    expect(diagnosed({ seen: ['rattle', 'rattle-hand'] }).ruleOutFirst).toEqual([]);
  });

  it('life safety and "not ours to alter" are two things', () => {
    const { radclosed, shared, splice } = callbackKnowledge.causes;
    expect([radclosed.lifeSafety, shared.lifeSafety]).toEqual([undefined, undefined]);
    expect(radclosed.refer).toMatch(/not ours to alter/);
    expect(shared.refer).toMatch(/not ours to alter/);
    expect(splice.lifeSafety).toBe('heating-connection');
    expect(splice.refer).toBeUndefined();
  });
});

describe('the word told is no surer than the signs', () => {
  const top = (answers: Parameters<typeof diagnosed>[0]) => {
    const [first] = diagnosed(answers).ranking;
    return first && { cause: first.cause, band: first.band, told: first.told };
  };

  it('one sign alone is likely at most, whatever its figure', () => {
    expect(top({ seen: ['hum-noturn'] })).toEqual({ cause: 'seized', band: 'very-likely', told: 'likely' });
  });

  it('signs of two kinds may be called very likely', () => {
    expect(top({ seen: ['grind', 'noise-grew'] })).toMatchObject({ band: 'very-likely', told: 'very-likely' });
  });

  it('a defect somebody saw needs no second sign', () => {
    const known = callbackKnowledge.findings;
    const seen = (Object.keys(known) as (keyof typeof known)[]).filter((id) => known[id].defect !== undefined);
    const held = seen.flatMap((id) => {
      const first = diagnosed({ seen: [id] }).ranking[0];
      return first?.cause === known[id].defect && first?.band !== first?.told ? [id] : [];
    });
    expect(seen.length).toBeGreaterThan(5);
    expect(held).toEqual([]);
  });

  it('is never surer than the band', () => {
    const bands = ['very-likely', 'likely', 'possible', 'unlikely'];
    for (const answers of [{}, { seen: ['fog'] }, { seen: ['rattle', 'rattle-hand'] }, { notSeen: ['weak'] }]) {
      for (const { band, told } of diagnosed(answers).ranking)
        expect(bands.indexOf(told)).toBeGreaterThanOrEqual(bands.indexOf(band));
    }
  });
});

describe('bands instead of percentages', () => {
  it('a fogged mirror alone is not enough to tell', () => {
    expect(diagnosed({ seen: ['fog'] }).outcome).toBe('not enough to tell');
    expect(diagnosed({}).outcome).toBe('not enough to tell');
  });

  it('one telling thing more, and a cause leads', () => {
    const { outcome, ranking } = diagnosed({ seen: ['fog', 'run-short'], notSeen: ['weak'] });
    expect(outcome).not.toBe('not enough to tell');
    expect(ranking[0]).toMatchObject({ cause: 'short-run' });
  });

  it('each cause says which band it is in, by the thresholds stated', () => {
    const from = callbackKnowledge.scale.bands;
    for (const { band, chance } of diagnosed({ seen: ['drip-cold', 'bare'], context: ['cold'] }).ranking) {
      expect(chance).toBeGreaterThanOrEqual(from[band].from);
    }
  });

  it('each rise and fall is named, with how much in words', () => {
    const { ranking } = diagnosed({ seen: ['flow-low', 'sp-low'], notSeen: ['lint'], context: ['old-unit'] });
    const dirty = ranking.find(({ cause }) => cause === 'dirty');
    expect(dirty?.raised).toContainEqual({ id: 'sp-low', kind: 'seen', strength: expect.any(String) });
    expect(dirty?.raised).toContainEqual({ id: 'old-unit', kind: 'context', strength: 'clearly' });
    expect(dirty?.lowered).toContainEqual({ id: 'lint', kind: 'not seen', strength: 'strongly' });
    const crushed = ranking.find(({ cause }) => cause === 'crushed');
    expect(crushed?.lowered[0]).toEqual({ id: 'sp-low', kind: 'seen', strength: 'strongly' });
  });
});

describe('what the physics of a fan says', () => {
  it('a duct off at the collar moves more air, not less: no fog, no failed tissue, no pressure', () => {
    for (const id of ['fog', 'tissue', 'flow-low', 'sp-high'] as const) {
      expect(chanceOf('off-fan', { seen: [id, 'attic-wet'] }), id).toBeLessThan(
        chanceOf('off-fan', { seen: ['attic-wet'] }),
      );
    }
    for (const id of ['flow-ok', 'sp-low', 'above-predicted'] as const) {
      expect(chanceOf('off-fan', { seen: [id, 'attic-wet'] }), id).toBeGreaterThan(
        chanceOf('off-fan', { seen: ['attic-wet'] }),
      );
    }
  });

  it('no pressure tells a collar end from a hood end', () => {
    const told = { seen: ['duct-off', 'sp-low'] };
    expect(chanceOf('off-fan', told)).toBeGreaterThan(chanceOf('off-hood', told));
  });

  it('a closed ceiling damper stands before the wheel, so the duct behind it has no pressure', () => {
    const told = { seen: ['flow-low', 'weak'], context: ['rated-ceiling'] };
    expect(chanceOf('radclosed', { ...told, seen: [...told.seen, 'sp-low'] })).toBeGreaterThan(
      chanceOf('radclosed', told),
    );
  });

  it('a fan that makes a noise has power, and one that turns is not seized', () => {
    for (const id of ['rattle', 'whoosh', 'grind', 'flap-run', 'turns'] as const) {
      expect(chanceOf('tripped', { seen: [id] }), id).toBeLessThan(0.01);
      expect(chanceOf('plugout', { seen: [id] }), id).toBeLessThan(0.03);
    }
    expect(chanceOf('seized', { seen: ['turns'], context: ['old-unit'] })).toBeLessThan(0.01);
  });

  it('as predicted and below need blames the plan; far below predicted blames a fault', () => {
    const design = diagnosed({ seen: ['need-not-met', 'as-predicted'] }).ranking[0]?.cause;
    const fault = diagnosed({ seen: ['need-not-met', 'far-below-predicted'] }).ranking[0]?.cause;
    expect(['undersized', 'smallduct', 'longrun']).toContain(design);
    expect(['undersized', 'smallduct', 'longrun']).not.toContain(fault);
  });

  it('a detached duct says nothing about the suction of the house', () => {
    expect(callbackKnowledge.causes.negpress.signs['duct-off-collar']).toBeUndefined();
    expect(callbackKnowledge.causes.negpress.signs['duct-off-hood']).toBeUndefined();
  });

  it('what was looked for and not found counts', () => {
    expect(chanceOf('crushed', { seen: ['flow-low'], notSeen: ['crush'] })).toBeLessThan(
      chanceOf('crushed', { seen: ['flow-low'] }) / 5,
    );
  });
});

describe('signs of the same thing are not counted twice', () => {
  const odds = (answers: { seen: string[] }) => chanceOf('fandamper', answers) / chanceOf('grille', answers);

  it('a failed tissue after a low reading adds less than it would alone', () => {
    const alone = odds({ seen: ['noise-new', 'tissue'] }) / odds({ seen: ['noise-new'] });
    const after = odds({ seen: ['noise-new', 'flow-low', 'tissue'] }) / odds({ seen: ['noise-new', 'flow-low'] });
    expect(after).toBeGreaterThan(1);
    expect(after).toBeLessThan(Math.sqrt(alone));
  });

  it('a band of airflow is one answer: naming it and denying the others is the same', () => {
    const named = diagnosed({ seen: ['flow-low'] });
    expect(diagnosed({ seen: ['flow-low'], notSeen: ['flow-mid', 'flow-ok'] }).ranking).toEqual(named.ranking);
    expect(diagnosed({ notSeen: ['flow-mid', 'flow-ok'] }).ranking[0]?.cause).toBe(named.ranking[0]?.cause);
  });

  it('two bands at once contradict each other, and neither counts', () => {
    const { contradictions, ranking } = diagnosed({ seen: ['crush', 'flow-low', 'flow-ok'] });
    expect(contradictions).toEqual([['flow-low', 'flow-ok']]);
    expect(ranking).toEqual(diagnosed({ seen: ['crush'] }).ranking);
  });
});

describe('a vague answer', () => {
  it('gives way to a precise one', () => {
    expect(diagnosed({ seen: ['duct-off', 'duct-off-hood'] }).ranking).toEqual(
      diagnosed({ seen: ['duct-off-hood'] }).ranking,
    );
  });

  it('denied, denies each of its kinds', () => {
    expect(diagnosed({ notSeen: ['door-open'] }).ranking).toEqual(
      diagnosed({ notSeen: ['inside-door-open', 'window-open'] }).ranking,
    );
  });

  it('at odds with its kinds is set aside and named', () => {
    expect(
      diagnosed({ seen: ['no-hood'], notSeen: ['ends-attic', 'ends-soffit', 'hood-not-found'] }).contradictions,
    ).toEqual([['no-hood', 'ends-attic', 'ends-soffit', 'hood-not-found']]);
  });

  it('keeps a noise from being asked of a wheel that stands still', () => {
    expect(understood({ seen: ['dead'] }, reasoning).settled).toContain('rattle');
    expect(understood({ seen: ['turns'] }, reasoning).settled).toContain('light-ok');
  });
});

describe('two things wrong at once', () => {
  it('says the pair that explains what neither does alone', () => {
    const { together, ranking } = diagnosed({ seen: ['crush', 'rattle', 'rattle-hand'] });
    const first = together[0];
    expect(first?.causes).toContain('crushed');
    expect(first?.explains.flat().sort()).toEqual(['crush', 'rattle', 'rattle-hand']);
    expect(ranking.slice(0, 2).map(({ cause }) => cause)).toContain('crushed');
  });

  it('says none where one cause explains it all', () => {
    expect(diagnosed({ seen: ['drip-cold', 'bare', 'stain'], context: ['cold'] }).together).toEqual([]);
  });

  it('mends what was seen with own eyes, whatever leads', () => {
    const { ranking, repairs } = diagnosed({ seen: ['cycles', 'tape-peel', 'loose'], context: ['humidity-control'] });
    expect(repairs).toEqual([
      { finding: 'loose', cause: 'housing' },
      { finding: 'tape-peel', cause: 'tapefail' },
    ]);
    expect(ranking.map(({ cause }) => cause)).toContain('humset');
  });

  it('names what the leading cause leaves unexplained, and what would explain it', () => {
    const { ranking, unexplained } = diagnosed({
      seen: ['drip-rain', 'stain', 'flicker'],
      notSeen: ['wet-wiring', 'gfci-wet', 'smell'],
    });
    expect(ranking[0]?.cause).toBe('roofleak');
    expect(unexplained).toEqual([{ finding: 'flicker', by: 'ledmis' }]);
  });
});

it('strange ids are named and change nothing', () => {
  const { strangers, ranking } = diagnosed({ seen: ['fog', 'ghosts'], notSeen: ['toString'], context: ['haunted'] });
  expect(strangers).toEqual(['ghosts', 'toString', 'haunted']);
  expect(ranking).toEqual(diagnosed({ seen: ['fog'] }).ranking);
});
