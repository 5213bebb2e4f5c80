import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import { type WalkFactId, walkFacts } from '#knowledge/checklist-facts.ts';
import type { ChecklistId } from '#knowledge/checklists.ts';
import { accepts } from '#walkthrough/replay.ts';
import { buildingCodeEdition } from '../questions/codes.ts';
import { languageAt } from '../words/swap.ts';
import { remark } from './plain-replies.ts';
import { openFacts } from './swap-facts.ts';
import { listsOf, type OpenWalk, startedEvent, toldOf, type Walker, walkOn } from './swap-walk.ts';

type SheetFact = ReturnType<ReturnType<Desk['store']['newestFacts']>['get']>;

const factIds = Object.keys(walkFacts) as readonly WalkFactId[];

/** The answers a fact of the sheet holds: one, several, or none. */
function answersIn(fact: NonNullable<SheetFact>): readonly string[] {
  if (fact.how === 'unknown') return [];
  const value = Array.isArray(fact.value) ? fact.value : [fact.value];
  const said = value.filter((each) => typeof each === 'string');
  return Array.isArray(fact.value) && said.length === 0 ? ['none'] : said;
}

/** What the sheet knows that decides steps: words that lighten the list go in by the name of whoever said them. */
function factsOnSheet(desk: Desk, sheet: number) {
  const known = desk.store.newestFacts(sheet);
  const told = factIds.flatMap((id) => {
    const fact = known.get(id);
    const answers = fact ? answersIn(fact) : [];
    return fact && answers.length > 0 ? [{ id, fact, answers }] : [];
  });
  const lightens = ({ id, answers }: (typeof told)[number]) =>
    answers.every((answer) => walkFacts[id].safe.includes(answer));
  const heavy = told.filter((each) => !lightens(each)).map(({ id, answers }) => [id, answers] as const);
  // What the crew has set for all its jobs counts; what somebody typed on this sheet goes by who said it.
  const edition = known.has(buildingCodeEdition.id) ? undefined : desk.recall(buildingCodeEdition);
  return {
    facts: {
      ...(edition?.known ? { 'building-code-edition': String(edition.value) } : {}),
      ...Object.fromEntries(heavy),
    },
    reported: told.filter(lightens),
  };
}

/** A list that was begun, and who said what did not count. */
export interface Begun {
  readonly walk: OpenWalk;
  readonly findings: readonly Finding[];
}

/** Where this list goes on in the records; after a closed one, a new one begins. */
function nameFor(desk: Desk, sheet: number, id: ChecklistId): { readonly name: string; readonly open: boolean } {
  const earlier = listsOf(desk, sheet).filter((list) => list === id || list.startsWith(`${id}~`));
  const open = earlier.find((list) => walkOn(desk, sheet, list)?.state.closed === null);
  if (open) return { name: open, open: true };
  return { name: earlier.length === 0 ? id : `${id}~${earlier.length + 1}`, open: false };
}

/** Begins a list from what the sheet knows, or finds it open already. Asks nothing. A list is begun whole or not at all. */
export const begin = (desk: Desk, walker: Walker, id: ChecklistId): Begun =>
  desk.store.together(() => begun(desk, walker, id));

function begun(desk: Desk, walker: Walker, id: ChecklistId): Begun {
  const sheet = desk.store.currentSheet(desk.speaker).number;
  const { name, open } = nameFor(desk, sheet, id);
  const replayed = (): OpenWalk => walkOn(desk, sheet, name, languageAt(desk)) as OpenWalk;
  if (open) {
    const walk = replayed();
    return {
      walk,
      findings: [remark('open-already', 'advice', toldOf(walk).openAlready)],
    };
  }
  const { facts, reported } = factsOnSheet(desk, sheet);
  desk.store.addWalkEvent(sheet, {
    id: crypto.randomUUID(),
    list: name,
    step: null,
    what: startedEvent,
    value: { facts },
    who: walker.who,
  });
  const unheard: string[] = [];
  const entries = [
    ...reported.map(({ id: fact, fact: { who }, answers }) => ({
      what: 'fact',
      value: { fact, value: answers[0] ?? 'unknown' },
      who,
      fact: fact as WalkFactId | null,
    })),
    { what: 'joined', value: null, who: walker.who, fact: null },
  ];
  for (const { fact, ...entry } of entries) {
    const walk = replayed();
    const event = { ...entry, id: crypto.randomUUID(), step: null };
    const verdict = accepts(
      walk.state,
      { ...event, standing: desk.store.standing(entry.who), at: walk.clock.now },
      walk.clock,
    );
    if ('refused' in verdict)
      unheard.push(fact === null ? verdict.refused : toldOf(walk).notInCrew(walk.checklist.facts[fact].prompt));
    else desk.store.addWalkEvent(sheet, { ...event, list: name });
  }
  return {
    walk: replayed(),
    findings: unheard.map((says) => remark('not-heard', 'advice', says)),
  };
}

/** What a phone holds beside the rest of the page; those that decide most come first. */
const mostShown = 5;

/** Facts that nobody counts as known, each taken as the dangerous answer. */
export function unknownFindings(walk: OpenWalk): readonly Finding[] {
  const open = openFacts(walk);
  const told = toldOf(walk);
  const { facts } = walk.checklist;
  if (open.length === 0) return [];
  return [
    {
      ...remark('not-known', 'caution', told.notKnownYet(open.length)),
      table: {
        ...told.notKnownTable,
        rows: [
          ...open.slice(0, mostShown).map((fact) => [facts[fact].prompt, facts[fact].whenUnknown]),
          ...(open.length > mostShown ? [[told.andMore(open.length - mostShown), told.dangerousEach]] : []),
        ],
      },
    },
  ];
}
