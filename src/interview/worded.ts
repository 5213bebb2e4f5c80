import { amountWords } from '#words/amounts.ts';
import { type InEach, inEach } from '#words/in-each.ts';
import { type Language, type OtherLanguage, otherLanguages } from '#words/language.ts';
import type { QuestionWords } from '#words/question-words.ts';
import { type Option, optionMeant, shortened } from './choices.ts';
import type { AnyQuestion, Growing, Reading, UnitSystem, Widget } from './question.ts';
import { plain } from './words.ts';

const refusals = inEach(
  {
    nothing: (accepts: string) => `Nothing was given. Give ${accepts}.`,
    notThese: (said: string, accepts: string) => `“${said}” did not fit. Give ${accepts}.`,
  },
  {
    nothing: (accepts) => `No se dio nada. Dé ${accepts}.`,
    notThese: (said, accepts) => `No entendí “${said}”. Dé ${accepts}.`,
  },
);

const picking = inEach(
  {
    yesOrNo: 'yes or no',
    one: (labels: readonly string[]) => `one of: ${joined(labels, 'or')}`,
    several: (labels: readonly string[]) => `any of these with commas between, or none: ${joined(labels, 'or')}`,
  },
  {
    yesOrNo: 'sí o no',
    one: (labels) => `una de estas: ${joined(labels, 'o')}`,
    several: (labels) => `las que apliquen, con comas, o ninguna: ${joined(labels, 'o')}`,
  },
);

const joined = (labels: readonly string[], or: string): string =>
  labels.length < 2 ? labels.join('') : `${labels.slice(0, -1).join(', ')} ${or} ${labels.at(-1)}`;

const usualLabels: InEach<Readonly<Record<string, string>>> = inEach({ yes: 'Yes', no: 'No' }, { yes: 'Sí', no: 'No' });

/** Values that are told in words by many questions alike. */
const usualShown: InEach<Readonly<Record<string, string>>> = inEach(
  { none: 'none', 'not known': 'not known' },
  { none: 'ninguno', 'not known': 'no se sabe' },
);

/** Whether a value reads back as "not known", in whichever language. */
export const readsNotKnown = (shown: string): boolean =>
  Object.values(usualShown).some((words) => words['not known'] === shown);

const made = new WeakMap<AnyQuestion, Map<OtherLanguage, AnyQuestion>>();

/** A question as it is asked in a language; in English where it has no words in that one. */
export function worded(question: AnyQuestion, language: Language = 'english'): AnyQuestion {
  const words = language === 'english' ? undefined : question.words?.[language];
  if (language === 'english' || words === undefined) return question;
  const known = made.get(question) ?? new Map<OtherLanguage, AnyQuestion>();
  made.set(question, known);
  const before = known.get(language);
  if (before) return before;
  const inWords = translated(question, language, words);
  known.set(language, inWords);
  return inWords;
}

/** The question in every language but English, for reading back what was answered in one of them. */
export const inOtherWords = (question: AnyQuestion): readonly AnyQuestion[] =>
  question.words === undefined ? [] : otherLanguages.map((language) => worded(question, language));

/** Without the accents that nobody types on a phone. */
const unmarked = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '');

const bareYesOrNo = /^\s*(?:s[ií]|no|yes|y|n)\s*[.!]?\s*$/i;

function translated(question: AnyQuestion, language: OtherLanguage, words: QuestionWords): AnyQuestion {
  const { prompt, why, brief, because, shown = {} } = words;
  const { words: _, growing, ...asked } = question;
  const choices = optionsIn(question.widget, words, usualLabels[language]);
  const accepts = words.accepts ?? pickedFrom(question.widget, choices, language);
  const amounts = amountWords[language];
  const read = (text: string, units: UnitSystem): Reading<unknown> => {
    const reading = question.read(text, units);
    if ('value' in reading) return reading;
    const inWords = question.read(typedInEnglish(text, choices), units);
    if ('value' in inWords) return inWords;
    const inFigures = question.read(valueShown(text, shown) ?? amounts.typed(text), units);
    if ('value' in inFigures) return inFigures;
    const said = shortened(text.trim());
    return {
      rejected: said === '' ? refusals[language].nothing(accepts) : refusals[language].notThese(said, accepts),
    };
  };
  return {
    ...asked,
    language,
    prompt,
    why,
    accepts,
    brief,
    whenUnknown: { ...question.whenUnknown, because },
    widget: widgetIn(question.widget, words, choices),
    ...(growing ? { growing: growingIn(growing, words) } : {}),
    read,
    show: (value, units) => {
      const own = question.show(value, units);
      // What is built of parts is read back in the words it is typed in.
      const inWords = shown[own] ?? shownChoices(value, choices) ?? usualShown[language][own];
      return inWords ?? (growing ? own : amounts.told(own));
    },
  };
}

