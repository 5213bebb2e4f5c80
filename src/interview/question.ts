import type { Reading } from '#quantity/reading.ts';
import type { UnitSystem } from '#quantity/units.ts';
import type { Language } from '#words/language.ts';
import type { InOtherWords } from '#words/question-words.ts';

export type { Reading, UnitSystem };

/** How an answer is known. `unknown` is an answer too: somebody said "don't know". */
export type FactHow = 'measured' | 'label' | 'estimated' | 'told' | 'unknown';

export interface Choice {
  /** What is stored and what `key=value` takes. */
  readonly id: string;
  /** What stands on the button. At most 80 characters, best under 30. */
  readonly label: string;
  /** One short line under the label where there is room for it. */
  readonly hint?: string;
}

/** How the answer is best given. `text` is typed; the others are pressed and can be typed too. */
export type Widget =
  | { readonly kind: 'text'; readonly placeholder: string }
  | { readonly kind: 'one'; readonly choices: readonly Choice[] }
  | { readonly kind: 'several'; readonly choices: readonly Choice[] };

/** An answer that grows piece by piece, such as a run of duct. The draft is kept, so a restart loses nothing. */
export interface Growing {
  /** Adds one piece to the draft. `done` ends the answer with its whole text, read by the question as if typed at once. */
  grow(draft: string, piece: string, units: UnitSystem): Growth;
  /** The draft without its last piece; empty when nothing is left. */
  shrink(draft: string): string;
  /** What to ask next, given the draft. */
  prompt(draft: string): string;
  /** The likeliest next pieces, given the draft; pressing one is typing its id. */
  choices(draft: string): readonly Choice[];
}

export type Growth = { readonly done: string } | { readonly draft: string } | { readonly rejected: string };

/** What "don't know" stands for: the value to go on with, and the reason a person can judge it by. */
export interface WhenUnknown<Value> {
  readonly value: Value;
  readonly because: string;
}

/**
 * One question, asked the same way by every command. Its id is the option name, the `key=value` name and the key on the
 * job sheet.
 */
export interface Question<Value = unknown> {
  readonly id: string;
  readonly prompt: string;
  /** Why it is asked, in one or two sentences. */
  readonly why: string;
  /** What will do, with an example: "a length, such as 4 in or 100 mm". */
  readonly accepts: string;
  /** At most 100 characters: the description of the option in a list of options. */
  readonly brief: string;
  readonly widget: Widget;
  readonly growing?: Growing;
  readonly whenUnknown: WhenUnknown<Value>;
  /** Somebody may be hurt by its answer: where several could not be read, it is asked again before the others. */
  readonly safety?: true;
  /** Not knowing it is judged as an answer of its own: no value is said to stand in. */
  readonly unknownCounts?: true;
  /** The language it is worded in; English where it is left out. */
  readonly language?: Language;
  /** The same in other languages, where it has been put into them; `worded` asks it so. */
  readonly words?: InOtherWords;
  /** Understands what was typed. Never throws, whatever the text. */
  read(text: string, units: UnitSystem): Reading<Value>;
  /** The value as a person reads it back: reading it again gives the same value, to the rounding shown. */
  show(value: Value, units: UnitSystem): string;
}

/** A question of whatever value, for lists of them. `show` is a method, so any question will do here. */
export type AnyQuestion = Question<unknown>;

/** An answer as the interview receives it. */
export interface Answer<Value> {
  readonly value: Value;
  /** False when nobody knew or nobody was asked: the value is then the question's `whenUnknown`. */
  readonly known: boolean;
  /** False when nobody was asked, as in one-shot use; absent when somebody answered, "don't know" included. */
  readonly asked?: false;
}
