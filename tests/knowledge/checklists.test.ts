import { describe, expect, it } from 'vitest';
import { BadKnowledge, checked } from '#knowledge/checked.ts';
import { type Checklist, problemsOfList } from '#knowledge/checklist.ts';
import { checklistWords, isWalkFact, walkFacts } from '#knowledge/checklist-facts.ts';
import { type StepEntry, stepsSchema } from '#knowledge/checklist-steps.ts';
import { checklistSteps, checklists } from '#knowledge/checklists.ts';
import { observations } from '#knowledge/circuit-rules.ts';
import { sources } from '#knowledge/sources.ts';

const steps = Object.entries(checklistSteps);
const lists = Object.values(checklists);
const stepOf = (id: string): StepEntry => {
  const step = checklistSteps[id];
  if (!step) throw new Error(`there is no step ${id}`);
  return step;
};
const optionsOf = ({ evidence }: StepEntry) =>
  evidence.flatMap((part) => (part.kind === 'choice' ? part.options.map((option) => ({ part, option })) : []));

describe('every step', () => {
  it('speaks in short sentences, verb first, without shouting', () => {
    for (const [id, step] of steps) {
      for (const text of [step.do, step.lookFor, step.why, step.caution, step.onFail].filter(
        (each) => each !== undefined,
      )) {
        expect(text, id).toMatch(/^[A-Z0-9][^!]*\.$/);
        for (const sentence of text.split(/(?<=\.)\s/))
          expect(sentence.split(' ').length, `${id}: ${sentence}`).toBeLessThanOrEqual(27);
      }
    }
  });

  it('has a code and an id of its own, and is used by some list', () => {
    const codes = steps.map(([, { code }]) => code);
    expect(new Set(codes).size).toBe(codes.length);
    const used = new Set(lists.flatMap((list) => list.steps.map(({ id }) => id)));
    expect(steps.filter(([id]) => !used.has(id)).map(([id]) => id)).toEqual([]);
    for (const [id] of steps) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });

  it('rests on a source of an honest kind', () => {
    for (const [id, { source, verified }] of steps) {
      if (['common practice', 'memory', 'own working'].includes(sources[source].kind)) expect(verified, id).toBe(false);
      if (source === 'nec') expect(verified, `${id}: the book itself was not read`).toBe(false);
    }
  });

  it('that stops the job says what to do now', () => {
    const sentences = steps.flatMap(([, step]) => [
      ...optionsOf(step).flatMap(({ option }) => option.stops ?? []),
      ...step.evidence.flatMap((part) => (part.kind === 'number' ? (part.outsideStops ?? []) : [])),
    ]);
    expect(sentences.length).toBeGreaterThan(50);
    for (const says of sentences) expect(says).toMatch(/^[A-Z].+\.$/);
    const stopping = {
      'circuit-trouble': ['heat-flicker-or-smell', 'gfci-will-not-reset'],
      'bath-zone-appliance': ['natural-draft', 'unvented', 'solid-fuel', 'induced-draft', 'power-vented', 'unknown'],
      'permits-and-licence': ['needs-answer', 'not-settled'],
      asbestos: ['suspect'],
      'wet-marking': ['not-allowed'],
      'insulation-contact': ['neither'],
      'heater-circuit': ['differs', 'none'],
      'shared-duct': ['shared'],
      'garage-duct': ['flex'],
      'breaker-locked': ['tagged-only'],
      'read-cable': ['none', 'armor-only', 'rod-or-pipe', 'brittle-scorched-or-cloth', 'too-cool'],
      'electrician-takes-wiring': ['nobody'],
      'end-outdoors': ['indoors'],
      seal: ['cloth-or-none'],
      'ground-first': ['none'],
      'power-on': ['smell'],
      'gfci-test': ['none'],
    };
    for (const [id, expected] of Object.entries(stopping)) {
      const stops = optionsOf(stepOf(id)).flatMap(({ option }) => (option.stops ? [option.id] : []));
      expect([...new Set(stops)], id).toEqual(expected);
    }
  });

  it('can be answered so that the job goes on', () => {
    for (const [id, { evidence }] of steps) {
      for (const part of evidence) {
        if (part.kind === 'choice')
          expect(
            part.options.some(({ stops }) => stops === undefined),
            id,
          ).toBe(true);
      }
    }
  });

  it('that records a fact offers only answers the fact can have', () => {
    for (const [id, step] of steps) {
      for (const { part, option } of optionsOf(step)) {
        if (!part.records) continue;
        const known = walkFacts[part.records].options.map((each) => each.id);
        expect([...known, 'unknown'], `${id} › ${option.id}`).toContain(option.id);
      }
    }
  });
});

