import type { AutocompleteInteraction } from 'discord.js';
import type { AnyQuestion, Choice } from '#interview/question.ts';
import { worded } from '#interview/worded.ts';
import type { ScopedStore } from '#store/store.ts';
import type { Language } from '#words/language.ts';
import { standing } from '#words/standing.ts';
import { unitsOf } from '../answers.ts';
import { clipped, visible } from './harmless.ts';
import { deskOf, type House, languageOf } from './house.ts';
import { notKnownChoice } from './registration.ts';

/** The platform's limits: suggestions at once, characters in each. */
const most = { suggestions: 25, text: 100 } as const;

/** What may follow what somebody has typed into an option so far. */
export function suggestions(
  house: House,
  store: ScopedStore,
  interaction: AutocompleteInteraction,
): { name: string; value: string }[] {
  const seen = new Set<string>();
  return choicesFor(house, store, interaction)
    .flatMap(({ id, label }) => {
      const name = clipped(visible(label).replace(/\s+/g, ' ').trim(), most.text);
      // A value cut short would be another answer, so one that does not fit is left out; it can still be typed.
      if (id === '' || name === '' || id.length > most.text || seen.has(id)) return [];
      seen.add(id);
      return [{ name, value: id }];
    })
    .slice(0, most.suggestions);
}

function choicesFor(house: House, store: ScopedStore, interaction: AutocompleteInteraction): readonly Choice[] {
  const command = house.commands.find(({ name }) => name === interaction.commandName);
  const { name, value } = interaction.options.getFocused(true);
  if (command?.kind === 'desk') {
    const sub = interaction.options.getSubcommand(false) ?? '';
    const option = command.actions.find((action) => action.name === sub)?.options.find(({ id }) => id === name);
    return option?.suggest?.(deskOf(house, store, interaction), value) ?? [];
  }
  const question = command?.takes.find(({ id }) => id === name);
  const language = languageOf(store, interaction);
  return question ? questionChoices(worded(question, language), value, { store, language }) : [];
}

function questionChoices(
  question: AnyQuestion,
  typed: string,
  { store, language = 'english' }: { readonly store: ScopedStore; readonly language: Language | undefined },
): readonly Choice[] {
  const { widget, growing } = question;
  const offered = growing
    ? nextPieces(growing.choices(typed), typed)
    : widget.kind === 'text'
      ? []
      : widget.kind === 'one'
        ? fitting(widget.choices, typed)
        : nextPicks(widget.choices, typed);
  const own = typed.trim() === '' ? [] : [{ id: typed, label: readBack(question, typed, store) }];
  return [...own, ...offered, { id: notKnownChoice.value, label: standing[language].dontKnow }];
}

/** What was typed, with what it is read as where that looks different: "8-6 (8 ft 6 in)". */
function readBack(question: AnyQuestion, typed: string, store: ScopedStore): string {
  const units = unitsOf(store);
  const reading = question.read(typed, units);
  if ('rejected' in reading) return typed;
  const shown = question.show(reading.value, units);
  return shown === typed.trim() || question.growing ? typed : `${typed.trim()} (${shown})`;
}

/** Whole runs with one more piece. The end of a long one shows, since that is where it grows. */
function nextPieces(pieces: readonly Choice[], typed: string): readonly Choice[] {
  const before = typed.trim().replace(/[;\s]+$/, '');
  if (before === '') return pieces;
  return pieces
    .filter(({ id }) => id !== 'done')
    .map(({ id }) => {
      const whole = `${before}; ${id}`;
      return { id: whole, label: whole.length > most.text ? `…${whole.slice(1 - most.text)}` : whole };
    });
}

const fitting = (choices: readonly Choice[], typed: string): readonly Choice[] => {
  const said = typed.trim().toLowerCase();
  return choices.filter(({ id, label }) => [id, label].some((name) => name.toLowerCase().includes(said)));
};

/** Completes the last of several picks, so that "toilet, sh" offers "toilet, shower". */
function nextPicks(choices: readonly Choice[], typed: string): readonly Choice[] {
  const parts = typed.split(',');
  const last = parts.at(-1)?.trim().toLowerCase() ?? '';
  const before = parts.slice(0, -1).map((part) => part.trim());
  return choices
    .filter(({ id, label }) => !before.includes(id) && label.toLowerCase().startsWith(last))
    .map(({ id }) => {
      const picked = [...before, id].join(', ');
      return { id: picked, label: picked };
    });
}
