import type { FormField } from '#findings/reply.ts';
import type { Reading, UnitSystem } from '#interview/question.ts';
import { plain } from '#interview/words.ts';
import type { PrintedUnit } from '#knowledge/checklist-evidence.ts';
import type { Kind } from '#quantity/kind.ts';
import { areaOf, boxVolumeOf, lengthOf } from '#quantity/kind-makers.ts';
import { airflow, distance, insulation, minutes, soundLevel, temperature, voltage } from '#quantity/kinds.ts';
import { numberAt } from '#quantity/reading-numbers.ts';
import { folded } from '#quantity/reading-text.ts';
import { cubicInches, metres, squareMetres } from '#quantity/units.ts';
import type { ListedPart, ListedStep } from '#walkthrough/listed-step.ts';
import type { StepValue } from '#walkthrough/walk-event.ts';

/** Joists, grilles, overlaps: wider than what a duct or a gap may be. */
const span = lengthOf({
  bare: { 'inch-pound': 'in', metric: 'mm' },
  least: metres(0),
  most: metres(6.096),
  example: '14 1/2 in or 370 mm',
});

/** A patch of paint or mold, from nothing up. */
const patch = areaOf({
  bare: { 'inch-pound': 'ft^2', metric: 'm^2' },
  least: squareMetres(0),
  most: squareMetres(185.80608),
  example: '2 sq ft or 0.2 m2',
});

/** Room left in a box; below nothing where it is too full. */
const spareRoom = boxVolumeOf({ least: cubicInches(-500), most: cubicInches(500), example: '2.5 cu in or 41 cm3' });

/** How a number is read and shown. */
interface NumberKind {
  readonly example: string;
  read(text: string, units: UnitSystem): Reading<number>;
  show(value: number, units: UnitSystem): string;
}

const asNumber = <Q extends number>(kind: Kind<Q>): NumberKind => ({
  example: kind.example,
  read: (text, units) => kind.read(text, units),
  show: (value, units) => kind.showShort(value as Q, units),
});

/** A number that begins the text and what follows it; nothing where none does, or where a sign stands before it. */
function numberFirst(text: string): { readonly number: number; readonly after: string } | undefined {
  const said = folded(text);
  const found = numberAt(said, 0);
  return found && { number: found.value, after: said.slice(found.end).trim() };
}

/** How many: a number and nothing else, since "3 of 4" and "3 missing" are not three. */
const howMany: NumberKind = {
  example: '3',
  read(text) {
    const found = numberFirst(text);
    return found && found.after === '' && found.number <= 1000
      ? { value: found.number }
      : { rejected: 'Give a number alone, such as 3.' };
  },
  show: (value) => `${Number(value.toFixed(3))}`,
};