describe('who may do what', () => {
  const qualified = ['electrically-qualified', 'licensed-electrician'];

  it('leaves no hold, and nothing on wires that may be live, to anyone', () => {
    for (const [id, { hold, signers, treatAsLive, proves }] of steps) {
      if (hold || treatAsLive || proves) expect(signers, id).not.toContain('anyone');
    }
  });

  it('asks a qualification and not a role for proving, joining and signing wires', () => {
    const ids = [
      'find-breaker',
      'breaker-locked',
      'open-cover',
      'test-dead-controls-on',
      'sign-dead',
      'part-splices',
      'ground-first',
      'join-wires',
      'wiring-signed',
      'power-on',
    ];
    for (const id of ids) expect(stepOf(id).signers, id).toEqual(qualified);
    expect(stepOf('heater-circuit').signers).toEqual(['licensed-electrician']);
    expect(stepOf('lead-paint-cut').signers).toEqual(['certified-renovator']);
  });

  it('never lets anybody pass over a step with a risk, or a hold', () => {
    const never = [
      'read-cable',
      'rated-fitted',
      'rated-detail',
      'wet-marking',
      'insulation-contact',
      'heater-circuit',
      'shared-duct',
      'end-outdoors',
      'soffit-ending',
      'gfci-test',
      'spillage-test',
      'asbestos',
    ];
    for (const id of never) expect(stepOf(id).overridable, id).toBe(false);
    for (const [id, { risk, hold, overridable }] of steps) {
      if (risk !== 'none' || hold) expect(overridable, id).toBe(false);
    }
  });

  it('lets only a certified tester record a passed spillage test', () => {
    const [result] = stepOf('spillage-test').evidence;
    const signers = result?.kind === 'choice' ? result.options.map(({ id, signers: who }) => [id, who]) : [];
    expect(signers).toEqual([
      ['pass', ['combustion-tester']],
      ['fail', ['lead', 'combustion-tester']],
      ['not-tested', ['lead']],
    ]);
  });
});

