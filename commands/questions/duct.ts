import { optional } from '#interview/quantities.ts';
import type { Choice, Question, UnitSystem } from '#interview/question.ts';
import { type DuctKind, fittings, flexLays } from '#knowledge/ducts.ts';
import { type Estimate, isExact } from '#quantity/estimate.ts';
import { altitude as altitudeKind, ductDiameter, ductLength, roughnessHeight } from '#quantity/kinds.ts';
import { inEach, type Metres, metres, type Ratio } from '#quantity/units.ts';
import { ductQuestions } from '../words/duct-questions.ts';
import { readDuctRun } from './duct-run-reading.ts';
import type { DuctPart, DuctRun, RunPart } from './run-parts.ts';

/** The words that end a run being built part by part. */
const ends = /^(?:done|end|finished|that'?s (?:it|all))$/i;

const partsOf = (draft: string): string[] =>
  draft
    .split(';')
    .map((part) => part.trim())
    .filter(Boolean);

const isEnd = (part: RunPart | undefined): boolean =>
  part?.part === 'fitting' && part.fitting !== 'custom' && fittings[part.fitting].includesExit;

const kindNames: Readonly<Record<DuctKind, string>> = {
  smooth: 'smooth',
  spiral: 'spiral',
  flex: 'flex',
  'foil-flex': 'foil flex',
};

function partText(part: RunPart, units: UnitSystem): string {
  const size = (diameter: number | null) =>
    diameter === null ? '' : ` ${ductDiameter.showShort(metres(diameter), units)}`;
  if (part.part === 'transition') {
    const way = part.to < part.from ? 'reducer' : 'increaser';
    const k = part.coefficient === null ? '' : ` k=${part.coefficient}`;
    return `${way} ${ductDiameter.showShort(part.from, units)} to ${ductDiameter.showShort(part.to, units)}${k}`;
  }
  if (part.part === 'fitting') {
    const name = part.fitting === 'custom' ? 'fitting' : (fittings[part.fitting].names.at(-1) ?? part.fitting);
    const count = part.count === 1 ? '' : `${part.count} x `;
    return `${count}${plainest(part.fitting, name)}${size(part.diameter)}${part.coefficient === null ? '' : ` k=${part.coefficient}`}`;
  }
  const squeezed = part.compression === null ? '' : ` ${lieText(part.compression)}`;
  const rough = part.roughness === null ? '' : ` roughness=${roughnessHeight.showShort(part.roughness, units)}`;
  return `${lengthText(part, units)}${size(part.diameter)} ${kindNames[part.kind]}${squeezed}${rough}`;
}

/** Below this a length is printed in inches alone, which would be taken for a size of duct. */
const twoFeet = ductLength.from(2, 'ft');

/** A length as it can be read again: feet and inches only before a size, since "14 ft 6 in flex" is 14 ft of 6 in flex. */
const lengthText = ({ length, diameter }: DuctPart, units: UnitSystem): string =>
  inEach(units, (system) => {
    if (units === 'both' && isExact(length)) return ductLength.showShort(length.typical, system);
    const { unit, of } = ductLength.scale(system);
    const number = (value: Metres) => String(Number(of(value).toFixed(system === 'metric' ? 3 : 2)));
    if (!isExact(length)) return `${number(length.low)} to ${number(length.high)} ${unit}`;
    const inFeet = system === 'inch-pound' && diameter !== null && length.typical >= twoFeet;
    return inFeet ? ductLength.showShort(length.typical, system) : `${number(length.typical)} ${unit}`;
  });

const lieWords = { stretched: 'pulled tight', 'as-let-go': 'slack', sloppy: 'sloppy' } as const;

/** How flex lies: in the word it was told with, else as a percentage. */
function lieText(compression: Estimate<Ratio>): string {
  const told = (Object.keys(lieWords) as (keyof typeof lieWords)[]).find((lay) => {
    const { low, high } = flexLays[lay].amount;
    return !isExact(compression) && low === compression.low && high === compression.high;
  });
  return told === undefined ? `compressed ${round(compression.typical * 100)} %` : lieWords[told];
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** The name a run is written back with: the id in words reads best where it is itself a name. */
const plainest = (id: string, name: string): string => {
  const words = id.replace(/-/g, ' ');
  return id !== 'custom' && (fittings[id as keyof typeof fittings].names as readonly string[]).includes(words)
    ? words
    : name;
};

const ductRunText = ({ parts }: DuctRun, units: UnitSystem): string =>
  parts.map((part) => partText(part, units)).join('; ');

const lengthsOf = (draft: string): readonly Choice[] => {
  const size = /(\d+(?:\s\d\/\d)?)\s*in/i.exec(draft)?.[1] ?? '4';
  return [
    { id: `5 ft ${size} in flex`, label: `5 ft ${size} in flex` },
    { id: `10 ft ${size} in flex`, label: `10 ft ${size} in flex` },
    { id: `5 ft ${size} in smooth`, label: `5 ft ${size} in smooth` },
    { id: `10 ft ${size} in smooth`, label: `10 ft ${size} in smooth` },
  ];
};

const sum = (draft: string): string => partsOf(draft).join('; ');

export const ductRun: Question<DuctRun> = {
  id: 'duct-run',
  words: { spanish: ductQuestions['duct-run'] },
  prompt:
    'What is the duct, from the fan to outdoors? One part at a time, or all of it: 14 ft 4 in flex; 2 x elbow 90; wall cap.',
  why: 'Every foot, bend and cap takes pressure. Length as it lies, not as the crow flies: a sagging run is longer.',
  accepts:
    'parts with ; between: a length (14 ft 4 in flex compressed 15 %), fittings (2 x elbow 90), reducer 5 to 4 in, an end (wall cap)',
  brief: 'Duct from fan to outdoors, part by part',
  widget: { kind: 'text', placeholder: '14 ft 4 in flex; 2 x elbow 90; wall cap' },
  growing: {
    grow(draft, piece, units) {
      const said = piece.trim();
      if (ends.test(said)) {
        return draft === ''
          ? { rejected: 'Nothing is in the run yet. Start at the fan, such as 14 ft 4 in flex.' }
          : finished(draft, units);
      }
      const next = draft === '' ? said : `${draft}; ${said}`;
      const reading = readDuctRun(next, units);
      const onlyUnsized = 'rejected' in reading && reading.rejected.startsWith('No part says its diameter');
      if ('rejected' in reading && !onlyUnsized) return reading;
      const last = 'value' in reading ? reading.value.parts.at(-1) : undefined;
      return isEnd(last) || (draft === '' && said.includes(';')) ? finished(next, units) : { draft: next };
    },
    shrink: (draft) => partsOf(draft).slice(0, -1).join('; '),
    prompt: (draft) => `So far: ${sum(draft)}. What comes next? Say done after the last part.`,
    choices: (draft) => [
      ...lengthsOf(draft),
      ...(draft === ''
        ? []
        : [
            { id: 'elbow 90', label: 'Elbow 90°' },
            { id: 'elbow 45', label: 'Elbow 45°' },
            { id: 'wall cap', label: 'Wall cap (end)' },
            { id: 'roof cap', label: 'Roof cap (end)' },
            { id: 'done', label: 'Done' },
          ]),
    ],
  },
  whenUnknown: {
    value: {
      parts: [
        {
          part: 'duct',
          kind: 'flex',
          diameter: ductDiameter.from(4, 'in'),
          length: {
            low: ductLength.from(6, 'ft'),
            typical: ductLength.from(12, 'ft'),
            high: ductLength.from(25, 'ft'),
          },
          compression: null,
          roughness: null,
        },
        { part: 'fitting', fitting: 'elbow-90', count: 2, diameter: null, coefficient: null },
        { part: 'fitting', fitting: 'wall-cap', count: 1, diameter: null, coefficient: null },
      ],
    },
    because: 'A common run stands in: 6 to 25 ft of 4 in flex, two elbows and a wall cap; from common practice.',
  },
  read: readDuctRun,
  show: ductRunText,
};

function finished(text: string, units: UnitSystem): { done: string } | { rejected: string } {
  const reading = readDuctRun(text, units);
  return 'rejected' in reading ? reading : { done: text };
}

export const altitude = optional({
  id: 'altitude',
  words: { spanish: ductQuestions.altitude },
  prompt: 'How high above the sea is the house?',
  why: 'Thin air weighs less: fan and duct both feel it, so the airflow hardly moves, but the pressures do.',
  brief: 'Height above the sea',
  kind: altitudeKind,
  because: 'Reckoned at sea level.',
});
