import type { FormField } from '#findings/reply.ts';
import type { Reading, UnitSystem } from '#interview/question.ts';
import { meansNotKnown, plain } from '#interview/words.ts';
import type { PrintedUnit } from '#knowledge/checklist-evidence.ts';
import type { Kind } from '#quantity/kind.ts';
import { areaOf, boxVolumeOf, lengthOf } from '#quantity/kind-makers.ts';
import { airflow, distance, insulation, minutes, soundLevel, temperature, voltage } from '#quantity/kinds.ts';
import { numberAt } from '#quantity/reading-numbers.ts';
import { folded } from '#quantity/reading-text.ts';
import { cubicInches, metres, squareMetres } from '#quantity/units.ts';
import type { ListedPart, ListedStep } from '#walkthrough/listed-step.ts';
import type { StepValue } from '#walkthrough/walk-event.ts';
import type { Language } from '#words/language.ts';
import { type ValueWords, valueWords } from '../words/swap-values.ts';

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
  read(text: string, units: UnitSystem, told: ValueWords): Reading<number>;
  show(value: number, units: UnitSystem, told: ValueWords): string;
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
  read(text, _, told) {
    const found = numberFirst(text);
    return found && found.after === '' && found.number <= 1000 ? { value: found.number } : { rejected: told.number };
  },
  show: (value) => `${Number(value.toFixed(3))}`,
};