function pickedFrom(widget: Widget, choices: readonly Option<string>[], language: OtherLanguage): string {
  const texts = picking[language];
  const ids = choices.map(({ id }) => id).join();
  if (ids === 'yes,no') return texts.yesOrNo;
  return texts[widget.kind === 'several' ? 'several' : 'one'](choices.map(({ label }) => label));
}

const growingIn = (growing: Growing, { growing: words }: QuestionWords): Growing => {
  if (words === undefined) return growing;
  return {
    ...growing,
    grow(draft, piece, units) {
      const growth = growing.grow(draft, words.ended.test(piece.trim()) ? 'done' : piece, units);
      return 'rejected' in growth ? { rejected: words.refused(shortened(piece.trim())) } : growth;
    },
    prompt: words.soFar,
    choices: (draft) => growing.choices(draft).map(({ id, label }) => ({ id, label: words.choices[id] ?? label })),
  };
};

/** The English of a value that is told in words, where somebody typed those words. */
const valueShown = (text: string, shown: Readonly<Record<string, string>>): string | undefined =>
  Object.entries(shown).find(([, words]) => plain(words) === plain(text))?.[0];

const optionsIn = (
  widget: Widget,
  { choices = {}, hints = {}, also = {} }: QuestionWords,
  usual: Readonly<Record<string, string>>,
): readonly Option<string>[] =>
  widget.kind === 'text'
    ? []
    : widget.choices.map((choice) => ({
        ...choice,
        label: choices[choice.id] ?? usual[choice.id] ?? choice.label,
        ...(choice.hint === undefined ? {} : { hint: hints[choice.id] ?? choice.hint }),
        also: [unmarked(choices[choice.id] ?? usual[choice.id] ?? choice.label), ...(also[choice.id] ?? [])],
      }));

const widgetIn = (widget: Widget, { placeholder }: QuestionWords, choices: readonly Option<string>[]): Widget =>
  widget.kind === 'text'
    ? { ...widget, placeholder: placeholder ?? widget.placeholder }
    : { ...widget, choices: choices.map(({ also: _, ...choice }) => choice) };

/** What was typed with each choice named in the other language put as its id, so that the question itself can read it. */
function typedInEnglish(text: string, choices: readonly Option<string>[]): string {
  const meant = (part: string): string =>
    (isTooShort(part) ? exactly(part, choices) : optionMeant(part, choices))?.id ?? part;
  const whole = meant(text.slice(0, 200));
  return whole !== text.slice(0, 200) || choices.length === 0
    ? whole
    : text
        .split(/[,;+&\n]/)
        .map((part) => (/^\s*ningun[oa]?\s*$/i.test(part) ? 'none' : meant(part)))
        .join(', ');
}

/**
 * A bare yes or no, or three letters, are the name of a choice or nothing: "No" must not be taken for the start of another, nor
 * "CA", which the question itself has just called unclear, for Canadá.
 */
const isTooShort = (text: string): boolean => bareYesOrNo.test(text) || text.trim().length < 4;

const exactly = (text: string, choices: readonly Option<string>[]): Option<string> | undefined =>
  choices.find(({ label, also = [] }) =>
    [label, ...also].some((name) => name.toLowerCase() === text.trim().toLowerCase().replace(/[.!]$/, '')),
  );

function shownChoices(value: unknown, choices: readonly Option<string>[]): string | undefined {
  const label = (id: unknown) => choices.find((choice) => choice.id === id)?.label;
  if (!Array.isArray(value)) return label(value);
  const labels = value.map(label);
  return labels.length > 0 && labels.every((each) => each !== undefined) ? labels.join(', ') : undefined;
}
