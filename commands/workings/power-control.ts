import { controlCarries, controlHolds } from '#engine/electrical/control-load.ts';
import type { Finding } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { motorShareOfSwitch } from '#knowledge/electrical.ts';
import { current, fanPower } from '#quantity/kinds.ts';
import type { Amperes } from '#quantity/units.ts';
import { citations } from './citations.ts';
import {
  drawText,
  type Facts,
  fanIsRead,
  type LoadNumbers,
  limitCite,
  lowestCounted,
  partsOf,
  sum,
  switchedParts,
} from './power-draw.ts';

/** What the rating of a control is held against, and what of it nobody has read. */
function carried(numbers: LoadNumbers, facts: Facts, units: UnitSystem) {
  const { controlRating: rating } = numbers;
  if (rating === null) return undefined;
  const parts = partsOf(numbers, facts, units);
  const all = { ...switchedParts(parts, facts), ...(fanIsRead(numbers) ? {} : { 'the fan': null }) };
  const load = sum(Object.values(all));
  const unread = Object.keys(all).filter((name) => all[name as keyof typeof all] === null);
  return {
    rating,
    load,
    unread,
    steps: parts.steps,
    ...controlCarries({ current: load.most, rating, share: motorShareOfSwitch }),
  };
}

/** The least load of the control in words, and whether the fan holds it; `undefined` where that cannot be told. */
function holding(
  numbers: LoadNumbers,
  units: UnitSystem,
): { readonly says: string; readonly holds?: boolean } | undefined {
  const { controlMinimum: minimum } = numbers;
  const lowest = lowestCounted(numbers);
  if (minimum === 0) return { says: 'it needs no least load', holds: true };
  if (minimum === null) {
    return lowest === null
      ? undefined
      : {
          says: `the fan takes ${fanPower.show(lowest, units)} at its lowest, and nobody has read what least load the control needs`,
        };
  }
  const needs = `it needs ${fanPower.show(minimum, units)}`;
  if (lowest === null) return { says: `${needs}, and nobody has read what the fan takes at its lowest` };
  const holds = controlHolds({ lowest, minimum });
  const tooLittle = holds ? '' : ', too little to hold it';
  return { says: `${needs} and the fan takes ${fanPower.show(lowest, units)} at its lowest${tooLittle}`, holds };
}

/** What the control is rated for against what it is to switch, and its least load. Nothing where none of it was told. */
export function controlLoad(numbers: LoadNumbers, facts: Facts, units: UnitSystem): Finding | undefined {
  const rated = carried(numbers, facts, units);
  const held = holding(numbers, units);
  if (rated === undefined && held === undefined) return undefined;
  const shown = (amps: Amperes) => current.showShort(amps, units);
  const unread = rated?.unread.join(' and ') ?? '';
  const ratedWords = (): string => {
    if (rated === undefined) return '';
    const most = `may take ${shown(rated.most)} of motor`;
    const known = unread === '' ? drawText(rated.load, units) : `${drawText(rated.load, units)} and more`;
    if (!rated.carries) return `Do not fit this control: it is to switch ${known} and ${most}`;
    return unread === ''
      ? `The control is to switch ${known} and ${most}; its marking still has to say motor`
      : `The control ${most}; what it is to switch is not known, because nobody read ${unread}`;
  };
  const says = [...(rated ? [ratedWords()] : []), ...(held ? [held.says] : [])].join('; ');
  const whole = rated !== undefined && rated.unread.length === 0 ? rated.load : undefined;
  const isOpen = unread !== '' || (numbers.controlMinimum !== null && held?.holds === undefined);
  return {
    id: 'control-load',
    weight: rated?.carries === false ? 'stop' : held?.holds === false || isOpen ? 'caution' : 'advice',
    says: `${says.charAt(0).toUpperCase()}${says.slice(1)}.`,
    ...(whole === undefined
      ? {}
      : {
          value: {
            number: whole.told,
            unit: current.siUnit,
            ...(whole.most > whole.told ? { low: whole.told, high: whole.most } : {}),
            shown: drawText(whole, units),
          },
        }),
    working:
      rated === undefined
        ? []
        : [
            ...rated.steps,
            ...(whole === undefined ? [] : [{ what: 'To be switched', value: drawText(whole, units) }]),
            {
              what: 'The control may take',
              how: `${shown(rated.rating)} × ${motorShareOfSwitch}`,
              value: shown(rated.most),
              source: limitCite('motor-share-of-switch'),
            },
          ],
    sources: citations(limitCite('motor-share-of-switch')),
  };
}