describe('proving a box dead', () => {
  it('tests with every control on, then in every other position', () => {
    const controls = (id: string) => optionsOf(stepOf(id)).filter(({ part }) => part.id === 'controls');
    expect(controls('test-dead-controls-on').map(({ option }) => [option.id, option.stops === undefined])).toEqual([
      ['on', true],
      ['off', false],
    ]);
    expect(controls('test-dead-controls-off').map(({ option }) => [option.id, option.stops === undefined])).toEqual([
      ['all', true],
      ['some', false],
    ]);
    expect(controls('find-breaker').map(({ option }) => option.id)).toEqual(['on', 'off']);
  });

  it('counts under 1 V as dead and anything else as a stop (common practice)', () => {
    for (const part of [...stepOf('test-dead-controls-on').evidence, ...stepOf('test-dead-controls-off').evidence]) {
      if (part.kind !== 'number') continue;
      expect(part.under).toEqual({ si: 1, shown: '1 V' });
      expect(part.outsideStops).toMatch(/^Treat it as live/);
    }
  });

  it('comes after the cover, and ends with a break, a new person, a new day and time', () => {
    for (const { steps: all } of lists) {
      const ids = all.map(({ id }) => id);
      if (!ids.includes('sign-dead')) continue;
      expect(ids.indexOf('open-cover')).toBeLessThan(ids.indexOf('prove-tester-before'));
    }
    for (const id of [
      'prove-tester-before',
      'test-dead-controls-on',
      'test-dead-controls-off',
      'prove-tester-after',
      'sign-dead',
    ]) {
      expect(stepOf(id).lapses, id).toEqual(['pause', 'new-day', 'new-worker', 'idle', 'age']);
      expect(stepOf(id).per, id).toBe('box');
    }
    expect(stepOf('power-on').reopens).toContain('breaker-locked');
  });

  it('is asked of every step at whose doing hands are in a box', () => {
    const inBoxes = [
      'read-wiring',
      'read-cable',
      'box-fill',
      'read-switch-box',
      'collar-and-duct-inside',
      'strip-fan',
      'part-splices',
      'housing-out-above',
      'housing-out-below',
      'duct-off-from-below',
      'free-wire',
      'housing-fixed',
      'collar-from-below',
      'cable-clamped',
      'ground-first',
      'join-wires',
      'control-fitted',
      'close-box',
      'inside-looked-at',
      'shut-again',
    ];
    expect(
      steps
        .filter(([, { touches }]) => touches.length > 0)
        .map(([id]) => id)
        .sort(),
    ).toEqual(inBoxes.sort());
  });

  it('leaves the survey with the covers on', () => {
    for (const { steps: all } of lists) {
      for (const { stage, id, touches } of all)
        if (stage === 'survey' || stage === 'visit') expect(touches, id).toEqual([]);
    }
  });
});

describe('the facts behind the lists', () => {
  it('are those of the power rules wherever the power rules have them, in the same words', () => {
    for (const id of Object.keys(walkFacts)) {
      if (!isWalkFact(id) || !Object.hasOwn(observations, id)) continue;
      expect(walkFacts[id].options, id).toEqual(observations[id as keyof typeof observations].options);
    }
    const shared = Object.keys(walkFacts).filter((id) => Object.hasOwn(observations, id));
    expect(shared).toEqual(
      expect.arrayContaining(['wiring-kind', 'fan-place', 'tub-shower-marking', 'gfci-protection', 'unit-kind']),
    );
  });

  it('are all read or recorded by some step', () => {
    const text = JSON.stringify([checklistSteps, lists.map((list) => list.steps.map(({ when }) => when))]);
    expect(Object.keys(walkFacts).filter((id) => !text.includes(`"${id}"`))).toEqual([]);
  });

  it('are cleared of a hazard by a lead or a card, never by anyone', () => {
    const hazards = [
      'fuel-appliances',
      'appliance-in-bath-zone',
      'rated-ceiling',
      'house-built',
      'wiring-kind',
      'fan-place',
      'insulation-near',
      'duct-serves',
      'duct-ending',
      'spillage-result',
    ] as const;
    for (const id of hazards) {
      expect(walkFacts[id].clearedBy, id).not.toContain('anyone');
      expect(walkFacts[id].safe.length, id).toBeGreaterThan(0);
    }
    expect(walkFacts['spillage-result'].clearedBy).toEqual(['combustion-tester']);
  });

  it('count as dangerous when unknown, or say which stricter step stands in', () => {
    for (const { steps: all } of lists) {
      for (const { id, when } of all) {
        for (const { is, because } of when) expect(is.includes('unknown') || because !== undefined, id).toBe(true);
      }
    }
  });

  it('of appliances and code editions are the answers the questions have', () => {
    expect(walkFacts['fuel-appliances'].options.map(({ id }) => id)).toEqual([
      'none',
      'sealed',
      'natural-draft',
      'unvented',
      'solid-fuel',
      'induced-draft',
      'power-vented',
    ]);
    expect(walkFacts['building-code-edition'].options.map(({ id }) => id)).toContain('irc-2021');
  });
});

