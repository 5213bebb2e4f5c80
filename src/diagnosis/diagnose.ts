import { type CallbackFindingId, isCallbackFinding } from '#knowledge/callback-findings.ts';
import type { CauseBand, ContextId, StrengthName } from '#knowledge/callback-scale.ts';
import type { CauseId } from '#knowledge/causes.ts';
import { type Answers, type Evidence, type Understood, understood } from './answers.ts';
import { type Danger, dangersOpen, dangersSeen, type OpenDanger } from './dangers.ts';
import { pairsSaid, type Together } from './pairs.ts';
import { priorWeights, type Reasoning } from './reasoning.ts';
import { chanceOf, presentChances, weighed } from './weighing.ts';

/** How much one answer moved one cause. */
export interface Push {
  /** A finding, a variable that was narrowed down, or a context. */
  readonly id: string;
  readonly kind: 'seen' | 'not seen' | 'context';
  readonly strength: StrengthName;
}

export interface RankedCause {
  readonly cause: CauseId;
  readonly band: CauseBand;
  /** The band as it is told: held back where too few kinds of signs speak for the cause. */
  readonly told: CauseBand;
  /** How likely it is to be there, alone or beside another. For ordering and for tests: people are told the band. */
  readonly chance: number;
  readonly raised: readonly Push[];
  readonly lowered: readonly Push[];
}

/** A defect somebody saw: it is mended whatever ranks first. */
interface Repair {
  readonly finding: CallbackFindingId;
  readonly cause: CauseId;
}

export interface Diagnosis {
  /** `stopped`: a danger was told, or one that stops is not known; it comes before everything else here. */
  readonly outcome: 'stopped' | 'not enough to tell' | 'leaning' | 'clear';
  readonly dangers: readonly Danger[];
  /** Dangers somebody was asked about and could not say. */
  readonly open: readonly OpenDanger[];
  /** Causes that can hurt somebody and are not unlikely enough to leave for later. */
  readonly ruleOutFirst: readonly RankedCause[];
  /** Every cause, likeliest first. */
  readonly ranking: readonly RankedCause[];
  readonly together: readonly Together[];
  readonly repairs: readonly Repair[];
  /** What was seen and the leading cause does not bring, with the cause that best would. */
  readonly unexplained: readonly { readonly finding: CallbackFindingId; readonly by: CauseId }[];
  readonly strangers: readonly string[];
  readonly contradictions: readonly (readonly string[])[];
}

/** The causes behind a callback, dangers first, from whatever has been told so far. */
export function diagnose(reasoning: Reasoning, answers: Answers): Diagnosis {
  const told = understood(answers, reasoning);
  const posterior = weighed(told, reasoning);
  const present = presentChances(posterior, reasoning);
  const { figures } = reasoning.knowledge.scale;
  const pushes = pushesOf(told, reasoning);
  const ranking = reasoning.causeIds
    .map((cause, at): RankedCause => {
      const chance = present[at] as number;
      const band = bandOf(chance, reasoning);
      const { raised, lowered } = pushes(at);
      return { cause, chance, band, told: bandTold(band, { cause, raised }, told, reasoning), raised, lowered };
    })
    .sort((a, b) => b.chance - a.chance);
  const dangers = dangersSeen(answers, reasoning);
  const open = dangersOpen(answers, told, reasoning);
  const top = ranking[0] as RankedCause;
  return {
    outcome: outcome(),
    dangers,
    open,
    ruleOutFirst: ranking.filter(
      ({ cause, chance }) => reasoning.knowledge.causes[cause].lifeSafety && chance >= figures['rule-out-from'].value,
    ),
    ranking,
    together: pairsSaid(posterior, told, reasoning).map(({ causes, explains }) => ({ causes, explains })),
    repairs: repairs(told, ranking, reasoning),
    unexplained: unexplained(told, top.cause, reasoning),
    strangers: told.strangers,
    contradictions: told.contradictions,
  };

  function outcome(): Diagnosis['outcome'] {
    if (dangers.length > 0 || open.some(({ stops }) => stops)) return 'stopped';
    if (told.evidence.length === 0 || top.chance < figures['enough-to-tell'].value) return 'not enough to tell';
    return top.chance >= figures['clear-from'].value ? 'clear' : 'leaning';
  }
}

function bandOf(chance: number, { knowledge }: Reasoning): CauseBand {
  const bands = Object.entries(knowledge.scale.bands) as [CauseBand, { readonly from: number }][];
  return bands.sort(([, a], [, b]) => b.from - a.from).find(([, { from }]) => chance >= from)?.[0] ?? 'unlikely';
}

