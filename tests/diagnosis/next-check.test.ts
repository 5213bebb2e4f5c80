import { describe, expect, it } from 'vitest';
import type { Answers } from '#diagnosis/answers.ts';
import { nextCheck } from '#diagnosis/next-check.ts';
import { reasoning } from './reasoning-at-hand.ts';

const next = (answers: Answers) => nextCheck(reasoning, answers);
const proposed = (answers: Answers) => {
  const result = next(answers);
  if (result.kind !== 'check') throw new Error(`nothing was proposed: ${result.kind}`);
  return result;
};

describe('the next check', () => {
  it('starts on the phone', () => {
    for (const seen of [['fog'], ['loud'], ['drip'], ['draught'], ['dead'], ['intermit']]) {
      expect(proposed({ seen }).check.from, seen.join()).toBe('phone');
    }
  });

  it('says where each answer points', () => {
    const { check } = proposed({ seen: ['draught'], context: ['cold'], upTo: 'phone' });
    expect(check.pointsTo.length).toBe(check.answers.length || 2);
    expect(new Set(check.pointsTo).size).toBeGreaterThan(1);
  });

  it('asks for the answer that may call for a stop before all others', () => {
    expect(proposed({ seen: ['smells'] })).toMatchObject({ check: { id: 'smell' }, because: 'danger' });
    expect(proposed({ seen: ['door-slam'], context: ['combustion'] })).toMatchObject({
      check: { id: 'spill' },
      because: 'danger',
    });
  });

  it('after a danger asks nothing', () => {
    expect(next({ seen: ['smell', 'fog'] })).toMatchObject({ kind: 'stopped' });
  });

  it('never goes on about what cannot be checked, nor to a place nobody can reach', () => {
    const told: Answers = { seen: ['flow-low', 'sp-high', 'fog', 'turns'] };
    const { check } = proposed(told);
    expect(proposed({ ...told, cannotCheck: [check.id] }).check.id).not.toBe(check.id);
    for (let cannotCheck = ['attic', 'outside'], turn = 0; turn < 40; turn += 1) {
      const after = next({ ...told, cannotCheck });
      if (after.kind !== 'check') break;
      expect(['attic', 'outside']).not.toContain(after.check.from);
      cannotCheck = [...cannotCheck, after.check.id];
    }
  });

  it('offers a look inside the grille only while it is proven dead', () => {
    const told: Answers = {
      seen: ['flow-low', 'sp-high', 'turns'],
      context: ['recent-swap'],
      notSeen: ['hood-stuck', 'nest'],
    };
    const withProof = proposed({ ...told, deadProven: true, cannotCheck: ['phone'] });
    expect([withProof.check, ...withProof.others].map(({ id }) => id)).toContain('damper-jam');
    const withoutProof = next({ ...told, cannotCheck: ['phone'] });
    if (withoutProof.kind === 'check') {
      expect([withoutProof.check, ...withoutProof.others].map(({ id }) => id)).not.toContain('damper-jam');
    }
  });

  it('leaves live tests to the electrician', () => {
    const cannotCheck: string[] = [];
    for (let turn = 0; turn < 60; turn += 1) {
      const result = next({ seen: ['dead', 'light-ok'], cannotCheck, deadProven: true });
      if (result.kind !== 'check') break;
      expect(['no-volt', 'volt-ok', 'ground-as-neutral']).not.toContain(result.check.id);
      cannotCheck.push(result.check.id);
    }
    expect(cannotCheck.length).toBeGreaterThan(2);
  });

  it('stops when it is clear, and says what would change its mind', () => {
    const result = next({ seen: ['cycles'], context: ['humidity-control'], notSeen: ['dead'] });
    expect(result).toMatchObject({ kind: 'clear', leading: 'humset' });
    const close = next({ seen: ['flap-off'], context: ['windy-site'] });
    expect(close).toMatchObject({ kind: 'clear', leading: 'flapwind' });
    if (close.kind !== 'clear') return;
    expect(close.mindChangers.length).toBeGreaterThan(0);
    expect(close.mindChangers.every(({ leads }) => leads !== 'flapwind')).toBe(true);
  });

  it('when nothing cheap is left, says what waits for the box to be proven dead', () => {
    const told: Answers = { seen: ['flow-low', 'sp-high', 'turns'], context: ['recent-swap'] };
    const result = next({ ...told, cannotCheck: ['phone', 'floor', 'outside', 'attic', 'instrument'] });
    expect(result).toMatchObject({ kind: 'nothing left' });
    if (result.kind !== 'nothing left') return;
    expect(result.waiting.map(({ id }) => id)).toContain('damper-jam');
    expect(result.waiting.every(({ power }) => power === 'off and proven')).toBe(true);
  });

  it('puts a choice as one question', () => {
    const { check } = proposed({ seen: ['light-ok'] });
    expect(check).toMatchObject({ id: 'wheel', answers: ['turns', 'slow', 'hum-noturn', 'dead'] });
  });
});
