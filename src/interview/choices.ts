import type { InOtherWords } from '#words/question-words.ts';
import type { Choice, Question, Reading, WhenUnknown } from './question.ts';
import { plain } from './words.ts';

/** The words of a question, apart from how it is answered. */
export interface Wording {
  readonly id: string;
  readonly prompt: string;
  readonly why: string;
  readonly brief: string;
  readonly safety?: true;
  readonly unknownCounts?: true;
  readonly words?: InOtherWords;
}

/** A choice with the other words people use for it. */
export interface Option<Id extends string> extends Choice {
  readonly id: Id;
  readonly also?: readonly string[];
}

const listed = (labels: readonly string[]): string =>
  labels.length < 2 ? labels.join('') : `${labels.slice(0, -1).join(', ')} or ${labels.at(-1)}`;

export const shortened = (text: string): string => {
  const clean = [...text].filter((character) => character >= ' ' && character !== '\u007f').join('');
  return clean.length > 30 ? `${clean.slice(0, 30)}…` : clean;
};

/** The choice that was typed: by its id, its label, another word for it, or the start of one of these. */
export function optionMeant<Id extends string>(text: string, options: readonly Option<Id>[]): Option<Id> | undefined {
  const said = plain(text).replace(/[-_]/g, ' ');
  if (said === '') return undefined;
  const names = (option: Option<Id>) =>
    [option.id, option.label, ...(option.also ?? [])].map((name) => plain(name).replace(/[-_]/g, ' '));
  const exact = options.find((option) => names(option).includes(said));
  if (exact) return exact;
  const beginning = options.filter((option) => names(option).some((name) => name.startsWith(said)));
  return said.length > 1 && beginning.length === 1 ? beginning[0] : undefined;
}

/** A question answered by picking one of a few; the pick can be typed by id, label, another word for it, or its start. */
export function oneOf<const Id extends string>(
  definition: Wording & { readonly choices: readonly Option<Id>[]; readonly whenUnknown: WhenUnknown<Id> },
): Question<Id> {
  const { choices, whenUnknown, ...wording } = definition;
  const accepts = listed(choices.map((choice) => choice.label));
  return {
    ...wording,
    accepts: `one of: ${accepts}`,
    widget: { kind: 'one', choices },
    whenUnknown,
    read(text): Reading<Id> {
      const option = optionMeant(text.slice(0, 200), choices);
      if (option) return { value: option.id };
      const said = shortened(text.trim());
      return {
        rejected:
          said === '' ? `Nothing was given. Pick ${accepts}.` : `“${said}” is not one of these. Pick ${accepts}.`,
      };
    },
    show: (value) => choices.find((choice) => choice.id === value)?.label ?? String(value),
  };
}

/** A question answered by any number of picks, typed with commas between them; "none" is an answer. */
export function severalOf<const Id extends string>(
  definition: Wording & { readonly choices: readonly Option<Id>[]; readonly whenUnknown: WhenUnknown<readonly Id[]> },
): Question<readonly Id[]> {
  const { choices, whenUnknown, ...wording } = definition;
  const accepts = listed(choices.map((choice) => choice.label));
  return {
    ...wording,
    accepts: `any of these with commas between, or none: ${accepts}`,
    widget: { kind: 'several', choices },
    whenUnknown,
    read(text): Reading<readonly Id[]> {
      const said = text.slice(0, 400).trim();
      if (said === '') return { rejected: `Nothing was given. Name any of ${accepts}, or none.` };
      if (plain(said) === 'none') return { value: [] };
      const read = said
        .split(/[,;+&\n]/)
        .flatMap((part) => (optionMeant(part, choices) ? [part] : part.split(/\band\b/i)))
        .filter((part) => part.trim() !== '')
        .map((part) => ({ part, option: optionMeant(part, choices) }));
      const strange = read
        .filter(({ option }) => option === undefined)
        .map(({ part }) => `“${shortened(part.trim())}”`);
      if (strange.length > 0 || read.length === 0) {
        return { rejected: `${strange.join(', ') || 'That'} did not fit. Name any of ${accepts}, or none.` };
      }
      const picked = new Set(read.map(({ option }) => option?.id));
      return { value: choices.map(({ id }) => id).filter((id) => picked.has(id)) };
    },
    show: (value) =>
      value.length === 0
        ? 'none'
        : value.map((id) => choices.find((choice) => choice.id === id)?.label ?? String(id)).join(', '),
  };
}

/** A question answered yes or no. `whenUnknown` is the more dangerous of the two wherever one is. */
export const yesNo = (
  definition: Wording & { readonly whenUnknown: WhenUnknown<'yes' | 'no'> },
): Question<'yes' | 'no'> =>
  oneOf({
    ...definition,
    choices: [
      { id: 'yes', label: 'Yes', also: ['y', 'yep', 'yeah', 'true', 'sí', 'si'] },
      { id: 'no', label: 'No', also: ['n', 'nope', 'false'] },
    ],
  });
