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
import { besideTold, type OpenWalk } from './swap-walk.ts';

const { hood, box, traverse, bag } = fieldMethods;

/** The least that each way of measuring errs, as a share of the reading. A bag is hardly ever as full as its number says. */
const leastErrors: Readonly<Record<string, (typeof hood)['powered']>> = {
  'powered-hood': hood.powered,
  hood: hood.unpowered,
  'flow-box': box.error,
  traverse: traverse.error,
  bag: { ...bag.fullness, value: ratio(1 - bag.fullness.estimate.low) },
};

/** Where nobody says how it was measured, the widest of the errors counts. */
const methodNotSaid = hood.unpowered;

/** How it was measured: as the answer says, else as before the swap. */
export function methodOf(walk: OpenWalk, value: StepValue): string | undefined {
  const said = value['method'] ?? saidAt(walk, 'old-airflow')?.['method'];
  return typeof said === 'string' && Object.hasOwn(leastErrors, said) ? said : undefined;
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
  const told = besideTold(walk);
  const method = methodOf(walk, value) ?? '';
  const by = told.errsBy[method] ?? told.methodNotSaid;
  const { value: share, citation } = leastErrors[method] ?? methodNotSaid;
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
        says: told.lowEndTooHigh(by, errs, shown(mean), shown(atBest), shown(written)),
        working: [
          { what: told.lowEndAtBest, how: `${shown(mean)} × (1 − ${errs})`, value: shown(atBest), source: citation },
        ],
        sources: citations(citation),
      },
    ],
  };
}
