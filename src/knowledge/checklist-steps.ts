import { z } from 'zod';
import { conditionSchema, type Part, partSchema } from './checklist-evidence.ts';
import { boxKind, gear, signer, tool } from './checklist-facts.ts';
import { citationFields } from './sources.ts';

/** What can go wrong at a step. Anything but `none` can never be overridden. */
const risks = [
  'none',
  'electrical',
  'hazard',
  'fall',
  'fire-separation',
  'combustion',
  'wet-place',
  'heater',
  'shared-duct',
  'insulation-contact',
  'indoor-discharge',
] as const;

/** What ends a proof that something is dead. `idle` and `age` are spans of time, see knowledge/checklists/rules.json. */
export const lapseCauses = ['pause', 'new-day', 'new-worker', 'idle', 'age'] as const;
export type LapseCause = (typeof lapseCauses)[number];

const sentence = (most: number) => z.string().endsWith('.').max(most);

const stepFields = z.strictObject({
  /** The short code people call it by: E04. */
  code: z.string(),
  do: sentence(150),
  lookFor: sentence(200),
  why: sentence(150),
  caution: sentence(150).optional(),
  evidence: z.array(partSchema),
  signers: z.array(signer).min(1),
  /** Where one of these holds, only its signers may sign. */
  stricter: z
    .array(z.strictObject({ when: z.array(conditionSchema).min(1), signers: z.array(signer).min(1) }))
    .default([]),
  /** All must hold for the step to be on the list. */
  when: z.array(conditionSchema).default([]),
  /** Steps that have to be closed before. Where one of them is opened again, so is this. */
  needs: z.array(z.string()).default([]),
  /** Done once for each opened box, or by each person for himself. */
  per: z.enum(['box', 'person']).optional(),
  /** Boxes somebody's hands are in: each has to be proven dead at that moment. */
  touches: z.array(z.union([boxKind, z.literal('this-box')])).default([]),
  /** Done before anything is proven dead, as on live wires. */
  treatAsLive: z.boolean().default(false),
  /** Closing it proves its box dead. */
  proves: z.boolean().default(false),
  /** Part of locking and proving: once the power is back on purpose, it has served. */
  isolation: z.boolean().default(false),
  restoresPower: z.boolean().default(false),
  lapses: z.array(z.enum(lapseCauses)).default([]),
  /** Steps that closing this one opens again. */
  reopens: z.array(z.string()).default([]),
  /** A lead who signs it confirms every fact reported so far. */
  confirms: z.boolean().default(false),
  /** Signing it closes the list. */
  closes: z.boolean().default(false),
  /** Blocks everything behind it until signed. */
  hold: z.boolean(),
  /** A lead may pass it with a reason. */
  overridable: z.boolean(),
  risk: z.enum(risks),
  tools: z.array(tool).default([]),
  gear: z.array(gear).default([]),
  /** What to do when a value is out of range. */
  onFail: z.string().endsWith('.').optional(),
  ...citationFields,
});

const stepSchema = stepFields.superRefine((step, { addIssue }) => {
  for (const problem of problemsOf(step)) addIssue({ code: 'custom', message: problem });
});

type Entry = z.output<typeof stepFields>;

function* problemsOf(step: Entry): Generator<string> {
  const { hold, overridable, risk, signers, touches, per, evidence } = step;
  const everybody = signers.includes('anyone');
  const atWires = touches.length > 0 || step.treatAsLive || step.proves || step.isolation;
  if (hold && overridable) yield 'a hold is signed or open, never overridden';
  if (hold && everybody) yield 'a hold names who may sign it';
  if (risk !== 'none' && overridable) yield `a step with the risk ${risk} is never overridden`;
  if (atWires && risk !== 'electrical') yield 'a step at wires has the risk electrical';
  if ((step.treatAsLive || step.proves) && everybody) yield 'work on what is not proven dead is not for anyone';
  if (step.lapses.length > 0 && !step.isolation) yield 'only steps of locking and proving lapse by time';
  if (step.proves && (per !== 'box' || !hold)) yield 'a proof is a hold for one box';
  if (touches.includes('this-box') && per !== 'box') yield '"this-box" is for steps done once for each box';
  if (step.closes && !hold) yield 'the step that closes the list is a hold';
  yield* problemsOfEvidence(evidence, step);
}

function* problemsOfEvidence(evidence: readonly Part[], { when, per }: Entry): Generator<string> {
  const seen = new Map<string, Part>();
  for (const part of evidence) {
    const ids = part.kind === 'pair' ? [part.id, part.first.id, part.second.id] : [part.id];
    for (const id of ids) {
      if (seen.has(id)) yield `${id} is used twice`;
      seen.set(id, part);
    }
    if (part.kind === 'number' && part.mostOf && seen.get(part.mostOf.part)?.kind !== 'number') {
      yield `${part.id}: mostOf names no earlier number`;
    }
    yield* problemsOfBeside(part, evidence);
    if (part.onlyIf) {
      const asked = seen.get(part.onlyIf.part);
      const known = asked?.kind === 'choice' ? asked.options.map(({ id }) => id) : [];
      if (!part.onlyIf.is.every((value) => known.includes(value))) yield `${part.id}: onlyIf names no earlier answer`;
    }
    if (part.kind !== 'choice') continue;
    if (part.records && when.some(({ fact }) => fact === part.records)) {
      yield `${part.id} records a fact its own step hangs on: the step would take itself off the list`;
    }
    if (part.options.some(({ byOthers }) => byOthers) && per !== 'person')
      yield `${part.id}: byOthers is for each person's own steps`;
  }
}

/** What is wrong with how one part of an answer is held against the others. */
function* problemsOfBeside(part: Part, evidence: readonly Part[]): Generator<string> {
  const isNumber = (id: string) => evidence.some((each) => each.kind === 'number' && each.id === id);
  if (part.kind === 'number' && part.leastBeside && !isNumber(part.leastBeside.part)) {
    yield `${part.id}: leastBeside names no number`;
  }
  if (part.kind === 'number' && part.agrees) {
    const { part: other, beside } = part.agrees;
    const choice = evidence.find(({ id }) => id === other);
    const known = choice?.kind === 'choice' ? choice.options.map(({ id }) => id) : [];
    if (!Object.keys(beside).every((answer) => known.includes(answer))) yield `${part.id}: agrees names no answer`;
  }
  if (part.kind === 'number' && part.worked && !part.optional) yield `${part.id}: what nobody types cannot be missed`;
  if (part.kind !== 'text' || !part.neededBelow) return;
  const { part: less, than } = part.neededBelow;
  if (!isNumber(less) || !isNumber(than)) yield `${part.id}: neededBelow names no number`;
  if (!part.optional) yield `${part.id}: what is needed only below something is optional else`;
}

/** The schema of one file of steps. */
export const stepsSchema = z.record(z.string(), stepSchema);

export type StepEntry = z.output<typeof stepSchema>;
