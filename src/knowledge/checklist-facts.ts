import { z } from 'zod';
import factsFile from '../../knowledge/checklists/facts.json' with { type: 'json' };
import wordsFile from '../../knowledge/checklists/words.json' with { type: 'json' };
import { checked } from './checked.ts';
import { type ObservationId, observationIds, observations } from './circuit-rules.ts';

export type WalkFactId = keyof typeof factsFile;
export type Signer = keyof typeof wordsFile.signers;
export type ToolId = keyof typeof wordsFile.tools;
export type GearId = keyof typeof wordsFile.gear;
/** What is opened on a job, each to be proven dead by itself. */
export type BoxKind = keyof typeof wordsFile.boxes;

const keyOf = <Key extends string>(names: Readonly<Record<Key, string>>, what: string) =>
  z.string().refine((id): id is Key => Object.hasOwn(names, id), `is no ${what} in knowledge/checklists/words.json`);

export const signer = keyOf<Signer>(wordsFile.signers, 'signer');
export const tool = keyOf<ToolId>(wordsFile.tools, 'tool');
export const gear = keyOf<GearId>(wordsFile.gear, 'gear');
export const boxKind = keyOf<BoxKind>(wordsFile.boxes, 'box');

/** How signers, boxes, tools and protective gear are called. */
export const checklistWords = checked(
  'knowledge/checklists/words.json',
  z.strictObject({
    signers: z.record(signer, z.string()),
    boxes: z.record(boxKind, z.string()),
    tools: z.record(tool, z.string()),
    gear: z.record(gear, z.string()),
  }),
  wordsFile,
);

const option = z.strictObject({ id: z.string(), label: z.string().max(80) });

/** Who may make an answer count that lightens the list. */
const clearing = { safe: z.array(z.string()), clearedBy: z.array(signer).min(1) };

const ownFact = z.strictObject({
  prompt: z.string().max(100),
  why: z.string().endsWith('.'),
  options: z.array(option).min(2),
  whenUnknown: z.string().endsWith('.'),
  ...clearing,
});
const observedFact = z.strictObject({ observation: z.literal(true), ...clearing });

/** Something about the job that decides which steps are needed. Not knowing it is always possible, and always counts. */
export interface WalkFact {
  readonly prompt: string;
  readonly why: string;
  readonly options: readonly { readonly id: string; readonly label: string }[];
  /** What not knowing is taken for. */
  readonly whenUnknown: string;
  /** Answers that take a precaution off the list. Said by anyone else than `clearedBy`, they stay unknown. */
  readonly safe: readonly string[];
  readonly clearedBy: readonly Signer[];
}

const isObservation = (id: string): id is ObservationId => (observationIds as readonly string[]).includes(id);

const factSchema = z.union([ownFact, observedFact]);

const files = checked(
  'knowledge/checklists/facts.json',
  z.record(z.string(), factSchema).superRefine((facts, { addIssue }) => {
    for (const [id, fact] of Object.entries(facts)) {
      const wrong = (message: string) => addIssue({ code: 'custom', path: [id], message });
      if ('observation' in fact !== isObservation(id)) {
        wrong('an id of knowledge/electrical/observations.json takes its words from there, and no other does');
        continue;
      }
      const options = ('observation' in fact ? observations[id as ObservationId] : fact).options.map(({ id }) => id);
      if (options.includes('unknown')) wrong('"unknown" is always possible and is not an option');
      for (const value of fact.safe) if (!options.includes(value)) wrong(`${value} is no answer`);
    }
  }),
  factsFile,
);

/** Every fact the lists read, by id: those of the power rules in their words, the others in their own. */
export const walkFacts = Object.fromEntries(
  Object.entries(files).map(([id, { safe, clearedBy, ...own }]): [string, WalkFact] => {
    if ('options' in own) return [id, { ...own, safe, clearedBy }];
    const { prompt, why, options, whenUnknown } = observations[id as ObservationId];
    return [id, { prompt, why, options, whenUnknown, safe, clearedBy }];
  }),
) as Readonly<Record<WalkFactId, WalkFact>>;

export const isWalkFact = (id: string): id is WalkFactId => Object.hasOwn(factsFile, id);

/** Whether a fact can have this value. Nobody knowing is always possible. */
export const canBe = (fact: WalkFactId, value: string): boolean =>
  value === 'unknown' || walkFacts[fact].options.some(({ id }) => id === value);
