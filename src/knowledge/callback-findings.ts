import { z } from 'zod';
import findingsFile from '../../knowledge/causes/findings.json' with { type: 'json' };
import variablesFile from '../../knowledge/causes/variables.json' with { type: 'json' };
import { callbackTrades, checkPlaces, checkPowers, type DangerId, isDanger } from './callback-scale.ts';
import { checked } from './checked.ts';

export type CallbackFindingId = keyof typeof findingsFile;
export type VariableId = keyof typeof variablesFile;

export const isCallbackFinding = (id: string): id is CallbackFindingId => Object.hasOwn(findingsFile, id);
export const isVariable = (id: string): id is VariableId => Object.hasOwn(variablesFile, id);

const chance = z.number().gt(0).lt(1);
const findingId = z.string().refine(isCallbackFinding, 'no such id in knowledge/causes/findings.json');
const variableId = z.string().refine(isVariable, 'no such id in knowledge/causes/variables.json');

/** What a check asks, where from, and how to do it. */
const checkFields = {
  /** At most 100 characters, for a list of choices. */
  question: z.string().max(100).endsWith('?'),
  /** The finding as a few words inside a sentence: "a rattle at grille or ceiling". */
  short: z.string().min(1).max(60),
  from: z.enum(checkPlaces),
  power: z.enum(checkPowers),
  /** Answered from memory or by eye from the floor or the ground: nothing is run, switched or touched for it. */
  leavesAlone: z.boolean().default(false),
  how: z.string().endsWith('.'),
  /** Signs that say the same thing: the strongest counts in full, the others for a share. */
  group: z.string().optional(),
  /** Only possible while a variable has one of these values: no rattle from a wheel that stands still. */
  onlyWhile: z.partialRecord(variableId, z.array(findingId).min(1)).optional(),
  /** False: taken when told, never proposed as the next check. */
  offered: z.boolean().default(true),
};

/** Chances of one variable's values; they sum to one. */
export const distribution = z
  .record(z.string(), chance)
  .refine(
    (chances) => Math.abs(Object.values(chances).reduce((sum, value) => sum + value, 0) - 1) < 1e-9,
    'the chances must sum to one',
  );

const findingSchema = z
  .strictObject({
    ...checkFields,
    kind: z.enum(['yes-no', 'choice', 'number']),
    who: z.enum(callbackTrades).optional(),
    /** How often it is found when the cause has no bearing on it. */
    background: chance.optional(),
    /** Follows from a variable: how often it is found at each of its values. */
    follows: z.partialRecord(variableId, z.partialRecord(findingId, chance)).optional(),
    /** Told of one of several things without saying which. */
    anyOf: z.array(findingId).min(2).optional(),
    variable: variableId.optional(),
    /** Nothing anybody calls about: the wheel turns, the airflow is as it should be. */
    ordinary: z.boolean().default(false),
    danger: z.custom<DangerId>((id) => typeof id === 'string' && isDanger(id), 'no such id in dangers.json').optional(),
    /** The cause whose remedy goes on the repair list when this is seen with one's own eyes. */
    defect: z.string().optional(),
  })
  .refine(
    ({ background, follows, anyOf, variable }) =>
      [background, follows, anyOf, variable].filter((way) => way !== undefined).length === 1,
    'give one of background, follows, anyOf and variable',
  );

const variableSchema = z
  .strictObject({
    ...checkFields,
    /** Which end of the list of values prevails when two causes pull apart: the worse one, or neither. */
    worst: z.enum(['first', 'last', 'none']),
    background: distribution.optional(),
    follows: z.partialRecord(variableId, z.partialRecord(findingId, distribution)).optional(),
  })
  .refine(
    ({ background, follows }) => (background === undefined) !== (follows === undefined),
    'give one of background and follows',
  );

export type CallbackFinding = z.output<typeof findingSchema>;
export type CallbackVariable = z.output<typeof variableSchema>;

/** Everything that can be seen, heard, told or measured on a callback. */
export const callbackFindings = checked(
  'knowledge/causes/findings.json',
  z.record(z.string(), findingSchema),
  findingsFile,
) as Readonly<Record<CallbackFindingId, CallbackFinding>>;

/** Findings of which exactly one is true, with the question that settles them. */
export const callbackVariables = checked(
  'knowledge/causes/variables.json',
  z.record(z.string(), variableSchema),
  variablesFile,
) as Readonly<Record<VariableId, CallbackVariable>>;

/** The findings a variable chooses among, in its own order. */
export const valuesOf = (variable: VariableId): readonly CallbackFindingId[] =>
  (Object.keys(callbackFindings) as CallbackFindingId[]).filter((id) => callbackFindings[id].variable === variable);
