import { furtherConductors } from '#engine/electrical/standard-box.ts';
import type { Finding, Step, Table } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { boxRules } from '#knowledge/box-rules.ts';
import { cite } from '#knowledge/sources.ts';
import { boxVolume } from '#quantity/kinds.ts';
import { within } from '#quantity/meets.ts';
import { type CubicInches, cubicInches } from '#quantity/units.ts';
import { boxText, cubicInchText } from '../questions/box-reading.ts';
import { cableText, insulatedIn } from '../questions/wire-list-reading.ts';
import { otherEditions, roomOf } from './box-count.ts';
import { groundsCounted } from './box-grounds.ts';
import type { BoxCount, BoxInputs, Untold } from './box-inputs.ts';
import { citations } from './citations.ts';

/** What the findings of one box are told from. */
export interface BoxStory {
  readonly inputs: BoxInputs;
  readonly count: BoxCount;
  readonly untold: readonly Untold[];
  readonly units: UnitSystem;
}

/** The exact cubic inches, with the metric volume first for a crew that works in metric. */
export const roomText = (volume: CubicInches, units: UnitSystem): string =>
  units === 'metric'
    ? `${boxVolume.showShort(volume, 'metric')} (${cubicInchText(volume)})`
    : `${cubicInchText(volume)} (${boxVolume.showShort(volume, 'metric')})`;

export const codeName = (edition: BoxCount['edition']): string =>
  edition === 'canada' ? 'the Canadian Electrical Code' : `NEC ${edition}`;

export const tidy = (value: number): string => String(Number(value.toFixed(4)));

/** What the box needs with everything that nobody told of. */
export const neededAtMost = ({ count, untold }: BoxStory): CubicInches =>
  cubicInches(untold.reduce((sum, { extra }) => sum + extra, Number(count.needed)));

/** Whether all of it was told and fits: anything less is nothing to be at ease about. */
const fitsWhatever = ({ inputs, count, untold }: BoxStory): boolean =>
  inputs.told.conductors && inputs.box !== null && untold.length === 0 && within(count.needed, roomOf(inputs.box));

const untoldText = (untold: readonly Untold[]): string =>
  untold.map(({ what, extra }) => `${what} (${cubicInchText(extra)})`).join(', ');

const wireWord = (count: number): string => (count === 1 ? 'wire' : 'wires');

function countTable({ count }: BoxStory): Table {
  return {
    title: `The count, by ${codeName(count.edition)}`,
    columns: ['what', 'count', 'size', 'allowances', `each, ${count.printed.unit}`, `room, ${count.printed.unit}`],
    rows: [
      ...count.lines.map(({ what, count: pieces, awg, allowances, each, total }) => [
        what,
        String(pieces),
        awg === undefined ? '' : `${awg} AWG`,
        tidy(allowances),
        allowances === 0 ? '' : tidy(count.printed.of(each)),
        tidy(count.printed.of(total)),
      ]),
      ['Needed', '', '', '', '', tidy(count.printed.of(count.needed))],
    ],
  };
}

/** How the cables were taken apart, and which grounds were counted, where that was not simply told. */
function readingSteps({ inputs }: BoxStory): Step[] {
  const { cables } = inputs.conductors;
  const grounds = groundsCounted(inputs);
  return [
    ...cables.map((cable) => ({
      what: cableText(cable),
      how: `${cable.count} × ${cable.cores} insulated${cable.ground ? `, and ${cable.count} bare` : ''}`,
      value: `${cable.count * cable.cores} ${wireWord(cable.count * cable.cores)}${cable.ground ? ` and ${cable.count} ground ${wireWord(cable.count)}` : ''}`,
    })),
    ...(cables.length > 0 && grounds.count > 0
      ? [{ what: 'Ground wires counted', value: `${grounds.count}, the thickest ${grounds.awg} AWG` }]
      : []),
  ];
}

export function fillNeeded(story: BoxStory): Finding {
  const { inputs, count, untold, units } = story;
  const inTable = (volume: CubicInches) => `${tidy(count.printed.of(volume))} ${count.printed.unit}`;
  const steps: Step[] = count.lines.map(({ what, count: pieces, awg, allowances, each, total, how, rule }) => ({
    what: `${what}: ${pieces}${awg === undefined ? '' : ` of ${awg} AWG`}`,
    how: how ?? (allowances === 0 ? 'counts nothing' : `${tidy(allowances)} × ${inTable(each)}`),
    value: inTable(total),
    source: rule,
  }));
  const sizes = [...new Set(count.lines.flatMap(({ awg }) => (awg === undefined ? [] : [awg])))];
  const most = neededAtMost(story);
  const others = otherEditions(inputs, count);
  return {
    id: 'fill-needed',
    weight: fitsWhatever(story) ? 'good' : 'caution',
    says: inputs.told.conductors
      ? `The contents need ${roomText(count.needed, units)} by ${codeName(count.edition)}.${untold.length === 0 ? '' : ` Not told and not counted: ${untoldText(untold)}.`}`
      : 'Count the wires that end in the box, in a box proven dead.',
    value: inputs.told.conductors
      ? {
          number: count.needed,
          unit: 'in3',
          ...(most > count.needed ? { low: count.needed, high: most } : {}),
          shown: roomText(count.needed, units),
        }
      : { number: null, unit: 'in3', shown: 'not known' },
    working: [
      ...readingSteps(story),
      ...steps,
      {
        what: 'Needed',
        how: count.lines.map(({ total }) => tidy(count.printed.of(total))).join(' + '),
        value: inTable(count.needed),
      },
      ...(count.printed.unit === 'cu in'
        ? []
        : [
            {
              what: 'In cubic inches',
              how: `${inTable(count.needed)} ÷ 16.387064`,
              value: cubicInchText(count.needed),
            },
          ]),
      ...untold.map(({ what, extra }) => ({
        what: `Not told: ${what}`,
        value: `${cubicInchText(extra)} more if there`,
      })),
      ...others.map(({ edition, needed }) => ({ what: `By NEC ${edition} instead`, value: cubicInchText(needed) })),
    ],
    sources: citations(...sizes.map((awg) => count.freeSpace(awg).citation), ...count.lines.map(({ rule }) => rule)),
    ...(inputs.told.conductors ? { table: countTable(story) } : {}),
  };
}

