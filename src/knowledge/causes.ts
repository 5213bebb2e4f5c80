import { z } from 'zod';
import airFile from '../../knowledge/causes/air-the-wrong-way.json' with { type: 'json' };
import controlFile from '../../knowledge/causes/control.json' with { type: 'json' };
import noiseFile from '../../knowledge/causes/noise.json' with { type: 'json' };
import patternsFile from '../../knowledge/causes/patterns.json' with { type: 'json' };
import powerFile from '../../knowledge/causes/power.json' with { type: 'json' };
import waterFile from '../../knowledge/causes/water.json' with { type: 'json' };
import weakPullFile from '../../knowledge/causes/weak-pull.json' with { type: 'json' };
import {
  type CallbackFindingId,
  callbackFindings,
  callbackVariables,
  distribution,
  isCallbackFinding,
  isVariable,
  type VariableId,
  valuesOf,
} from './callback-findings.ts';
import {
  type CallbackScale,
  callbackContexts,
  callbackDangers,
  callbackScale,
  callbackTrades,
  type DangerId,
  isContext,
  isDanger,
  signTiers,
} from './callback-scale.ts';
import { checked } from './checked.ts';
import { citationFields, cite } from './sources.ts';

/** A chance for each value of each variable a cause bears on. */
const distributions = z
  .partialRecord(z.string().refine(isVariable, 'no such id in variables.json'), distribution)
  .superRefine((chances, { addIssue }) => {
    for (const [variable, values] of Object.entries(chances)) {
      const expected = isVariable(variable) ? valuesOf(variable) : [];
      const given = Object.keys(values);
      if (given.length !== expected.length || !expected.every((id) => given.includes(id))) {
        addIssue({ code: 'custom', path: [variable], message: `give a chance to each of ${expected.join(', ')}` });
      }
    }
  });

const patterns = checked(
  'knowledge/causes/patterns.json',
  z.record(
    z.string(),
    z
      .strictObject({ means: z.string().endsWith('.'), chances: distributions, ...citationFields })
      .transform((entry) => ({ means: entry.means, chances: entry.chances, citation: cite(entry) })),
  ),
  patternsFile,
);

const sentenceText = z.string().endsWith('.');

const causeSchema = z
  .strictObject({
    name: z.string().min(1),
    /** How often it is behind a callback, against the other causes, before anything is known. */
    prior: z.number().positive(),
    /** How many times likelier each context makes it. */
    contexts: z
      .partialRecord(z.string().refine(isContext, 'no such id in contexts.json'), z.number().positive())
      .default({}),
    /** What it does to airflow, pressure and the wheel, by named pattern; a later one prevails. */
    patterns: z.array(z.string().refine((id) => id in patterns, 'no such id in patterns.json')).default([]),
    /** What it does to them where no pattern says so. */
    chances: distributions.default({}),
    signs: z.partialRecord(z.string().refine(isCallbackFinding, 'no such id in findings.json'), z.enum(signTiers)),
    confirm: sentenceText,
    remedy: sentenceText,
    parts: z.array(z.string()),
    /** Who may do the remedy. */
    who: z.enum(callbackTrades),
    caution: sentenceText.optional(),
    /** It can hurt somebody: what to do until it is ruled out, by id in dangers.json. */
    lifeSafety: z
      .custom<DangerId>((id) => typeof id === 'string' && isDanger(id), 'no such id in dangers.json')
      .optional(),
    /** Not ours to alter: whom it goes to. */
    refer: sentenceText.optional(),
    ...citationFields,
  })
  .transform(({ source, where, verified, patterns: names, chances, ...entry }) => ({
    ...entry,
    chances: Object.assign({}, ...names.map((name) => patterns[name]?.chances), chances) as Readonly<
      Partial<Record<VariableId, Readonly<Record<string, number>>>>
    >,
    citation: cite({ source, where, verified }),
  }));

export type Cause = z.output<typeof causeSchema> & { readonly family: CauseFamily };
export type CauseFamily = keyof typeof families;
export type CauseId =
  | keyof typeof noiseFile
  | keyof typeof weakPullFile
  | keyof typeof waterFile
  | keyof typeof airFile
  | keyof typeof powerFile
  | keyof typeof controlFile;

const families = {
  noise: noiseFile,
  'weak-pull': weakPullFile,
  water: waterFile,
  'air-the-wrong-way': airFile,
  power: powerFile,
  control: controlFile,
};

/** Every cause of a callback, by id, in the order of the complaints. */
export const causes = Object.fromEntries(
  (Object.entries(families) as [CauseFamily, unknown][]).flatMap(([family, file]) =>
    Object.entries(checked(`knowledge/causes/${family}.json`, z.record(z.string(), causeSchema), file)).map(
      ([id, cause]) => [id, Object.freeze({ ...cause, family })],
    ),
  ),
) as Readonly<Record<CauseId, Cause>>;

/** What reasoning about a callback needs to know, handed to it as one. */
export interface CallbackKnowledge {
  readonly findings: Readonly<Record<CallbackFindingId, (typeof callbackFindings)[CallbackFindingId]>>;
  readonly variables: Readonly<Record<VariableId, (typeof callbackVariables)[VariableId]>>;
  readonly causes: Readonly<Record<CauseId, Cause>>;
  readonly contexts: typeof callbackContexts;
  readonly dangers: typeof callbackDangers;
  readonly scale: CallbackScale;
}

export const callbackKnowledge: CallbackKnowledge = {
  findings: callbackFindings,
  variables: callbackVariables,
  causes,
  contexts: callbackContexts,
  dangers: callbackDangers,
  scale: callbackScale,
};
