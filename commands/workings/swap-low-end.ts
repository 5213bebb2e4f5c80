import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import { fieldMethods } from '#knowledge/field-methods.ts';
import { airflow, percentage } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import { cubicMetresPerSecond, ratio } from '#quantity/units.ts';
import type { StepValue } from '#walkthrough/walk-event.ts';
import { hoodPowered, method as methodAsked } from '../questions/measuring.ts';
import { citations } from './citations.ts';
import { saidAt } from './swap-sheet.ts';
import type { OpenWalk } from './swap-walk.ts';

/** The ways of measuring a list knows, as words within a sentence. */
export const methodWords: Readonly<Record<string, string>> = {
  'powered-hood': 'a flow hood with a fan of its own',
  hood: 'a flow hood without a fan',
  'flow-box': 'a flow box',
  traverse: 'readings across the grille',
  bag: 'a timed bag',
};

const { hood, box, traverse, bag } = fieldMethods;

/** The least that each way of measuring errs, as a share of the reading. A bag is hardly ever as full as its number says. */
const leastErrors: Readonly<Record<string, { readonly by: string } & (typeof hood)['powered']>> = {
  'powered-hood': { by: 'A flow hood with a fan of its own', ...hood.powered },
  hood: { by: 'A flow hood without a fan', ...hood.unpowered },
  'flow-box': { by: 'A flow box', ...box.error },
  traverse: { by: 'Reading speeds over the grille', ...traverse.error },
  bag: { by: 'A timed bag', ...bag.fullness, value: ratio(1 - bag.fullness.estimate.low) },
};

/** Where nobody says how it was measured, the widest of the errors counts. */
const methodNotSaid = { by: 'No method is said, and a flow hood without a fan', ...hood.unpowered };

/** How it was measured: as the answer says, else as before the swap. */
export function methodOf(walk: OpenWalk, value: StepValue): string | undefined {
  const said = value['method'] ?? saidAt(walk, 'old-airflow')?.['method'];
  return typeof said === 'string' && Object.hasOwn(methodWords, said) ? said : undefined;
}

/** How the measurement on the sheet was made, in the words of the list; nothing where the sheet does not say. */
export function methodOnSheet(desk: Desk, { sheet }: OpenWalk): StepValue {
  const recall = desk.recallOn(sheet);
  const asked = recall(methodAsked);
  if (!asked?.known) return {};
  if (asked.value !== 'hood') return { method: String(asked.value) };
  const powered = recall(hoodPowered);
  return { method: powered?.known && powered.value === 'yes' ? 'powered-hood' : 'hood' };
}

/**
 * The low end that counts: what was written, or the mean less the method's own error where that is less. What was written
 * instead is kept beside it, and told.
 */
export function lowEndToRecord(
  { telling: { units } }: Desk,
  walk: OpenWalk,
  value: StepValue,
): { readonly value: StepValue; readonly findings: readonly Finding[] } {
  const { mean, 'low-end': written } = value;
  if (typeof mean !== 'number' || typeof written !== 'number' || written > mean) return { value, findings: [] };
  const { by, value: share, citation } = leastErrors[methodOf(walk, value) ?? ''] ?? methodNotSaid;
  const atBest = cubicMetresPerSecond(mean * (1 - share));
  if (meets(atBest, written)) return { value, findings: [] };
  const shown = (flow: number) => airflow.showShort(cubicMetresPerSecond(flow), units);
  const errs = percentage.showShort(share, units);
  return {
    value: { ...value, 'low-end': atBest, written },
    findings: [
      {
        id: 'low-end-too-high',
        weight: 'caution',
        says: `${by} errs by ${errs} or more: the low end of ${shown(mean)} is ${shown(atBest)} at best, not ${shown(written)}. ${shown(atBest)} is recorded and counts; /measure works it out.`,
        working: [
          { what: 'Low end at best', how: `${shown(mean)} × (1 − ${errs})`, value: shown(atBest), source: citation },
        ],
        sources: citations(citation),
      },
    ],
  };
}
