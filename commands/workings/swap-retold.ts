import { comparedWithNeeded } from '#engine/measuring/comparison.ts';
import type { Finding } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { airflow, insulation, minutes, roomArea, smallLength } from '#quantity/kinds.ts';
import {
  type CubicMetresPerSecond,
  cubicInches,
  cubicMetresPerSecond,
  metres,
  seconds,
  squareMetres,
} from '#quantity/units.ts';
import type { Language } from '#words/language.ts';
import { type Retold, retold } from '../words/swap-retold.ts';
import { roomText } from './box-findings.ts';
import { compared } from './measure.ts';
import type { PartRow, PartsStory } from './parts-list.ts';
import { toBuy } from './parts-list.ts';

/** How something is told beside a step. */
interface Told {
  readonly language: Language;
  readonly units: UnitSystem;
}

/**
 * A finding of another command in the words of a step, with the same weight, value and sources. The command that found it
 * shows the working.
 */
const inOtherWords = (finding: Finding, says: string): Finding => {
  const { table: _, ...rest } = finding;
  return { ...rest, says, working: [] };
};

const wordsFor = (language: Language): Retold | undefined => (language === 'english' ? undefined : retold[language]);

const numberOf = ({ value }: Finding): number | null => (typeof value?.number === 'number' ? value.number : null);

/** How long the fan is to run on. */
export function runTimeRetold(finding: Finding, { language, units }: Told): Finding {
  const words = wordsFor(language)?.runTime;
  if (words === undefined) return finding;
  const time = numberOf(finding);
  if (finding.weight === 'caution' || time === null)
    return inOtherWords(finding, finding.value?.shown === 'never' ? words.never : words.moreAir);
  const { low, high } = finding.value ?? {};
  const shown = (span: number) => minutes.showShort(seconds(span), units);
  const usual = low === undefined || high === undefined ? '' : words.usually(shown(low), shown(high));
  return inOtherWords(finding, `${words.run(shown(time))}${usual}`);
}

/** What a count of a box came to: what is left, what is needed, and the cautions beside it. */
export function boxRetold(findings: readonly Finding[], { language, units }: Told): readonly Finding[] {
  const words = wordsFor(language)?.box;
  if (words === undefined) return findings;
  const room = (volume: number) => roomText(cubicInches(volume), units);
  const needs = findings.find(({ id }) => id === 'fill-needed');
  const needed = needs && numberOf(needs);
  const most = needs?.value?.high ?? needed ?? null;
  const leftSays = (finding: Finding): string => {
    const left = numberOf(finding);
    if (left === null) return needed === null || most === null ? words.notCounted : words.volumeUnknown(room(most));
    if (left < 0) return words.overfull(room(-left));
    const withAll = finding.value?.low;
    if (finding.weight === 'caution' && withAll !== undefined)
      return withAll < 0 ? words.fitsOnlyAsTold(room(left)) : words.fitsAsTold(room(left), room(withAll));
    return left === 0 ? words.exactlyFull : words.leaves(room(left));
  };
  const says = (finding: Finding): string => {
    if (finding.id === 'volume-left') return leftSays(finding);
    if (finding.id === 'fill-needed')
      return needed === null || needed === undefined ? words.countFirst : words.contentsNeed(room(needed));
    if (finding.id === 'box-that-fits') return words.takeLarger(most === null ? '' : room(most));
    return words.cautions[finding.id] ?? words.oneMore;
  };
  return findings.map((finding) => inOtherWords(finding, says(finding)));
}

/** Whether what was measured is enough. */
export function enoughRetold(
  finding: Finding,
  moved: Estimate<CubicMetresPerSecond>,
  { needed, language, units }: Told & { readonly needed: CubicMetresPerSecond },
): Finding {
  const words = wordsFor(language)?.measured;
  if (words === undefined) return finding;
  const [need, low, high] = [needed, moved.low, moved.high].map((flow) => airflow.showShort(flow, units));
  const spoken = {
    met: words.enough(low ?? '', need ?? ''),
    'not shown': words.notShown(need ?? '', low ?? '', high ?? ''),
    'not met': words.tooLittle(need ?? '', high ?? ''),
  } as const;
  return inOtherWords(finding, spoken[comparedWithNeeded(moved, needed)]);
}