describe('the lists', () => {
  it('are the swap and the short ones made of its steps', () => {
    expect(Object.keys(checklists)).toEqual([
      'swap',
      'before-leaving-the-shop',
      'control-only',
      'duct-only',
      'callback-visit',
    ]);
    expect(checklists.swap.stages.map(({ id }) => id)).toEqual([
      'survey',
      'hazards',
      'plan',
      'protect',
      'isolate',
      'opened',
      'remove',
      'opening',
      'duct',
      'mount',
      'wire',
      'test',
      'close',
    ]);
  });

  it('name every tool, garment and signer they use', () => {
    const { tools, gear } = checklistWords;
    expect(
      Object.keys(tools).filter((id) => !steps.some(([, step]) => step.tools.some((each) => each === id))),
    ).toEqual([]);
    expect(Object.keys(gear).filter((id) => !steps.some(([, step]) => step.gear.some((each) => each === id)))).toEqual(
      [],
    );
  });

  it('hold a lock for every person wherever a box is opened or a fan kept from starting', () => {
    for (const { id, steps: all } of lists) {
      const has = (step: string) => all.some((each) => each.id === step);
      if (has('power-on'))
        expect([has('lock-on'), has('breaker-locked'), has('lock-off')], id).toEqual([true, true, true]);
    }
  });

  it('find their own mistakes: a need that comes too late, a touch without a proof, two closes', () => {
    const { swap } = checklists;
    const broken = (change: (steps: Checklist['steps']) => Checklist['steps']) =>
      problemsOfList({ ...swap, steps: change(swap.steps) }, []).join('\n');
    expect(problemsOfList(swap, [])).toEqual([]);
    expect(broken((all) => all.toReversed())).toMatch(
      /sign-dead needs prove-tester-after, which does not come before it/,
    );
    expect(broken((all) => all.filter(({ id }) => id !== 'sign-dead'))).toMatch(
      /strip-fan touches a box that no step proves dead/,
    );
    expect(broken((all) => all.slice(0, -1))).toMatch(/the last step, and no other, closes the list/);
    expect(broken((all) => [...all.slice(0, 3), ...all])).toMatch(/house-age is on the list twice/);
    expect(problemsOfList(swap, ['seal'])).toEqual(['seal is on the list and cannot be left out as a need']);
  });

  it('are refused when a step breaks a rule of safety', () => {
    const {
      id: _,
      stage: __,
      title: ___,
      ...slope
    } = { ...checklists.swap.steps.find(({ id }) => id === 'slope') } as Record<string, unknown>;
    const written = { ...slope, evidence: [{ id: 'ok', kind: 'tick', label: 'Done' }] };
    const load = (change: Record<string, unknown>) =>
      checked('test.json', stepsSchema, { step: { ...written, ...change } });
    expect(load({})).toBeDefined();
    const refusals: readonly [Record<string, unknown>, RegExp][] = [
      [{ hold: true }, /a hold is signed or open, never overridden/],
      [{ hold: true, overridable: false }, /a hold names who may sign it/],
      [{ risk: 'combustion' }, /never overridden/],
      [{ touches: ['fan'] }, /a step at wires has the risk electrical/],
      [{ risk: 'electrical', overridable: false, treatAsLive: true }, /not for anyone/],
      [{ when: [{ fact: 'access', is: ['attic'] }] }, /list "unknown" among the answers, or say/],
      [{ when: [{ fact: 'access', is: ['cellar', 'unknown'] }] }, /cellar is no answer to access/],
      [{ when: [{ fact: 'weather', is: ['unknown'] }] }, /is no fact/],
      [{ do: 'No full stop' }, /must end with/],
      [{ source: 'hearsay' }, /no such id/],
      [{ shout: true }, /Unrecognized key/],
    ];
    for (const [change, says] of refusals) {
      expect(() => load(change), JSON.stringify(change)).toThrow(BadKnowledge);
      expect(() => load(change), JSON.stringify(change)).toThrow(says);
    }
  });
});