/** Ways a fall is written, each with what one of it is, in metres for each metre. */
const fallUnits: readonly (readonly [RegExp, number])[] = [
  [/^(?:in|inch(?:es)?|")? ?(?:\/|a|per|for each|for every|por) ?(?:ft|foot|pie|')$/, 1 / 12],
  [/^(?:in|inch(?:es)?|")$/, 1 / 12],
  [/^mm ?(?:\/|per) ?m$/, 0.001],
  [/^cm ?(?:\/|per) ?m$/, 0.01],
  [/^(?:%|percent)$/, 0.01],
];

/** A fall or a sag along a duct, up to 45 degrees; a bare number is inches for each foot where the crew works in inches. */
const fall: NumberKind = {
  example: '1/4 in for each foot',
  read(text, units, told) {
    const found = numberFirst(text);
    const bare = found?.after === '' && units === 'inch-pound' ? 1 / 12 : undefined;
    const factor = bare ?? fallUnits.find(([unit]) => unit.test(found?.after.replace(/\s+/g, ' ') ?? ''))?.[1];
    return found && factor !== undefined && found.number * factor <= 1
      ? { value: found.number * factor }
      : { rejected: told.fall };
  },
  show: (value, _, told) => told.fallShown(Number((value * 12).toFixed(3))),
};

const numberKinds: Readonly<Record<PrintedUnit, NumberKind>> = {
  in: asNumber(span),
  ft: asNumber(distance),
  'ft^2': asNumber(patch),
  'in^3': asNumber(spareRoom),
  'in/ft': fall,
  cfm: asNumber(airflow),
  // A value that is neither dead nor a live point: an example typed as it stands passes no test.
  V: { ...asNumber(voltage), example: '7.5 V' },
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
export function rangeOf(part: ListedPart, told: ValueWords = valueWords.english): string {
  if (part.kind === 'pair') return told.loses(part.dropUnder);
  if (part.kind === 'tester-proof') return told.provingUnitOr(part.least.shown, part.most.shown);
  if (part.kind !== 'number') return '';
  const ends = [
    part.least && told.atLeast(part.least.shown),
    part.most && told.atMost(part.most.shown),
    part.under && told.under(part.under.shown),
    part.leastOf && told.atLeastAgreed,
    part.leastBeside && told.andNeeded,
  ];
  return ends.filter(Boolean).join(', ');
}

function acceptsOf({ part }: Slot, told: ValueWords): string {
  switch (part.kind) {
    case 'number':
    case 'pair':
      return [told.suchAs(exampleOf(part.unit, told)), rangeOf(part, told)].filter(Boolean).join('; ');
    case 'tester-proof':
      return rangeOf(part, told);
    case 'photo':
      return told.picture;
    case 'tick':
      return told.yesOnce;
    case 'choice':
      return told.pickOne;
    case 'text':
      return part.neededBelow ? told.onlyWhereLess : told.fewWords;
  }
}

/** The fields of a form that asks for everything a step records. */
export const fieldsOf = (listed: ListedStep, told: ValueWords = valueWords.english): readonly FormField[] =>
  typedSlotsOf(listed).map((slot) => ({
    id: slot.id,
    label: slot.label,
    accepts: acceptsOf(slot, told),
    optional: slot.part.optional || slot.part.onlyIf !== undefined,
    ...(slot.part.kind === 'choice' ? { choices: slot.part.options.map(({ id, label }) => ({ id, label })) } : {}),
    ...(slot.part.kind === 'photo' ? { photo: true as const } : {}),
    ...(slot.part.kind === 'tick' ? { choices: [{ id: 'yes', label: told.yesItIs }] } : {}),
  }));

/** How a typed value is read: in which units a bare number is, and in which language it is told what would do. */
interface ReadingAs {
  readonly units: UnitSystem;
  readonly language?: Language | undefined;
  /** False where people can be hurt: "don't know" is no record there. */
  readonly mayBeUnknown?: boolean;
}

/** Numbers are read by kinds that speak English; in another language the example says what would do. */
function readNumber(unit: PrintedUnit, text: string, { units, language = 'english' }: ReadingAs): Reading<number> {
  const told = valueWords[language];
  const reading = numberKinds[unit].read(text, units, told);
  const own = language === 'english' || unit === '1' || unit === 'in/ft';
  return own || 'value' in reading
    ? reading
    : { rejected: told.notRead(text.trim().slice(0, 40), exampleOf(unit, told)) };
}

const exampleOf = (unit: PrintedUnit, told: ValueWords): string =>
  unit === 'in/ft' ? told.fallExample : numberKinds[unit].example.replace(/ or /g, ` ${told.or} `);

/** A word that says only that it was done, or a mark. */
const bareAssent =
  /^(?:ok(?:ay|ey)?|k|y|yes|yep|yeah|yup|sure|done|fine|good|all good|right|correct|true|tick|check(?:ed)?|got it|x|s[ií]|listo|hecho|bien|vale|dale|claro|correcto|ya|[\p{P}\p{S}\s]*)$/u;

/** Why words are no record of what a step asks for. */
function lackingIn(
  part: Extract<ListedPart, { kind: 'text' }>,
  text: string,
  { mayBeUnknown, told }: { readonly mayBeUnknown: boolean; readonly told: ValueWords },
): string | null {
  if (bareAssent.test(plain(text))) return told.sayWhat;
  if (!mayBeUnknown && meansNotKnown(text)) return told.leaveOpen;
  return part.numbered && !/\d/.test(text) ? told.giveItsNumber : null;
}

function readSlot(
  { label, part }: Slot,
  text: string,
  { mayBeUnknown = true, ...as }: ReadingAs,
): Reading<string | number | boolean> {
  const said = plain(text);
  const told = valueWords[as.language ?? 'english'];
  const named = (unit: PrintedUnit): Reading<number> => {
    const reading = readNumber(unit, text, as);
    return 'rejected' in reading ? { rejected: `${label}: ${reading.rejected}` } : reading;
  };
  switch (part.kind) {
    case 'choice': {
      const found =
        part.options.find(
          ({ id, label: shown }) =>
            id === text.trim() || plain(id.replaceAll('-', ' ')) === said || plain(shown) === said,
        ) ?? (meansNotKnown(text) ? part.options.find(({ id }) => id === 'unknown') : undefined);
      return found
        ? { value: found.id }
        : { rejected: told.pickOneOf(label, part.options.map((option) => option.label).join(' / ')) };
    }
    case 'number':
    case 'pair':
      return named(part.unit);
    case 'tester-proof':
      return /^(?:proving[ -]unit|unidad de prueba)$/.test(said) ? { value: 'proving-unit' } : named('V');
    case 'tick':
      return /^(?:y|yes|done|true|ok|tick|s[ií]|hecho|listo)$/.test(said)
        ? { value: true }
        : { rejected: told.sayYes(label) };
    case 'photo':
      return { rejected: told.noPhoto(label) };
    case 'text': {
      const lacking = lackingIn(part, text, { mayBeUnknown, told });
      return lacking === null ? { value: text.trim().slice(0, 300) } : { rejected: `${label}: ${lacking}` };
    }
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
export function readFilled(
  listed: ListedStep,
  filled: Filled,
  units: UnitSystem,
  language?: Language,
): Reading<StepValue> {
  const value: Record<string, string | number | boolean> = {};
  for (const slot of typedSlotsOf(listed)) {
    const text = Object.hasOwn(filled, slot.id) ? filled[slot.id]?.trim() : undefined;
    if (text === undefined || text === '') continue;
    const reading = readSlot(slot, text, { units, language, mayBeUnknown: listed.step.overridable });
    if ('rejected' in reading) return reading;
    value[slot.id] = reading.value;
  }
  return { value };
}

/** What an answer says, for a person: "Controls that feed the fan: All left on; Hot to neutral: 0 V". */
export const saidIn = (
  listed: ListedStep,
  value: StepValue,
  units: UnitSystem,
  language: Language = 'english',
): string =>
  slotsOf(listed)
    .flatMap(({ id, label, part }) => {
      const said = value[id];
      if (said === undefined) return [];
      if (part.kind === 'tick') return [label];
      if (part.kind === 'choice')
        return [`${label}: ${part.options.find((option) => option.id === said)?.label ?? String(said)}`];
      if (typeof said === 'number' && (part.kind === 'number' || part.kind === 'pair' || part.kind === 'tester-proof'))
        return [`${label}: ${numberKinds[part.unit].show(said, units, valueWords[language])}`];
      return [`${label}: ${said === 'proving-unit' ? valueWords[language].onProvingUnit : String(said)}`];
    })
    .join('; ');
