import { LabelBuilder, ModalBuilder, TextInputBuilder, TextInputStyle } from 'discord.js';
import type { Asking } from '../screen.ts';
import { customId } from './press.ts';

const mostFields = 5;
const clipped = (text: string, length: number) => (text.length <= length ? text : `${text.slice(0, length - 1)}…`);

/** The typed answers of a screen as one form: up to five at once. Fields left empty are asked again. */
export function formOf(asking: Asking, title: string, at: { talk: string; turn: number }): ModalBuilder {
  const questions = asking.questions
    .filter(({ widget, growing }) => widget.kind === 'text' || growing)
    .slice(0, mostFields);
  const single = questions.length === 1;
  const form = new ModalBuilder().setCustomId(customId({ act: 'form', ...at })).setTitle(clipped(title, 45));
  for (const question of questions) {
    const input = new TextInputBuilder()
      .setCustomId(question.id)
      .setStyle(question.growing ? TextInputStyle.Paragraph : TextInputStyle.Short)
      .setRequired(single)
      .setMaxLength(question.growing ? 600 : 200);
    if (question.widget.kind === 'text') input.setPlaceholder(clipped(question.widget.placeholder, 100));
    form.addLabelComponents(
      new LabelBuilder()
        .setLabel(clipped(question.brief, 45))
        .setDescription(clipped(question.accepts, 100))
        .setTextInputComponent(input),
    );
  }
  return form;
}
