import { describe, expect, it } from 'vitest';
import { type Facts, factsStillToAsk, rulesThatApply } from '#engine/electrical/rules-that-apply.ts';
import { boxRules, electricalCodeEditions, standardBoxes } from '#knowledge/box-rules.ts';
import { canadianBoxRules, canadianConductorVolumes } from '#knowledge/canadian-box-rules.ts';
import {
  type ObservationId,
  observationIds,
  observations,
  type PowerRule,
  type PowerRuleId,
  type PowerStage,
  powerFacts,
  powerRules,
  powerRulesAt,
  powerStages,
  restsOn,
  whoDecides,
} from '#knowledge/circuit-rules.ts';
import { circuitLimits, motorFullLoad } from '#knowledge/electrical.ts';
import { ductSealants, framing, takeOffAllowances, tapeEvidence } from '#knowledge/materials.ts';
import { sources } from '#knowledge/sources.ts';

const rules = Object.entries(powerRules) as [PowerRuleId, PowerRule][];
const answersThatMatch = (rule: PowerRule): Record<string, string | undefined> =>
  Object.fromEntries(Object.entries(rule.applies).map(([fact, [first]]) => [fact, first]));
const weightOf = (facts: Facts, id: PowerRuleId) =>
  rulesThatApply(powerFacts(facts), powerRules).find((applied) => applied.id === id)?.weight;

describe('every power rule', () => {
  for (const [id, rule] of rules) {
    it(`${id} speaks for the answers it names, and is silenced by any other answer`, () => {
      const match = answersThatMatch(rule);
      expect(weightOf(match, id)).toBe(rule.weight);
      for (const [fact, values] of Object.entries(rule.applies) as [ObservationId, string[]][]) {
        for (const option of observations[fact].options) {
          const expected = values.includes(option.id) ? rule.weight : undefined;
          expect(weightOf({ ...match, [fact]: option.id }, id), `${fact}=${option.id}`).toBe(expected);
        }
      }
    });
  }

  it('that stops still speaks, as stop or caution, when any of its answers is missing', () => {
    for (const [id, rule] of rules.filter(([, { weight }]) => weight === 'stop')) {
      for (const fact of Object.keys(rule.applies)) {
        const forgotten = { ...answersThatMatch(rule), [fact]: undefined };
        expect(['stop', 'caution'], `${id} without ${fact}`).toContain(weightOf(forgotten, id));
        expect(['stop', 'caution']).toContain(weightOf({ ...forgotten, [fact]: 'unknown' }, id));
      }
    }
  });

  it('never speaks louder for want of an answer than with it', () => {
    const order = ['advice', 'caution', 'stop'];
    for (const [id, { weight, whenUnknown }] of rules) {
      if (whenUnknown) expect(order.indexOf(whenUnknown.weight), id).toBeLessThanOrEqual(order.indexOf(weight));
    }
  });

  it('that stops is never decided by an apprentice', () => {
    for (const [id, rule] of rules.filter(([, { weight }]) => weight === 'stop')) {
      expect(rule.decides, id).not.toBe('apprentice');
    }
    expect(Object.keys(whoDecides)).toEqual(['licensed-electrician', 'qualified-person', 'lead', 'apprentice']);
  });

  it('rests on a source of an honest kind: a forum reads as a forum and memory is never verified', () => {
    for (const [id, rule] of rules) {
      const kind = restsOn(rule);
      if (rule.source.startsWith('forum') || rule.source === 'electricians-forum') expect(kind, id).toBe('forum');
      if (kind === 'common practice' || kind === 'memory') expect(rule.verified, id).toBe(false);
      if (rule.source === 'nec') expect(rule.verified, `${id}: the book itself was not read`).toBe(false);
    }
  });

  it('belongs to one stage, and every stage has some', () => {
    const counted = powerStages.map((stage) => Object.keys(powerRulesAt(stage)).length);
    expect(Math.min(...counted)).toBeGreaterThan(0);
    expect(counted.reduce((a, b) => a + b)).toBe(rules.length);
  });
});

describe('every observation', () => {
  it('is read by some rule', () => {
    const read = new Set(rules.flatMap(([, { applies }]) => Object.keys(applies)));
    expect(observationIds.filter((id) => !read.has(id))).toEqual([]);
  });

  it('has its own answers, and leaves "unknown" to the one who asks', () => {
    for (const id of observationIds) {
      const options = observations[id].options.map((option) => option.id);
      expect(new Set(options).size, id).toBe(options.length);
      expect(options, id).not.toContain('unknown');
    }
  });

  it('that only an opened box can tell says that no live box is opened for it, where it is asked beforehand', () => {
    const early = observationIds.filter(
      (id) => observations[id].seen === 'opened-box' && observations[id].stage === 'plan',
    );
    expect(early).toEqual([
      'cable-temperature',
      'fan-ground',
      'switch-box-neutral',
      'switch-box-ground',
      'wiring-kind',
    ]);
    for (const id of early) expect(observations[id].why, id).toContain('proven dead');
  });
});

