import type { CallbackFindingId, VariableId } from '#knowledge/callback-findings.ts';
import type { CallbackKnowledge, Cause, CauseId } from '#knowledge/causes.ts';

/** Chances of a variable's values, in the variable's own order. */
export type Distribution = readonly number[];

/** A variable by places instead of ids, so that thousands of hypotheses can be worked through quickly. */
export interface VariableLayout {
  readonly id: VariableId;
  readonly values: readonly CallbackFindingId[];
  /** Places of its values among the findings. */
  readonly places: readonly number[];
  readonly worst: 'first' | 'last' | 'none';
  readonly background: Distribution | undefined;
  /** The variable it follows from, by place, with its chances at each value of that one. */
  readonly follows: { readonly from: number; readonly table: readonly Distribution[] } | undefined;
  /** Only told while another variable has one of these values. */
  readonly onlyWhile: Gate | undefined;
}

export interface Gate {
  readonly variable: number;
  readonly values: readonly number[];
}

/** A finding by places. */
interface FindingLayout {
  readonly id: CallbackFindingId;
  readonly background: number | undefined;
  readonly follows: { readonly from: number; readonly chances: Distribution } | undefined;
  readonly onlyWhile: Gate | undefined;
  readonly anyOf: readonly number[] | undefined;
  readonly isValue: boolean;
}

/** A cause by places: the chance it states for each finding, and for each variable. */
export interface CauseLayout {
  readonly id: CauseId;
  readonly stated: ReadonlyMap<number, number>;
  readonly ruledOut: ReadonlySet<number>;
  readonly distributions: readonly (Distribution | undefined)[];
}

export interface Layout {
  readonly findings: readonly FindingLayout[];
  readonly variables: readonly VariableLayout[];
  readonly causes: readonly CauseLayout[];
  readonly findingPlace: ReadonlyMap<string, number>;
  /** The chance of what is ruled out. */
  readonly least: number;
}

/** The knowledge, laid out for reckoning. A variable comes after the one it follows from. */
export function layoutOf(knowledge: CallbackKnowledge): Layout {
  const findingIds = Object.keys(knowledge.findings) as CallbackFindingId[];
  const variableIds = Object.keys(knowledge.variables) as VariableId[];
  const findingPlace = new Map<string, number>(findingIds.map((id, at) => [id, at]));
  const place = (id: string) => findingPlace.get(id) as number;
  const valuesOf = (variable: string) => findingIds.filter((id) => knowledge.findings[id].variable === variable);
  const inOrder = (variable: string, chances: Readonly<Record<string, number | undefined>>) =>
    valuesOf(variable).map((value) => chances[value] ?? 0);
  const gate = (onlyWhile: Readonly<Partial<Record<VariableId, readonly string[]>>> | undefined): Gate | undefined => {
    const [variable, values] = (Object.entries(onlyWhile ?? {})[0] ?? []) as [VariableId?, (readonly string[])?];
    if (variable === undefined) return undefined;
    const all: readonly string[] = valuesOf(variable);
    return { variable: variableIds.indexOf(variable), values: (values ?? []).map((value) => all.indexOf(value)) };
  };

  const variables = variableIds.map((id): VariableLayout => {
    const { worst, background, follows, onlyWhile } = knowledge.variables[id];
    const values = valuesOf(id);
    const [from, table] = Object.entries(follows ?? {})[0] ?? [];
    return {
      id,
      values,
      places: values.map(place),
      worst,
      background: background && inOrder(id, background),
      follows:
        from === undefined
          ? undefined
          : {
              from: variableIds.indexOf(from as VariableId),
              table: valuesOf(from).map((given) => inOrder(id, table?.[given] ?? {})),
            },
      onlyWhile: gate(onlyWhile),
    };
  });

  const findings = findingIds.map((id): FindingLayout => {
    const { background, follows, anyOf, onlyWhile, variable } = knowledge.findings[id];
    const [from, chances] = Object.entries(follows ?? {})[0] ?? [];
    return {
      id,
      background,
      follows:
        from === undefined
          ? undefined
          : { from: variableIds.indexOf(from as VariableId), chances: inOrder(from, chances ?? {}) },
      onlyWhile: gate(onlyWhile),
      anyOf: anyOf?.map(place),
      isValue: variable !== undefined,
    };
  });

  const causeLayout = ([id, cause]: [string, Cause]): CauseLayout => {
    const signs = Object.entries(cause.signs).map(([finding, tier]) => ({ at: place(finding), tier }));
    return {
      id: id as CauseId,
      stated: new Map(signs.map(({ at, tier }) => [at, knowledge.scale.tiers[tier].chance])),
      ruledOut: new Set(signs.filter(({ tier }) => tier === 'rules out').map(({ at }) => at)),
      distributions: variableIds.map((variable) => {
        const chances = cause.chances[variable];
        return chances && inOrder(variable, chances);
      }),
    };
  };

  return {
    findings,
    variables,
    causes: Object.entries(knowledge.causes).map(causeLayout),
    findingPlace,
    least: knowledge.scale.tiers['rules out'].chance,
  };
}
