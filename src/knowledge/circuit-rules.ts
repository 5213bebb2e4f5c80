import { z } from 'zod';
import circuitFile from '../../knowledge/electrical/circuit-rules.json' with { type: 'json' };
import controlFile from '../../knowledge/electrical/control-rules.json' with { type: 'json' };
import observationsFile from '../../knowledge/electrical/observations.json' with { type: 'json' };
import whoFile from '../../knowledge/electrical/who-decides.json' with { type: 'json' };
import { checked } from './checked.ts';
import { citationFields, type sourceKinds, sources } from './sources.ts';

/** When a thing can be seen or a rule be used, in the order of a job. */
export const powerStages = ['plan', 'isolate', 'box-open', 'check'] as const;
export type PowerStage = (typeof powerStages)[number];

const observationSchema = z.strictObject({
  stage: z.enum(powerStages),
  /**
   * Where the answer comes from. `opened-box`: only from a box proven dead, never opened to find out. `worked-out`: from
   * numbers, not asked.
   */
  seen: z.enum(['asked', 'label', 'room', 'attic', 'panel', 'opened-box', 'tools', 'worked-out']),
  prompt: z.string().max(100),
  /** At most 100 characters, for a list of options. */
  brief: z.string().max(100),
  why: z.string(),
  options: z.array(z.strictObject({ id: z.string(), label: z.string().max(80) })).min(2),
  /** What "don't know" is taken for. */
  whenUnknown: z.string(),
});

export type ObservationId = keyof typeof observationsFile;
export type Observation = z.output<typeof observationSchema>;

/** Everything the power rules read, in the order it is asked. */
export const observations = checked(
  'knowledge/electrical/observations.json',
  z.record(z.string(), observationSchema),
  observationsFile,
) as Readonly<Record<ObservationId, Observation>>;

export const observationIds = Object.keys(observations) as readonly ObservationId[];

/** The observations that can be asked while the job is planned, in the order of the knowledge. */
export const plannedObservations = observationIds.filter(
  (id) => observations[id].stage === powerStages[0] && observations[id].seen !== 'worked-out',
);

const isObservation = (id: string): id is ObservationId => Object.hasOwn(observationsFile, id);

const weights = z.enum(['stop', 'caution', 'advice']);

const ruleSchema = z
  .strictObject({
    topic: z.enum([
      'wet-zone',
      'insulation',
      'circuit',
      'heater',
      'switch-box',
      'control',
      'control-rating',
      'box-space',
      'cable',
      'wire-temperature',
      'ground',
      'old-wiring',
      'safe-work',
      'method',
      'function-check',
    ]),
    /** The first stage at which everything the rule reads can be known. */
    stage: z.enum(powerStages),
    /** Observations and the answers that count, all of which must hold. None: the rule always speaks. */
    applies: z.record(z.string(), z.array(z.string()).min(1)),
    weight: weights,
    /** How the rule speaks while an answer is missing. */
    whenUnknown: z.strictObject({ weight: weights, says: z.string() }).optional(),
    decides: z.enum(['licensed-electrician', 'qualified-person', 'lead', 'apprentice']),
    says: z.string(),
    ...citationFields,
  })
  .superRefine((rule, { addIssue }) => {
    const wrong = (path: string, message: string) => addIssue({ code: 'custom', path: [path], message });
    for (const [fact, values] of Object.entries(rule.applies)) {
      const observation = isObservation(fact) ? observations[fact] : undefined;
      if (!observation) {
        wrong('applies', `${fact} is no observation in knowledge/electrical/observations.json`);
        continue;
      }
      const strange = values.filter((value) => !observation.options.some(({ id }) => id === value));
      if (strange.length > 0) wrong('applies', `${strange.join(', ')} is no answer to ${fact}`);
      if (powerStages.indexOf(observation.stage) > powerStages.indexOf(rule.stage)) {
        wrong('stage', `${fact} cannot be known yet at this stage`);
      }
    }
    const asks = Object.keys(rule.applies).length > 0;
    if (rule.weight === 'stop' && !asks) wrong('weight', 'a stop that always speaks stops every job; use caution');
    if (rule.weight === 'stop' && !rule.whenUnknown) wrong('whenUnknown', 'a stop must say what not knowing means');
  });

export type PowerRule = z.output<typeof ruleSchema>;
type CircuitRuleId = keyof typeof circuitFile;
type ControlRuleId = keyof typeof controlFile;
export type PowerRuleId = CircuitRuleId | ControlRuleId;

/** Rules on circuits, boxes, grounds, old wiring and safe work. */
const circuitRules = checked(
  'knowledge/electrical/circuit-rules.json',
  z.record(z.string(), ruleSchema),
  circuitFile,
) as Readonly<Record<CircuitRuleId, PowerRule>>;

/** Rules on switches, timers and sensors. */
const controlRules = checked(
  'knowledge/electrical/control-rules.json',
  z.record(z.string(), ruleSchema),
  controlFile,
) as Readonly<Record<ControlRuleId, PowerRule>>;

/** Every power rule, by id. */
export const powerRules: Readonly<Record<PowerRuleId, PowerRule>> = { ...circuitRules, ...controlRules };

/** The rules that can be used at one stage of the job, and no others. */
export const powerRulesAt = (stage: PowerStage): Readonly<Partial<Record<PowerRuleId, PowerRule>>> =>
  Object.fromEntries(Object.entries(powerRules).filter(([, rule]) => rule.stage === stage));

/** Who decides on a rule, and the sentence that hands the decision over. */
export const whoDecides = checked(
  'knowledge/electrical/who-decides.json',
  z.strictObject({
    'licensed-electrician': z.strictObject({ label: z.string(), says: z.string() }),
    'qualified-person': z.strictObject({ label: z.string(), says: z.string() }),
    lead: z.strictObject({ label: z.string(), says: z.string() }),
    apprentice: z.strictObject({ label: z.string(), says: z.string() }),
  }),
  whoFile,
);

/** What a rule rests on: the code itself, an agency, a forum, memory. To be said beside every stop. */
export const restsOn = (rule: PowerRule): (typeof sourceKinds)[number] => sources[rule.source].kind;

const answersTo: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  observationIds.map((id) => [id, new Set(observations[id].options.map((option) => option.id))]),
);

/**
 * Facts of a job sheet as the rules may read them: only observations, and `unknown` wherever the answer is none of those
 * listed, so that an old or misspelt answer never silences a rule.
 */
export const powerFacts = (
  facts: Readonly<Record<string, string | undefined>>,
): Readonly<Partial<Record<ObservationId, string>>> =>
  Object.fromEntries(
    Object.entries(facts).flatMap(([id, answer]) =>
      !isObservation(id) || answer === undefined ? [] : [[id, answersTo.get(id)?.has(answer) ? answer : 'unknown']],
    ),
  );
