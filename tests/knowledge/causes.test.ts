import { describe, expect, it } from 'vitest';
import { type Column, preparedReasoning } from '#diagnosis/reasoning.ts';
import { type CallbackFindingId, callbackFindings, callbackVariables } from '#knowledge/callback-findings.ts';
import { callbackContexts, callbackDangers, callbackScale, causeBands } from '#knowledge/callback-scale.ts';
import { englishCallbackWords } from '#knowledge/callback-words.ts';
import { type Cause, type CauseId, callbackKnowledge, causes } from '#knowledge/causes.ts';

const reasoning = preparedReasoning(callbackKnowledge);
const causeEntries = Object.entries(causes) as [CauseId, Cause][];
const findingEntries = Object.entries(callbackFindings) as [
  CallbackFindingId,
  (typeof callbackFindings)[CallbackFindingId],
][];
const chanceFor = (cause: CauseId, finding: CallbackFindingId): number =>
  (reasoning.columns[reasoning.columnOf.get(finding) as number] as Column).chance[
    reasoning.causeIds.indexOf(cause)
  ] as number;

describe('every cause', () => {
  it('has at least one finding that tells it from what is met anyway', () => {
    const without = causeEntries.filter(([id]) =>
      reasoning.columns.every(({ id: finding, usual }) => {
        const chance = chanceFor(id, finding);
        return !(chance >= 0.7 && chance >= 3 * usual);
      }),
    );
    expect(without.map(([id]) => id)).toEqual([]);
  });

  it('can be told from every other cause by some finding', () => {
    const alike = causeEntries.flatMap(([one], at) =>
      causeEntries
        .slice(at + 1)
        .filter(([other]) =>
          reasoning.findingIds.every((finding) => Math.abs(chanceFor(one, finding) - chanceFor(other, finding)) < 0.3),
        )
        .map(([other]) => `${one} and ${other}`),
    );
    expect(alike).toEqual([]);
  });

  it('that can hurt says what to do until it is ruled out', () => {
    const feared = causeEntries.filter(([, { lifeSafety }]) => lifeSafety).map(([id]) => id);
    expect(feared.sort()).toEqual(
      [
        'gfault',
        'ground-neutral',
        'heatload',
        'pinch',
        'plumb',
        'seized',
        'spillage',
        'splice',
        'thermal',
        'wetwire',
      ].sort(),
    );
  });

  it('with live wires in it is for a licensed electrician', () => {
    for (const id of [
      'splice',
      'noneutral',
      'ground-neutral',
      'miswire',
      'wetwire',
      'gfault',
      'heatload',
      'pinch',
      'switchbad',
    ] as const) {
      expect(causes[id].who, id).toBe('licensed-electrician');
    }
  });
});