describe('what the rules say of a job', () => {
  const plain = {
    'unit-kind': 'fan-only',
    'fan-place': 'elsewhere',
    'insulation-near': 'clear',
    'control-wanted': 'keep',
    'circuit-serves': 'this-unit-only',
    'cable-work': 'none',
    'label-wire-temperature': 'none-given',
    'fan-ground': 'proven',
    'wiring-kind': 'copper-cable',
    'wiring-era': '1985-on',
    'trouble-signs': 'none',
    'who-wires': 'licensed-electrician',
    'wire-and-breaker': 'wire-allows-breaker',
  } as const;
  const planned = powerRulesAt('plan');
  const spoken = (facts: Facts) => rulesThatApply(powerFacts({ ...plain, ...facts }), planned);
  const stops = (facts: Facts) => spoken(facts).flatMap(({ id, weight }) => (weight === 'stop' ? [id] : []));

  it('leaves a plain swap on sound copper wiring without a stop or a caution', () => {
    expect(spoken({}).filter(({ weight }) => weight !== 'advice')).toEqual([]);
  });

  it('lets every later stage be passed by doing what it asks', () => {
    const done = {
      isolate: {
        'breakers-feeding': 'several-all-locked',
        'panel-state': 'in-order',
        isolation: 'locked',
        'controls-while-testing': 'all-on',
        tester: 'contact-meter-proven',
        'who-tests': 'qualified',
        'dead-reading': 'under-1-v',
        'since-dead-proof': 'stayed',
        'before-power': 'yes',
      },
      'box-open': {
        'control-wanted': 'countdown-timer',
        'wire-colours': 'as-expected',
        'constant-hot': 'found-by-test',
        'wire-condition': 'sound',
        'cable-entry': 'clamp-or-bushing',
        splices: 'in-reachable-boxes',
      },
      check: { 'gfci-protection': 'proven' },
    } as const;
    for (const [stage, facts] of Object.entries(done) as [PowerStage, Facts][]) {
      const left = rulesThatApply(powerFacts(facts), powerRulesAt(stage)).filter(({ weight }) => weight === 'stop');
      expect(
        left.map(({ id }) => id),
        stage,
      ).toEqual([]);
    }
  });

  it('stops for each thing left unknown that can kill', () => {
    for (const fact of ['fan-ground', 'wiring-kind', 'who-wires', 'fan-place'] as const) {
      expect(stops({ [fact]: 'unknown' }), fact).not.toEqual([]);
    }
  });

  it('takes a misspelt or outdated answer as unknown', () => {
    expect(stops({ 'fan-ground': 'yes' })).toEqual(stops({ 'fan-ground': 'unknown' }));
  });

  it('does not stop for a switch box without a neutral, which is ordinary, but cautions', () => {
    const timer = {
      'control-wanted': 'countdown-timer',
      'switch-controls': 'fan-only',
      'switch-places': 'one',
      'switch-box-neutral': 'none',
      'control-needs': 'neutral',
      'control-marking': 'motor-rated',
      'control-output': 'relay-or-mechanical',
      'motor-kind': 'ac',
      'control-place': 'outside',
      'control-rating': 'enough',
      'control-minimum-load': 'met',
    } as const;
    expect(stops(timer)).toEqual([]);
    expect(spoken(timer).find(({ id }) => id === 'control-wants-neutral')?.weight).toBe('caution');
  });

  it('stops where the bare ground carries current, or a control would make it', () => {
    expect(weightOf({ 'wire-colours': 'ground-carries-current' }, 'ground-carries-current')).toBe('stop');
    expect(stops({ 'control-wanted': 'countdown-timer', 'control-needs': 'ground-as-return' })).toContain(
      'ground-as-return',
    );
  });

  it('asks for a GFCI over a tub only where the label does, or nobody has read it', () => {
    const over = { 'fan-place': 'over-tub-or-shower', 'gfci-protection': 'none' } as const;
    expect(stops({ ...over, 'tub-shower-marking': 'allowed' })).toEqual([]);
    expect(stops({ ...over, 'tub-shower-marking': 'allowed-with-gfci' })).toEqual(['fan-over-tub-needs-gfci']);
    expect(stops({ ...over, 'tub-shower-marking': 'unknown' })).toContain('fan-over-tub-needs-gfci');
    expect(stops({ ...over, 'tub-shower-marking': 'allowed-with-gfci', 'gfci-protection': 'proven' })).toEqual([]);
  });

  it('asks a lamp over the tub for damp marking, and for wet marking in the spray (NEC 410.10(D))', () => {
    const lamp = {
      'unit-kind': 'fan-and-light',
      'tub-shower-marking': 'allowed',
      'insulation-contact-marking': 'type-ic',
    } as const;
    const at = (place: string, marking: string) => stops({ ...lamp, 'fan-place': place, 'light-marking': marking });
    expect(at('over-tub-or-shower', 'damp')).toEqual([]);
    expect(at('over-tub-or-shower', 'neither')).toEqual(['light-in-zone-not-marked']);
    expect(at('sprayed', 'damp')).toEqual(['light-in-spray-damp-only']);
    expect(at('sprayed', 'wet')).toEqual([]);
  });

  it('keeps insulation off a lamp that is not Type IC (NEC 410.116)', () => {
    const lamp = { 'unit-kind': 'fan-and-light', 'insulation-near': 'within-3-in' } as const;
    expect(stops({ ...lamp, 'insulation-contact-marking': 'not-marked' })).toEqual(['lamp-under-insulation']);
    expect(stops({ ...lamp, 'insulation-contact-marking': 'type-ic' })).toEqual([]);
  });

  it('asks a heater for its own circuit and a disconnect (NEC 424.19)', () => {
    const heater = {
      'unit-kind': 'fan-and-heater',
      'heater-circuit': 'matches-label',
      'heater-disconnect': 'in-sight',
    } as const;
    expect(stops(heater)).toEqual([]);
    expect(stops({ ...heater, 'heater-disconnect': 'none' })).toEqual(['heater-without-disconnect']);
    expect(stops({ ...heater, 'circuit-serves': 'this-bathroom-only', 'fixed-load-share': 'within-half' })).toEqual([
      'heater-on-shared-circuit',
    ]);
  });

  it('calls a dead test made with a switch off worthless', () => {
    expect(weightOf({ 'controls-while-testing': 'some-off' }, 'controls-left-off')).toBe('stop');
    expect(weightOf({}, 'controls-left-off')).toBe('stop');
    expect(powerRules['find-every-source'].says).toContain('Leave its control on');
  });

  it('wants plate and screws of a replacement switch without a ground both nonmetallic (NEC 404.9(B))', () => {
    expect(powerRules['switch-without-ground'].says).toMatch(
      /nonmetallic plate and nonmetallic screws, or behind a GFCI/,
    );
  });

  it('does not send anyone into a live compartment for a routine reading', () => {
    expect(powerRules['voltage-not-routine'].decides).toBe('licensed-electrician');
  });

  it('asks a fan on a kept switch a dozen questions, and nothing of heaters, lamps or timers', () => {
    const asked: ObservationId[] = [];
    const facts: Partial<Record<ObservationId, string>> = {};
    const askable = observationIds.filter((id) => observations[id].seen !== 'worked-out');
    for (
      let next = factsStillToAsk(facts, planned, askable)[0];
      next;
      next = factsStillToAsk(facts, planned, askable)[0]
    ) {
      asked.push(next);
      facts[next] = next in plain ? plain[next as keyof typeof plain] : 'unknown';
    }
    expect(asked.length).toBeLessThanOrEqual(12);
    expect(asked.filter((id) => /heater|light|control-(?!wanted)/.test(id))).toEqual([]);
  });
});

