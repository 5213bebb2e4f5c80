import type { Choice, Question, Reading, UnitSystem } from '#interview/question.ts';
import { otherExhausts as usualExhausts } from '#knowledge/make-up.ts';
import { type Estimate, exactly, isExact } from '#quantity/estimate.ts';
import { airflow } from '#quantity/kinds.ts';
import type { CubicMetresPerSecond } from '#quantity/units.ts';
import { houseQuestions } from '../words/house-questions.ts';

type ExhaustId = 'dryer' | 'range-hood' | 'bath-fan' | 'open-fireplace' | 'other';

/** Something else that draws air out of the house, with its airflow where somebody knows it. */
export interface OtherExhaust {
  readonly id: ExhaustId;
  /** `null` where only the name is known. */
  readonly airflow: Estimate<CubicMetresPerSecond> | null;
}

interface Named extends Choice {
  readonly id: ExhaustId;
  readonly names: RegExp;
}

const named: readonly Named[] = [
  { id: 'dryer', label: 'Clothes dryer', names: /\b(?:(?:clothes|tumble)\s*)?dr[iy]er\b/i },
  {
    id: 'range-hood',
    label: 'Range hood',
    names: /\b(?:(?:range|kitchen|cooker|stove)[\s-]*)?(?:hood|range|kitchen fan)\b/i,
  },
  {
    id: 'bath-fan',
    label: 'Another bath fan',
    names: /\b(?:another\s+|other\s+)?(?:bath(?:room)?|toilet)[\s-]*fan\b/i,
  },
  { id: 'open-fireplace', label: 'Open fireplace', names: /\b(?:open[\s-]*)?fire\s*place\b/i },
];

const accepts =
  'any of clothes dryer, range hood, another bath fan, open fireplace, with the airflow where known (range hood 300 cfm), or none';

function readOne(part: string, units: UnitSystem): Reading<OtherExhaust> {
  const found = named.find(({ names }) => names.test(part));
  const rest = (found ? part.replace(found.names, ' ') : part).replace(/\b(?:at|of|a|an|the)\b|[:=@()]/gi, ' ').trim();
  if (found && rest === '') return { value: { id: found.id, airflow: null } };
  const flow = airflow.readEstimate(rest, units);
  if ('rejected' in flow)
    return { rejected: `“${part.replace(/\p{Cc}/gu, '').slice(0, 30)}” did not fit. Name ${accepts}.` };
  return { value: { id: found?.id ?? 'other', airflow: flow.value } };
}

function readExhausts(text: string, units: UnitSystem): Reading<readonly OtherExhaust[]> {
  const said = text.normalize('NFKC').trim();
  if (said === '' || said.length > 200) return { rejected: `Name ${accepts}.` };
  if (/^(?:none|no|nothing|no others?)[.!]?$/i.test(said)) return { value: [] };
  const parts = said.split(/[,;+&\n]|\band\b/i).filter((part) => part.trim() !== '');
  const found: OtherExhaust[] = [];
  for (const part of parts) {
    const one = readOne(part.trim().replace(/[-_](?=[a-z])/gi, ' '), units);
    if ('rejected' in one) return one;
    found.push(one.value);
  }
  return found.length > 8 ? { rejected: 'At most eight; name the largest.' } : { value: found };
}

const labelOf = (id: ExhaustId): string => named.find((each) => each.id === id)?.label ?? '';

export const exhaustName = ({ id }: OtherExhaust): string => (id === 'other' ? 'Another exhaust' : labelOf(id));

/** What an exhaust draws, as told, or as such things usually do. */
export const exhaustAirflow = ({ id, airflow: told }: OtherExhaust): Estimate<CubicMetresPerSecond> =>
  told ?? (id === 'other' ? exactly(airflow.from(0, 'cfm')) : usualExhausts[id].airflow);

export const otherExhausts: Question<readonly OtherExhaust[]> = {
  id: 'other-exhausts',
  words: { spanish: houseQuestions['other-exhausts'] },
  prompt: 'What else blows air out of the house? Name each, with its airflow where known: dryer, range hood 300 cfm.',
  why: 'All of them pull on the house at once. It is their sum that can turn a chimney round.',
  accepts,
  brief: 'Other exhausts in the house',
  widget: { kind: 'several', choices: named.map(({ id, label }) => ({ id, label })) },
  whenUnknown: {
    value: [
      { id: 'dryer', airflow: null },
      { id: 'range-hood', airflow: null },
    ],
    because: 'Nobody has said; a dryer and a range hood are counted at the high end only.',
  },
  read: readExhausts,
  show: (value, units) =>
    value.length === 0
      ? 'none'
      : value.map((each) => [labelOf(each.id), flowText(each, units)].join(' ').trim()).join(', '),
};

/** Without a comma or a bracket, so that a list of them can be read back. */
function flowText({ airflow: flow }: OtherExhaust, units: UnitSystem): string {
  if (flow === null) return '';
  const typical = airflow.showShort(flow.typical, units);
  return isExact(flow) ? typical : `${airflow.showRangeShort(flow, units)} most likely ${typical}`;
}