/**
 * How sure the words may be. The figure behind a band takes every sign as heard right; a person does not. So "very likely" takes
 * signs of different kinds, or the defect itself, seen; and a cause that nothing told speaks for is possible at most, however
 * common it is.
 */
function bandTold(
  band: CauseBand,
  { cause, raised }: Pick<RankedCause, 'cause' | 'raised'>,
  { evidence }: Understood,
  { knowledge }: Reasoning,
): CauseBand {
  const signs = evidence.filter(({ id }) => raised.some((push) => push.kind !== 'context' && push.id === id));
  const kinds = new Set(signs.map(({ id, group }) => group ?? id)).size;
  const isSeen = signs.some(({ id, seen }) => seen && isCallbackFinding(id) && knowledge.findings[id].defect === cause);
  if (kinds === 0) return band === 'unlikely' ? band : 'possible';
  if (band !== 'very-likely' || isSeen) return band;
  return kinds >= knowledge.scale.figures['signs-for-very-likely'].value ? band : 'likely';
}

/** For one cause, how each answer stands under it against how it stands under the other causes as they were before. */
function pushesOf({ evidence, contexts }: Understood, reasoning: Reasoning) {
  const weights = priorWeights(reasoning, contexts);
  const singles = reasoning.causeIds.map((_, at) => at);
  const sum = singles.reduce((total, at) => total + (weights[at] as number), 0);
  const expected = evidence.map((item) =>
    singles.reduce((total, at) => total + (weights[at] as number) * chanceOf(item, at, reasoning), 0),
  );
  return (cause: number): Pick<RankedCause, 'raised' | 'lowered'> => {
    const own = weights[cause] as number;
    const ratios = evidence.map((item, at) => {
      const here = chanceOf(item, cause, reasoning);
      const elsewhere = ((expected[at] as number) - own * here) / (sum - own);
      return { ...named(item), times: here / elsewhere };
    });
    const causeId = reasoning.causeIds[cause] as CauseId;
    const given = contexts.map((id: ContextId) => ({
      id,
      kind: 'context' as const,
      times: reasoning.knowledge.causes[causeId].contexts[id] ?? 1,
    }));
    const all = [...ratios, ...given].sort((a, b) => Math.abs(Math.log(b.times)) - Math.abs(Math.log(a.times)));
    const moved = (times: (ratio: number) => number) =>
      all.flatMap(({ id, kind, times: ratio }): Push[] => {
        const strength = strengthOf(times(ratio), reasoning);
        return strength === undefined ? [] : [{ id, kind, strength }];
      });
    return { raised: moved((ratio) => ratio), lowered: moved((ratio) => 1 / ratio) };
  };
}

const named = ({ id, seen }: Evidence) => ({ id, kind: seen ? ('seen' as const) : ('not seen' as const) });

function strengthOf(times: number, { knowledge }: Reasoning): StrengthName | undefined {
  const strengths = Object.entries(knowledge.scale.strengths) as [StrengthName, { readonly value: number }][];
  return strengths.sort(([, a], [, b]) => b.value - a.value).find(([, { value }]) => times >= value)?.[0];
}

function repairs({ seen }: Understood, ranking: readonly RankedCause[], reasoning: Reasoning): Repair[] {
  const { findings } = reasoning.knowledge;
  const place = new Map(ranking.map(({ cause }, at) => [cause as string, at]));
  const isCause = (id: string | undefined): id is CauseId => id !== undefined && place.has(id);
  const list = [...seen].flatMap((finding): Repair[] => {
    const { anyOf, defect } = findings[finding];
    if (anyOf?.some((member) => seen.has(member))) return [];
    const [cause] = [defect, ...(anyOf ?? []).map((member) => findings[member].defect)]
      .filter(isCause)
      .sort((a, b) => (place.get(a) as number) - (place.get(b) as number));
    return cause === undefined ? [] : [{ finding, cause }];
  });
  return list.filter(({ cause }, at) => list.findIndex((other) => other.cause === cause) === at);
}

function unexplained({ seen }: Understood, top: CauseId, reasoning: Reasoning): Diagnosis['unexplained'] {
  const leading = reasoning.causeIds.indexOf(top);
  return [...seen].flatMap((finding) => {
    const column = reasoning.columns[reasoning.columnOf.get(finding) as number];
    if (column === undefined || reasoning.knowledge.findings[finding].ordinary) return [];
    if ((column.chance[leading] as number) >= column.usual) return [];
    const score = (at: number) =>
      (column.chance[at] as number) * reasoning.knowledge.causes[reasoning.causeIds[at] as CauseId].prior;
    const by = reasoning.causeIds.reduce((best, _, at) => (score(at) > score(best) ? at : best), 0);
    return [{ finding, by: reasoning.causeIds[by] as CauseId }];
  });
}