/** What was measured beside what this fan should give. */
export function predictedRetold(
  finding: Finding,
  moved: Estimate<CubicMetresPerSecond>,
  {
    expected,
    tooLittle,
    language,
    units,
  }: Told & {
    readonly expected: Estimate<CubicMetresPerSecond>;
    readonly tooLittle: boolean;
  },
): Finding {
  const words = wordsFor(language)?.measured;
  if (words === undefined) return finding;
  const { verdict, difference } = compared(moved, expected);
  const predicted = airflow.showShort(cubicMetresPerSecond(expected.typical), units);
  const gap = airflow.showShort(cubicMetresPerSecond(Math.abs(difference)), units);
  const share = moved.typical / expected.typical;
  const look = words.look[share < 0.5 ? 0 : share < 0.8 ? 1 : 2];
  const spoken = {
    agrees: tooLittle ? words.asPredictedTooLittle(predicted) : words.asPredicted(predicted),
    'cannot tell': words.cannotTell(predicted),
    lower: `${words.less(gap, predicted)} ${look}`,
    higher: `${words.more(gap, predicted)} ${words.tooMuch}`,
  } as const;
  return inOtherWords(finding, spoken[verdict]);
}

/** How far the duct falls, or what wrap goes around it. */
export function ductRetold(finding: Finding, story: PartsStory, { language, units }: Told): Finding {
  const words = wordsFor(language)?.duct;
  if (words === undefined) return finding;
  if (finding.id === 'duct-pitch') {
    const drop = smallLength.show(metres(numberOf(finding) ?? 0), units);
    return inOtherWords(finding, story.run.endsOnRoof ? words.fallToTrap(drop) : words.fallToOutside(drop));
  }
  if (finding.id !== 'insulation') return finding;
  const { wrap, takeOff, run } = story;
  const wanted = insulation.show(wrap.asked, units);
  const flex = run.pieces.some(({ kind }) => kind === 'flex') ? words.buyInsulated(wanted) : '';
  if (wrap.found === null) return inOtherWords(finding, words.noWrap);
  if (!wrap.found.found) return inOtherWords(finding, `${words.noWrapListed(wanted)}${flex}`);
  const { nominalThickness, installedResistance } = wrap.found.wrap;
  const area = takeOff.wrap ?? 0;
  const around =
    area > 0
      ? words.wrap(
          smallLength.showShort(nominalThickness, units),
          toBuy(roomArea, squareMetres(area), units),
          insulation.show(installedResistance, units),
        )
      : words.noRigid;
  return inOtherWords(finding, `${around}${flex}${wrap.told ? '' : words.nobodySaid(wanted)}`);
}

/** A line of the list for the truck: how many of what size. */
export function partRetold({ item, size, quantity }: PartRow, language: Language): string {
  const words = wordsFor(language)?.parts;
  if (words === undefined)
    return [/^\d+$/.test(quantity) ? `${quantity} ×` : quantity, size, item].filter((word) => word !== '').join(' ');
  const told = (text: string) =>
    text.replace(/with ground|[A-Za-z]+/g, (word) => (Object.hasOwn(words, word) ? (words[word] ?? word) : word));
  // A name may go on with a mark of its listing, which is the same in every language: "Foil tape, 181B-FX".
  const lowered = item.charAt(0).toLowerCase() + item.slice(1);
  const [plain = item, ...marks] = item.split(/, (?=[A-Z0-9-]+$)/);
  const named = words[item] ?? words[lowered] ?? words[plain] ?? item;
  const name = [named.charAt(0).toUpperCase() + named.slice(1), ...marks].join(', ');
  return `${[name, told(size)].filter((word) => word !== '').join(', ')}: ${told(quantity)}`;
}
