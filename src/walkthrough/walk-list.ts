import type { Checklist, ChecklistStep } from '#knowledge/checklist.ts';
import type { BoxKind, GearId, ToolId } from '#knowledge/checklist-facts.ts';
import {
  factsBehind,
  type Known,
  type ListedStep,
  type Place,
  partUnder,
  signersUnder,
  titleOf,
} from './listed-step.ts';
import type { Box, Person } from './walk-event.ts';
import { conditionHolds, type WalkFacts } from './walk-facts.ts';

export interface WalkInputs {
  readonly checklist: Checklist;
  readonly facts: WalkFacts;
  /** Every box that will be opened. One the steps need and nobody named is put in. */
  readonly boxes: readonly Box<BoxKind>[];
  /** Everybody at work on the site, each with a lock. */
  readonly crew: readonly Person[];
}

/** The list of one job under what is known of it. */
export interface WalkList extends WalkInputs {
  /** The boxes somebody named; `boxes` has the stand-ins as well. */
  readonly named: readonly Box<BoxKind>[];
  /** The steps that are needed, in order. */
  readonly steps: readonly ListedStep[];
  readonly byId: ReadonlyMap<string, ListedStep>;
  readonly count: number;
  /** Those of them that time can end. */
  readonly lapsing: readonly ListedStep[];
  /** Every step there could be for these boxes and this crew, needed or not. */
  readonly all: readonly ListedStep[];
}

/**
 * The steps a job needs: those whose conditions hold, and those whose conditions nobody can rule out. Locking is asked of
 * every person and the proof of being dead of every box, one by one.
 */
export function walkList(inputs: WalkInputs): WalkList {
  const needed = neededSteps(inputs);
  const boxes = withMissingBoxes(inputs, needed);
  return listOf(everyStep({ ...inputs, boxes }), { ...inputs, boxes, named: inputs.boxes }, needed);
}

/** The list after some facts, the boxes or the crew have changed. What did not change is taken over. */
export function relisted(list: WalkList, inputs: WalkInputs, changed: readonly string[]): WalkList {
  const needed = neededSteps(inputs);
  const boxes = withMissingBoxes(inputs, needed);
  const sameBoxes = boxes.length === list.boxes.length && boxes.every((box, index) => box === list.boxes[index]);
  const all =
    sameBoxes && inputs.crew === list.crew
      ? list.all.map((each) =>
          changed.some((fact) => each.behind.has(fact)) ? { ...each, ...under(each, inputs) } : each,
        )
      : everyStep({ ...inputs, boxes });
  return listOf(all, { ...inputs, boxes: sameBoxes ? list.boxes : boxes, named: inputs.boxes }, needed);
}

/** What has to be there for the steps of a list: tools, and what people wear. */
export function kitFor({ steps }: WalkList): { readonly tools: readonly ToolId[]; readonly gear: readonly GearId[] } {
  return {
    tools: [...new Set(steps.flatMap(({ step }) => step.tools))],
    gear: [...new Set(steps.flatMap(({ step }) => step.gear))],
  };
}

const neededSteps = ({ checklist, facts }: WalkInputs): ReadonlySet<ChecklistStep> =>
  new Set(checklist.steps.filter(({ when }) => when.every((each) => conditionHolds(each, facts, checklist.facts))));

function listOf(
  all: readonly ListedStep[],
  inputs: WalkInputs & Pick<WalkList, 'named'>,
  needed: ReadonlySet<ChecklistStep>,
): WalkList {
  const steps = all.filter(({ step }) => needed.has(step));
  return {
    all,
    steps,
    byId: new Map(steps.map((each) => [each.id, each])),
    count: steps.length,
    lapsing: steps.filter(({ step }) => step.lapses.length > 0),
    ...inputs,
  };
}

function withMissingBoxes(
  { boxes, checklist }: WalkInputs,
  needed: ReadonlySet<ChecklistStep>,
): readonly Box<BoxKind>[] {
  const found = [...boxes];
  for (const kinds of [checklist.opens, ...[...needed].map(({ touches }) => touches)]) {
    const first = wantedKind(found, kinds);
    if (first !== undefined) found.push(standIn(first, found, checklist));
  }
  return found;
}

/** The kind of box that steps need and nobody named. */
function wantedKind(found: readonly Box<BoxKind>[], kinds: readonly (BoxKind | 'this-box')[]): BoxKind | undefined {
  const first = kinds[0];
  return first === undefined || first === 'this-box' || found.some(({ kind }) => kinds.includes(kind))
    ? undefined
    : first;
}

/** What stands in for a box that is opened and that nobody named. One for each kind, so that it stays the same box. */
const standIn = (kind: BoxKind, found: readonly Box<BoxKind>[], { words }: Checklist): Box<BoxKind> => ({
  id: found.some(({ id }) => id === kind) ? `${kind}-unnamed` : kind,
  kind,
  name: words.boxes[kind],
});

/** What the facts decide of a step that is on the list. */
const under = ({ step }: Place, known: Known): Pick<ListedStep, 'parts' | 'signers'> => ({
  parts: step.evidence.map((part) => partUnder(part, known)),
  signers: signersUnder(step, known),
});

function everyStep(inputs: WalkInputs): ListedStep[] {
  const { checklist, boxes, crew } = inputs;
  const places = checklist.steps.flatMap((step): Place[] => {
    if (step.per === 'box') return boxes.map((box) => ({ step, box, person: null, id: `${step.id}@${box.id}` }));
    if (step.per === 'person') {
      return crew.map((person) => ({ step, box: null, person, id: `${step.id}@${person.who}` }));
    }
    return [{ step, box: null, person: null, id: step.id }];
  });
  const byStep = new Map<string, Place[]>();
  for (const place of places) byStep.set(place.step.id, [...(byStep.get(place.step.id) ?? []), place]);
  const instances = (from: Place, ids: readonly string[]): string[] =>
    ids.flatMap((id) => (byStep.get(id) ?? []).filter((place) => belongTogether(from, place)).map((place) => place.id));

  const needs = new Map(places.map((place) => [place.id, instances(place, place.step.needs)]));
  const neededBy = new Map<string, string[]>(places.map(({ id }) => [id, []]));
  for (const [id, wanted] of needs) for (const need of wanted) neededBy.get(need)?.push(id);

  const locksOn = places.findIndex(({ step }) => step.per === 'person' && step.isolation);
  const locksOff = places.findIndex(({ step }) => step.per === 'person' && !step.isolation);
  return places.map((place, index) => ({
    index,
    title: titleOf(place),
    needs: needs.get(place.id) ?? [],
    neededBy: neededBy.get(place.id) ?? [],
    reopens: instances(place, place.step.reopens),
    touches: boxes
      .filter((box) => place.step.touches.some((kind) => (kind === 'this-box' ? box === place.box : kind === box.kind)))
      .map(({ id }) => id),
    betweenLocks: locksOn >= 0 && index > locksOn && index < locksOff && place.step.per !== 'person',
    behind: factsBehind(place.step),
    ...under(place, inputs),
    ...place,
  }));
}

/** Steps done for each box or person hang together within the same box or person, and with all steps done but once. */
const belongTogether = (one: Place, other: Place): boolean =>
  (!one.box || !other.box || one.box.id === other.box.id) &&
  (!one.person || !other.person || one.person.who === other.person.who);
