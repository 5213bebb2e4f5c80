import {
  LabelBuilder,
  ModalBuilder,
  type ModalSubmitInteraction,
  StringSelectMenuBuilder,
  TextInputBuilder,
  TextInputStyle,
} from 'discord.js';
import type { AnyQuestion } from '#interview/question.ts';
import type { Language } from '#words/language.ts';
import { standing } from '#words/standing.ts';
import type { Asking } from '../screen.ts';
import { clipped, visible } from './harmless.ts';
import { customId } from './press.ts';
import { notKnownChoice } from './registration.ts';

/** The platform's limits on a form. */
const most = { fields: 5, title: 45, label: 45, description: 100, choices: 25 } as const;

/** How much can be typed into a field. A run of duct takes more than one length does. */
const room = { short: 200, long: 600 } as const;

/** Whether a question is answered by typing rather than by pressing. */
export const isTyped = ({ widget, growing }: AnyQuestion): boolean => widget.kind === 'text' || growing !== undefined;

/** The choice that stands for nothing of a list. */
export const noneOfThese = (language: Language) => ({ label: standing[language].noneOfThese, value: 'none' });

/** The questions of a screen that a form asks: all of them when there are several, so that one form does for the screen. */
const inForm = ({ questions }: Asking): readonly AnyQuestion[] => questions.slice(0, most.fields);

/** The answers of a screen as one form: up to five at once. Fields left empty are asked again. */
export function formOf(
  asking: Asking,
  {
    command,
    typed,
    language = 'english',
    ...at
  }: {
    readonly command: string;
    readonly typed: Readonly<Record<string, string>>;
    readonly language?: Language | undefined;
    readonly talk: string;
    readonly turn: number;
  },
): ModalBuilder {
  const questions = inForm(asking);
  const form = new ModalBuilder()
    .setCustomId(customId({ act: 'form', ...at }))
    .setTitle(clipped(standing[language].answerFor(command), most.title));
  for (const question of questions) {
    const label = new LabelBuilder()
      .setLabel(clipped(question.brief, most.label))
      .setDescription(clipped(question.accepts, most.description));
    form.addLabelComponents(
      isTyped(question) || questions.length === 1
        ? label.setTextInputComponent(textField(question, typed[question.id], questions.length === 1))
        : label.setStringSelectMenuComponent(menuField(question, language)),
    );
  }
  return form;
}

function textField({ id, growing, widget }: AnyQuestion, typed: string | undefined, required: boolean) {
  const length = growing ? room.long : room.short;
  const field = new TextInputBuilder()
    .setCustomId(id)
    .setStyle(growing ? TextInputStyle.Paragraph : TextInputStyle.Short)
    .setRequired(required)
    .setMaxLength(length);
  if (widget.kind === 'text') field.setPlaceholder(clipped(widget.placeholder, 100));
  // What was typed before and not understood comes back to be mended rather than typed again.
  const before = visible(typed ?? '').slice(0, length);
  return before.trim() === '' ? field : field.setValue(before);
}

function menuField({ id, widget }: AnyQuestion, language: Language) {
  const choices = widget.kind === 'text' ? [] : widget.choices.slice(0, most.choices - 1);
  const several = widget.kind === 'several';
  return new StringSelectMenuBuilder()
    .setCustomId(id)
    .setRequired(false)
    .setMinValues(0)
    .setMaxValues(several ? choices.length : 1)
    .addOptions(
      ...choices.map((choice) => ({
        label: clipped(choice.label, 100),
        value: choice.id,
        ...(choice.hint ? { description: clipped(choice.hint, 100) } : {}),
      })),
      several ? noneOfThese(language) : { label: standing[language].dontKnow, value: notKnownChoice.value },
    );
}

/** What was filled in, by question: only of the questions that were asked, and only what is not empty. */
export function filledIn({ fields }: ModalSubmitInteraction, asking: Asking): Readonly<Record<string, string>> {
  return Object.fromEntries(
    inForm(asking).flatMap(({ id }) => {
      const field = fields.fields.get(id);
      if (!field) return [];
      const text = 'values' in field ? field.values.join(', ') : 'value' in field ? String(field.value ?? '') : '';
      return text.trim() === '' ? [] : [[id, text]];
    }),
  );
}