describe('every finding', () => {
  it('says how to check it, from where, and with what power', () => {
    for (const [id, { how, from, power, question }] of findingEntries) {
      expect(how.length, id).toBeGreaterThan(20);
      expect(how, id).toMatch(/\.$/);
      expect(question, id).toMatch(/^[A-Z].*\?$/);
      expect([from, power], id).not.toContain(undefined);
    }
  });

  it('that puts a hand inside the grille or a box is off and proven, and says so', () => {
    const inside = [
      'loose',
      'damper-jam',
      'damper-gone',
      'unplug',
      'speed-low',
      'gap-ceil',
      'radiation',
      'no-neutral',
      'ground-as-neutral',
    ];
    for (const id of inside as CallbackFindingId[]) {
      expect(callbackFindings[id].power, id).toBe('off and proven');
      expect(callbackFindings[id].how, id).toMatch(/proven dead/);
    }
  });

  it('that needs a live test is never proposed', () => {
    for (const id of ['no-volt', 'volt-ok'] as const) {
      expect(callbackFindings[id]).toMatchObject({ offered: false, who: 'licensed-electrician' });
    }
  });

  it('asked of a danger says not to try it', () => {
    for (const id of [
      'hum-noturn',
      'slow',
      'cut-hot',
      'gfci-now',
      'gfci-wet',
      'breaker',
      'breaker-heat',
      'drip-use',
    ] as const) {
      expect(callbackFindings[id].danger, id).toBeDefined();
      expect(callbackFindings[id].how, id).toMatch(/no more resets|Never push|Do not|switched off at once/);
    }
  });

  it('that bears on no cause is not in the base', () => {
    const idle = findingEntries.filter(
      ([id, { variable, anyOf }]) =>
        variable === undefined && anyOf === undefined && causeEntries.every(([cause]) => chanceFor(cause, id) < 0.3),
    );
    expect(idle.map(([id]) => id)).toEqual([]);
  });

  it('that names a defect names a cause', () => {
    for (const [id, { defect }] of findingEntries) {
      if (defect !== undefined) expect(Object.keys(causes), id).toContain(defect);
    }
  });

  it('told of several at once has plain findings as its members', () => {
    for (const [id, { anyOf }] of findingEntries) {
      for (const member of anyOf ?? []) expect(callbackFindings[member].anyOf, `${id} › ${member}`).toBeUndefined();
    }
  });

  it("has a good dozen of customers' words, and each context too", () => {
    for (const [id] of findingEntries) {
      expect(englishCallbackWords.findings[id]?.yes.length, id).toBeGreaterThanOrEqual(12);
    }
    for (const id of Object.keys(callbackContexts) as (keyof typeof callbackContexts)[]) {
      expect(englishCallbackWords.contexts[id]?.length, id).toBeGreaterThanOrEqual(12);
    }
  });
});

describe('chances', () => {
  it('of one variable sum to one under every cause', () => {
    for (const [variable, { background }] of Object.entries(callbackVariables)) {
      const all = [
        background,
        ...causeEntries.map(([, { chances }]) => chances[variable as keyof typeof callbackVariables]),
      ];
      for (const chances of all) {
        if (chances === undefined) continue;
        expect(Object.values(chances).reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
      }
    }
  });

  it('fall from tier to tier, and bands from band to band', () => {
    const tiers = Object.values(callbackScale.tiers).map(({ chance }) => chance);
    expect(tiers).toEqual([...tiers].sort((a, b) => b - a));
    const bands = causeBands.map((band) => callbackScale.bands[band].from);
    expect(bands).toEqual([...bands].sort((a, b) => b - a));
    expect(bands.at(-1)).toBe(0);
  });

  it('of airflow follow the fault: a blocked duct high pressure, a weak fan low, a detached one plenty of air', () => {
    for (const id of ['crushed', 'hoodstuck', 'nest', 'fandamper'] as const) {
      expect(chanceFor(id, 'sp-high'), id).toBeGreaterThan(0.6);
      expect(chanceFor(id, 'flow-ok'), id).toBeLessThan(0.05);
    }
    for (const id of ['dirty', 'speed-low', 'radclosed'] as const)
      expect(chanceFor(id, 'sp-low'), id).toBeGreaterThan(0.5);
    for (const id of ['off-fan', 'off-hood', 'term-attic'] as const)
      expect(chanceFor(id, 'flow-ok'), id).toBeGreaterThan(0.7);
    expect(chanceFor('undersized', 'flow-mid')).toBeGreaterThan(chanceFor('undersized', 'flow-ok'));
  });
});

describe('a danger', () => {
  it('is told in one sentence, and some finding leads to it or some cause asks for it', () => {
    for (const [id, { says }] of Object.entries(callbackDangers)) {
      expect(says.match(/\./g), id).toHaveLength(1);
      const used =
        findingEntries.some(([, { danger }]) => danger === id) ||
        causeEntries.some(([, { lifeSafety }]) => lifeSafety === id);
      expect(used, id).toBe(true);
    }
  });
});

it('prose ends with a full stop', () => {
  for (const [id, { confirm, remedy, caution, refer }] of causeEntries) {
    for (const text of [confirm, remedy, caution, refer]) if (text !== undefined) expect(text, id).toMatch(/\.$/);
  }
});