describe('words and sources', () => {
  const entries = Object.entries({
    ...powerRules,
    ...boxRules,
    ...canadianBoxRules,
    ...circuitLimits,
    ...takeOffAllowances,
    ...framing,
    ...tapeEvidence,
    ...ductSealants,
  });

  it('are short sentences that end, without exclamation', () => {
    for (const [id, { says }] of entries) {
      expect(says, id).toMatch(/^[A-Z0-9].*\.$/s);
      expect(says, id).not.toContain('!');
      expect(says.length, id).toBeLessThanOrEqual(200);
    }
    for (const [id, { whenUnknown }] of rules) if (whenUnknown) expect(whenUnknown.says, id).toMatch(/^[A-Z].*\.$/s);
    for (const id of observationIds) {
      expect(observations[id].prompt, id).toMatch(/^[A-Z]/);
      expect(observations[id].why, id).toMatch(/\.$/);
      expect(observations[id].whenUnknown, id).toMatch(/^Taken as .*\.$/);
    }
  });

  it('never call a hazard safe', () => {
    for (const [id, { says }] of entries) expect(says, id).not.toMatch(/\bis safe\b|\bsafe to\b/i);
  });

  it('mark as unverified whatever rests on memory, common practice or own working', () => {
    const cited = [
      ...entries.map(([id, entry]) => [id, entry] as const),
      ...Object.entries({ ...motorFullLoad, ...electricalCodeEditions, ...canadianConductorVolumes }),
      ...standardBoxes.map((box) => [box.id, box] as const),
    ];
    for (const [id, { source, verified }] of cited) {
      if (['memory', 'common practice', 'own working'].includes(sources[source].kind)) expect(verified, id).toBe(false);
    }
  });

  it('use the years of the electrical code and not those of the building code', () => {
    expect(Object.keys(electricalCodeEditions)).toEqual(['2014', '2017', '2020', '2023', '2026']);
  });

  it('rank sealing without promising a lifetime', () => {
    const ranked = Object.values(ductSealants).map(({ rank }) => rank);
    expect(ranked).toEqual([1, 2, 3, 4]);
    expect(ductSealants['foil-tape'].marks).toEqual(['181B-FX']);
    for (const { carriesOver, says } of Object.values(tapeEvidence)) {
      if (/days|months|minutes/.test(says)) expect(carriesOver, says).toBe(false);
    }
  });
});