/** Ways a fall is written, each with what one of it is, in metres for each metre. */
const fallUnits: readonly (readonly [RegExp, number])[] = [
  [/^(?:in|inch(?:es)?|")? ?(?:\/|a|per|for each|for every) ?(?:ft|foot|')$/, 1 / 12],
  [/^(?:in|inch(?:es)?|")$/, 1 / 12],
  [/^mm ?(?:\/|per) ?m$/, 0.001],
  [/^cm ?(?:\/|per) ?m$/, 0.01],
  [/^(?:%|percent)$/, 0.01],
];

/** A fall or a sag along a duct, up to 45 degrees; a bare number is inches for each foot where the crew works in inches. */
const fall: NumberKind = {
  example: '1/4 in for each foot',
  read(text, units) {
    const found = numberFirst(text);
    const bare = found?.after === '' && units === 'inch-pound' ? 1 / 12 : undefined;
    const factor = bare ?? fallUnits.find(([unit]) => unit.test(found?.after.replace(/\s+/g, ' ') ?? ''))?.[1];
    return found && factor !== undefined && found.number * factor <= 1
      ? { value: found.number * factor }
      : { rejected: 'Give the fall with its unit, such as 1/4 in for each foot, 2 % or 20 mm/m.' };
  },
  show: (value) => `${Number((value * 12).toFixed(3))} in for each foot`,
};

const numberKinds: Readonly<Record<PrintedUnit, NumberKind>> = {
  in: asNumber(span),
  ft: asNumber(distance),
  'ft^2': asNumber(patch),
  'in^3': asNumber(spareRoom),
  'in/ft': fall,
  cfm: asNumber(airflow),
  V: asNumber(voltage),
  degF: asNumber(temperature),
  R: asNumber(insulation),
  dBA: asNumber(soundLevel),
  min: asNumber(minutes),
  '1': howMany,
};

/** What a value is typed for: most parts are one, a pair is two. */
interface Slot {
  readonly id: string;
  readonly label: string;
  readonly part: ListedPart;
}

const slotsOf = ({ parts }: ListedStep): readonly Slot[] =>
  parts.flatMap((part): Slot[] =>
    part.kind === 'pair'
      ? [part.first, part.second].map(({ id, label }) => ({ id, label: `${part.label}: ${label}`, part }))
      : [{ id: part.id, label: part.label, part }],
  );

/** What somebody types; what is worked out is never typed, nor asked for. */
const typedSlotsOf = (listed: ListedStep): readonly Slot[] =>
  slotsOf(listed).filter(({ part }) => !(part.kind === 'number' && part.worked));

/** The range of a number in words: "at least 6 in, at most 4 ft". */
export function rangeOf(part: ListedPart): string {
  if (part.kind === 'pair') return `may lose less than ${part.dropUnder} %`;
  if (part.kind === 'tester-proof') return `proving unit, or a live point at ${part.least.shown} to ${part.most.shown}`;
  if (part.kind !== 'number') return '';
  const ends = [
    part.least && `at least ${part.least.shown}`,
    part.most && `at most ${part.most.shown}`,
    part.under && `under ${part.under.shown}`,
    part.leastOf && 'at least what was agreed',
    part.leastBeside && 'and what the room needs',
  ];
  return ends.filter(Boolean).join(', ');
}

function acceptsOf({ part }: Slot): string {
  switch (part.kind) {
    case 'number':
    case 'pair':
      return [`such as ${numberKinds[part.unit].example}`, rangeOf(part)].filter(Boolean).join('; ');
    case 'tester-proof':
      return rangeOf(part);
    case 'photo':
      return 'a JPEG, PNG, WebP or HEIC picture of at most 10 MB';
    case 'tick':
      return 'yes, once it is so';
    case 'choice':
      return 'pick one';
    case 'text':
      return part.neededBelow ? 'only where it is less' : 'in a few words';
  }
}

/** The fields of a form that asks for everything a step records. */
export const fieldsOf = (listed: ListedStep): readonly FormField[] =>
  typedSlotsOf(listed).map((slot) => ({
    id: slot.id,
    label: slot.label,
    accepts: acceptsOf(slot),
    optional: slot.part.optional || slot.part.onlyIf !== undefined,
    ...(slot.part.kind === 'choice' ? { choices: slot.part.options.map(({ id, label }) => ({ id, label })) } : {}),
    ...(slot.part.kind === 'photo' ? { photo: true as const } : {}),
    ...(slot.part.kind === 'tick' ? { choices: [{ id: 'yes', label: 'Yes, it is so' }] } : {}),
  }));

function readSlot({ label, part }: Slot, text: string, units: UnitSystem): Reading<string | number | boolean> {
  const said = plain(text);
  const named = (reading: Reading<number>): Reading<number> =>
    'rejected' in reading ? { rejected: `${label}: ${reading.rejected}` } : reading;
  switch (part.kind) {
    case 'choice': {
      const found = part.options.find(
        ({ id, label: shown }) =>
          id === text.trim() || plain(id.replaceAll('-', ' ')) === said || plain(shown) === said,
      );
      return found
        ? { value: found.id }
        : { rejected: `${label}: pick one of ${part.options.map((option) => option.label).join(' / ')}.` };
    }
    case 'number':
    case 'pair':
      return named(numberKinds[part.unit].read(text, units));
    case 'tester-proof':
      return /^proving[ -]unit$/.test(said) ? { value: 'proving-unit' } : named(numberKinds.V.read(text, units));
    case 'tick':
      return /^(?:y|yes|done|true|ok|tick)$/.test(said)
        ? { value: true }
        : { rejected: `${label}: say yes once it is so.` };
    case 'photo':
      return { rejected: `${label}: words are no photo. Send the photo itself.` };
    case 'text':
      return { value: text.trim().slice(0, 300) };
  }
}

/** What was filled in, by part. */
export type Filled = Readonly<Record<string, string>>;

/** "controls=on hot-neutral=0" by part; where a step records one thing, it needs no name. */
export function filledIn(listed: ListedStep, text: string): Filled {
  const slots = typedSlotsOf(listed);
  const names = slots.map(({ id }) => id).join('|');
  const marks = names === '' ? [] : [...text.matchAll(new RegExp(`(?:^|[\\s,;])(${names})\\s*=\\s*`, 'g'))];
  const [only] = slots;
  if (marks.length === 0) return only && text.trim() !== '' ? { [only.id]: text.trim() } : {};
  return Object.fromEntries(
    marks.map((mark, index) => {
      const from = mark.index + mark[0].length;
      const upTo = marks[index + 1]?.index ?? text.length;
      return [mark[1] as string, text.slice(from, upTo).replace(/[\s,;]+$/, '')];
    }),
  );
}

/** An answer to a step as the list takes it, or the first thing that could not be read. */
export function readFilled(listed: ListedStep, filled: Filled, units: UnitSystem): Reading<StepValue> {
  const value: Record<string, string | number | boolean> = {};
  for (const slot of typedSlotsOf(listed)) {
    const text = Object.hasOwn(filled, slot.id) ? filled[slot.id]?.trim() : undefined;
    if (text === undefined || text === '') continue;
    const reading = readSlot(slot, text, units);
    if ('rejected' in reading) return reading;
    value[slot.id] = reading.value;
  }
  return { value };
}

/** What an answer says, for a person: "Controls that feed the fan: All left on; Hot to neutral: 0 V". */
export const saidIn = (listed: ListedStep, value: StepValue, units: UnitSystem): string =>
  slotsOf(listed)
    .flatMap(({ id, label, part }) => {
      const said = value[id];
      if (said === undefined) return [];
      if (part.kind === 'tick') return [label];
      if (part.kind === 'choice')
        return [`${label}: ${part.options.find((option) => option.id === said)?.label ?? String(said)}`];
      if (typeof said === 'number' && (part.kind === 'number' || part.kind === 'pair' || part.kind === 'tester-proof'))
        return [`${label}: ${numberKinds[part.unit].show(said, units)}`];
      return [`${label}: ${said === 'proving-unit' ? 'on a proving unit' : String(said)}`];
    })
    .join('; ');
