import type { CallbackFindingId, VariableId } from '#knowledge/callback-findings.ts';
import type { CheckPlace, ContextId } from '#knowledge/callback-scale.ts';
import type { Reasoning } from './reasoning.ts';

/** What a callback has been told so far. Ids are those of findings and contexts; strange ones are named, never fatal. */
export interface Answers {
  readonly seen?: readonly string[];
  readonly notSeen?: readonly string[];
  readonly context?: readonly string[];
  /** Findings, variables or whole places ("attic") that cannot be looked at. */
  readonly cannotCheck?: readonly string[];
  /** True only while the box has been proven dead and nothing has let the proof lapse. */
  readonly deadProven?: boolean;
  /** The farthest place to send anybody: `phone` while the office is on the line. */
  readonly upTo?: CheckPlace;
}

/** One thing the answers tell: that one of some findings is so, or that one finding is not. */
export interface Evidence {
  /** The finding, or the variable whose values were narrowed down. */
  readonly id: string;
  readonly columns: readonly number[];
  readonly seen: boolean;
  readonly group: string | undefined;
}

export interface Understood {
  readonly evidence: readonly Evidence[];
  readonly contexts: readonly ContextId[];
  /** Findings told to be so, with everything they imply. */
  readonly seen: ReadonlySet<CallbackFindingId>;
  /** Everything that need not be asked any more. */
  readonly settled: ReadonlySet<string>;
  readonly strangers: readonly string[];
  /** Answers that contradict one another: none of them counts until somebody says which is right. */
  readonly contradictions: readonly (readonly string[])[];
}

const unique = (ids: readonly string[] | undefined): string[] => [...new Set(ids ?? [])];

/**
 * The answers, sorted out: repeated ones once, vague ones dropped where a precise one was given, and contradictory ones set
 * aside. A set of answers means the same in whatever order they came.
 */
export function understood(answers: Answers, reasoning: Reasoning): Understood {
  const { knowledge, columnOf, findingIds, variableIds, valuesOf } = reasoning;
  const known = (id: string): id is CallbackFindingId => columnOf.has(id);
  const isContext = (id: string): id is ContextId => Object.hasOwn(knowledge.contexts, id);
  const [told, denied, given] = [unique(answers.seen), unique(answers.notSeen), unique(answers.context)];
  const strangers = [...[...told, ...denied].filter((id) => !known(id)), ...given.filter((id) => !isContext(id))];
  const contradictions: string[][] = [];
  const yes = new Set(findingIds.filter((id) => told.includes(id)));
  const no = new Set(findingIds.filter((id) => denied.includes(id)));
  const dropped = (...ids: CallbackFindingId[]) => {
    contradictions.push(ids);
    for (const id of ids) {
      yes.delete(id);
      no.delete(id);
    }
  };

  for (const id of findingIds) if (yes.has(id) && no.has(id)) dropped(id);
  for (const id of findingIds) unfold(id);
  const narrowed = variableIds.flatMap(narrow);
  const byItself = findingIds.filter((id) => knowledge.findings[id].variable === undefined);
  const evidence: Evidence[] = [
    ...byItself.filter((id) => yes.has(id) && !precise(id)).map((id) => evidenceOf(id, true)),
    ...byItself.filter((id) => no.has(id)).map((id) => evidenceOf(id, false)),
    ...narrowed,
  ];
  return {
    evidence,
    contexts: (Object.keys(knowledge.contexts) as ContextId[]).filter((id) => given.includes(id)),
    seen: yes,
    settled: settled(),
    strangers: [...new Set(strangers)],
    contradictions,
  };

  /** "Nothing has come off" denies both ends; "something has come off" is at odds with both ends denied. */
  function unfold(id: CallbackFindingId): void {
    const members = knowledge.findings[id].anyOf;
    if (!members) return;
    const sure = members.filter((member) => yes.has(member));
    if (no.has(id)) {
      if (sure.length > 0) {
        dropped(id);
        return;
      }
      no.delete(id);
      for (const member of members) no.add(member);
    } else if (yes.has(id) && members.every((member) => no.has(member))) {
      dropped(id, ...members);
    }
  }

  function precise(id: CallbackFindingId): boolean {
    return knowledge.findings[id].anyOf?.some((member) => yes.has(member)) ?? false;
  }

  function narrow(variable: (typeof variableIds)[number]): Evidence[] {
    const values = valuesOf.get(variable) ?? [];
    const sure = values.filter((id) => yes.has(id));
    const left = values.filter((id) => !no.has(id));
    if (sure.length > 1 || left.length === 0) {
      dropped(...values.filter((id) => yes.has(id) || no.has(id)));
      return [];
    }
    if (sure.length === 0 && left.length === values.length) return [];
    const kept = sure.length === 1 ? sure : left;
    return [
      {
        id: kept.length === 1 ? (kept[0] as string) : variable,
        columns: kept.map((id) => columnOf.get(id) as number),
        seen: true,
        group: knowledge.variables[variable].group,
      },
    ];
  }

  function evidenceOf(id: CallbackFindingId, seen: boolean): Evidence {
    const at = columnOf.get(id) as number;
    return { id, columns: [at], seen, group: reasoning.columns[at]?.group };
  }

  /** A rattle from a wheel that stands still. */
  function isImpossible(id: CallbackFindingId): boolean {
    return Object.entries(knowledge.findings[id].onlyWhile ?? {}).some(([variable, needed]) =>
      (valuesOf.get(variable as VariableId) ?? []).some((value) => yes.has(value) && !needed.includes(value)),
    );
  }

  function settled(): ReadonlySet<string> {
    const all = new Set<string>([...yes, ...no, ...told, ...denied]);
    for (const id of findingIds) {
      const { anyOf, variable } = knowledge.findings[id];
      if (anyOf?.some((member) => yes.has(member)) || anyOf?.every((member) => no.has(member))) all.add(id);
      if (variable && yes.has(id)) all.add(variable);
      if (isImpossible(id)) all.add(id);
    }
    return all;
  }
}
