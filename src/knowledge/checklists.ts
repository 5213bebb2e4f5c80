import { z } from 'zod';
import listsFile from '../../knowledge/checklists/lists.json' with { type: 'json' };
import rulesFile from '../../knowledge/checklists/rules.json' with { type: 'json' };
import close from '../../knowledge/checklists/steps/close.json' with { type: 'json' };
import duct from '../../knowledge/checklists/steps/duct.json' with { type: 'json' };
import hazards from '../../knowledge/checklists/steps/hazards.json' with { type: 'json' };
import isolate from '../../knowledge/checklists/steps/isolate.json' with { type: 'json' };
import mount from '../../knowledge/checklists/steps/mount.json' with { type: 'json' };
import opened from '../../knowledge/checklists/steps/opened.json' with { type: 'json' };
import opening from '../../knowledge/checklists/steps/opening.json' with { type: 'json' };
import plan from '../../knowledge/checklists/steps/plan.json' with { type: 'json' };
import protect from '../../knowledge/checklists/steps/protect.json' with { type: 'json' };
import remedy from '../../knowledge/checklists/steps/remedy.json' with { type: 'json' };
import remove from '../../knowledge/checklists/steps/remove.json' with { type: 'json' };
import shop from '../../knowledge/checklists/steps/shop.json' with { type: 'json' };
import survey from '../../knowledge/checklists/steps/survey.json' with { type: 'json' };
import test from '../../knowledge/checklists/steps/test.json' with { type: 'json' };
import visit from '../../knowledge/checklists/steps/visit.json' with { type: 'json' };
import wire from '../../knowledge/checklists/steps/wire.json' with { type: 'json' };
import { BadKnowledge, checked } from './checked.ts';
import { type Checklist, type ChecklistStep, problemsOfList, type WalkRules } from './checklist.ts';
import { conditionSchema } from './checklist-evidence.ts';
import { boxKind, checklistWords, walkFacts } from './checklist-facts.ts';
import { type StepEntry, stepsSchema } from './checklist-steps.ts';
import { citationFields } from './sources.ts';

export type ChecklistId = keyof typeof listsFile;

const stepFiles = {
  survey,
  hazards,
  plan,
  protect,
  isolate,
  opened,
  remove,
  opening,
  duct,
  mount,
  wire,
  test,
  close,
  shop,
  remedy,
  visit,
};

/** A step with what it is called. */
type NamedStep = StepEntry & Pick<ChecklistStep, 'title'>;

/** "sign-dead" is "Sign dead". */
const called = (id: string): string => `${id.charAt(0).toUpperCase()}${id.slice(1).replaceAll('-', ' ')}`;

/** The steps as they are kept, file by file. */
export const stepLibraries = Object.fromEntries(
  Object.entries(stepFiles).map(([name, file]) => {
    const steps = Object.entries(checked(`knowledge/checklists/steps/${name}.json`, stepsSchema, file));
    return [name, Object.fromEntries(steps.map(([id, entry]) => [id, { ...entry, title: called(id) }]))];
  }),
) as Readonly<Record<keyof typeof stepFiles, Readonly<Record<string, NamedStep>>>>;

/** Every step there is, by id, whichever list uses it. */
export const checklistSteps: Readonly<Record<string, NamedStep>> = Object.assign({}, ...Object.values(stepLibraries));

const inMilliseconds = { hour: 3_600_000, min: 60_000 };
const span = z
  .strictObject({ value: z.number().positive(), unit: z.enum(['hour', 'min']), says: z.string(), ...citationFields })
  .transform(({ value, unit, says }) => ({ milliseconds: value * inMilliseconds[unit], says }));

const { deadProof, lateEntry, leaving } = checked(
  'knowledge/checklists/rules.json',
  z.strictObject({
    deadProof: z.strictObject({ idle: span, age: span }),
    lateEntry: span,
    leaving: z.strictObject({ says: z.string().endsWith('.'), ...citationFields }),
  }),
  rulesFile,
);

const rules: WalkRules = { ...deadProof, late: lateEntry, leaving: leaving.says };

const listSchema = z.strictObject({
  name: z.string(),
  says: z.string().endsWith('.'),
  opens: z.array(boxKind),
  stages: z
    .array(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        /** "all": every step of the file of this name, in its order. */
        steps: z.union([z.literal('all'), z.array(z.string()).min(1)]),
        when: z.array(conditionSchema).default([]),
      }),
    )
    .min(1),
  /** Needs that this list leaves out on purpose, and the step that stands in for them. */
  without: z.record(z.string(), z.strictObject({ because: z.string().endsWith('.'), instead: z.string().optional() })),
});

type ListEntry = z.output<typeof listSchema>;
type Stage = ListEntry['stages'][number];

const idsOf = ({ id, steps }: Stage): readonly string[] =>
  steps === 'all' ? Object.keys(stepLibraries[id as keyof typeof stepLibraries] ?? {}) : steps;

function stepOf(id: string, stage: Stage, { without }: ListEntry): ChecklistStep {
  const entry = checklistSteps[id];
  if (!entry) throw new BadKnowledge('knowledge/checklists/lists.json', [`${stage.id}: there is no step ${id}`]);
  const needs = entry.needs.flatMap((need) => {
    const left = without[need];
    return left ? (left.instead ? [left.instead] : []) : [need];
  });
  return { ...entry, id, stage: stage.id, needs, when: [...stage.when, ...entry.when] };
}

function checklistOf(id: ChecklistId, entry: ListEntry): Checklist {
  const { name, says, opens, stages } = entry;
  const list: Checklist = {
    id,
    language: 'english',
    name,
    says,
    opens,
    stages: stages.map((stage) => ({ id: stage.id, title: stage.title })),
    steps: stages.flatMap((stage) => idsOf(stage).map((step) => stepOf(step, stage, entry))),
    rules,
    facts: walkFacts,
    words: checklistWords,
  };
  const problems = problemsOfList(list, Object.keys(entry.without));
  if (problems.length > 0) throw new BadKnowledge(`knowledge/checklists/lists.json › ${id}`, problems);
  return list;
}

const lists = checked('knowledge/checklists/lists.json', z.record(z.string(), listSchema), listsFile);

/** The lists there are: the whole swap, and the short ones made from its steps. */
export const checklists = Object.fromEntries(
  Object.entries(lists).map(([id, entry]) => [id, checklistOf(id as ChecklistId, entry)]),
) as Readonly<Record<ChecklistId, Checklist>>;