export function boxVolumeFinding(story: BoxStory): Finding {
  const { inputs, units } = story;
  const { box } = inputs;
  if (box === null) {
    return {
      id: 'box-volume',
      weight: 'caution',
      says: boxRules['not-marked'].says,
      value: { number: null, unit: 'in3', shown: 'not known' },
      working: [],
      sources: citations(cite(boxRules['not-marked'])),
    };
  }
  const volume = roomOf(box);
  const pieces = box.parts.length + box.barriers.length;
  return {
    id: 'box-volume',
    weight: fitsWhatever(story) ? 'good' : 'advice',
    says: `The box has ${roomText(volume, units)}${pieces > 1 || box.parts[0]?.standard ? `: ${boxText(box)}` : ', as marked'}.`,
    value: { number: volume, unit: 'in3', shown: roomText(volume, units) },
    working: [
      ...box.parts.map(({ standard, volume: part, gangs }) => ({
        what: standard?.name ?? 'As marked',
        ...(gangs > 1 && standard ? { how: `${gangs} × ${tidy(standard.volume)}` } : {}),
        value: cubicInchText(part),
        ...(standard ? { source: cite(standard) } : {}),
      })),
      ...box.barriers.map((material) => ({
        what: `Less an unmarked ${material} barrier`,
        value: cubicInchText(boxRules[`barrier-${material}`].volume),
        source: cite(boxRules[`barrier-${material}`]),
      })),
      ...(pieces > 1 ? [{ what: 'Room in the box', value: cubicInchText(volume) }] : []),
    ],
    sources: citations(
      ...box.parts.map(({ standard }) => standard && cite(standard)),
      ...(pieces > 1 ? [cite(boxRules['box-volume'])] : []),
    ),
  };
}

/** The verdict: what is left, or how much is lacking. What is not known never passes. */
export function volumeLeft(story: BoxStory): Finding {
  const { inputs, count, untold, units } = story;
  const base = { id: 'volume-left', sources: citations(cite(boxRules.fits)) } as const;
  const unknown = { number: null, unit: 'in3', shown: 'not known' };
  if (!inputs.told.conductors) {
    return {
      ...base,
      weight: 'stop',
      says: 'Do not add a wire or close this box before its wires are counted, by a qualified person in a box proven dead.',
      value: unknown,
      working: [],
    };
  }
  if (inputs.box === null) {
    return {
      ...base,
      weight: 'stop',
      says: `Do not close this box before its volume is known: it has to have at least ${roomText(neededAtMost(story), units)}.`,
      value: unknown,
      working: [],
    };
  }
  const available = roomOf(inputs.box);
  const left = cubicInches(available - count.needed);
  const most = neededAtMost(story);
  const fits = within(count.needed, available);
  const atMostFits = within(most, available);
  const settled = Math.abs(left) < 1e-9 ? cubicInches(0) : left;
  const spare = most > count.needed ? cubicInches(available - most) : settled;
  const sizes = [...new Set(insulatedIn(inputs.conductors).map(({ awg }) => awg))];
  const further = sizes.map((awg) => ({ awg, more: furtherConductors(spare, count.freeSpace(awg).volume) }));
  const room = further
    .filter(({ more }) => more > 0)
    .map(({ awg, more }) => `${more} more of ${awg} AWG`)
    .join(', or ');
  const full = sizes.length > 0 && room === '';
  const says = !fits
    ? `Do not close this box: it is overfull by ${roomText(cubicInches(-settled), units)}. Take a larger box or an extension ring, or take wires out.`
    : untold.length > 0 && atMostFits
      ? `Look before closing: it fits as told, with ${cubicInchText(settled)} left, and with ${cubicInchText(spare)} if the box also holds ${untoldText(untold)}. Nobody has told whether it does.`
      : !atMostFits
        ? `Look before closing: it fits as told, with ${cubicInchText(settled)} left, but not if the box also holds ${untoldText(untold)}.`
        : settled === 0
          ? 'The box is exactly full: it takes what is told and not one wire more.'
          : `The count leaves ${roomText(settled, units)}${full ? ': the box is full, with no room for one more wire of the sizes in it' : room === '' ? '' : `: room for ${room}`}.`;
  return {
    ...base,
    weight: !fits ? 'stop' : untold.length > 0 ? 'caution' : 'good',
    says,
    value: {
      number: settled,
      unit: 'in3',
      ...(most > count.needed ? { low: cubicInches(available - most), high: settled } : {}),
      shown: fits ? roomText(settled, units) : `${roomText(cubicInches(-settled), units)} too little`,
    },
    working: [
      { what: 'Left', how: `${tidy(available)} − ${tidy(count.needed)}`, value: cubicInchText(settled) },
      ...(most > count.needed
        ? [
            {
              what: 'Left with what was not told',
              how: `${tidy(available)} − ${tidy(most)}`,
              value: cubicInchText(available - most),
            },
          ]
        : []),
      ...further.map(({ awg, more }) => ({
        what: `Room for more of ${awg} AWG`,
        how: `${tidy(spare)} ÷ ${tidy(count.freeSpace(awg).volume)}, whole wires`,
        value: String(more),
        source: count.freeSpace(awg).citation,
      })),
    ],
  };
}
