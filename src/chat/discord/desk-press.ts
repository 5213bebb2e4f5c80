import {
  ButtonStyle,
  ComponentType,
  FileUploadBuilder,
  type InteractionButtonComponentData,
  LabelBuilder,
  ModalBuilder,
  type ModalSubmitInteraction,
  StringSelectMenuBuilder,
  TextInputBuilder,
  TextInputStyle,
} from 'discord.js';
import type { FormField, FormOffer, PressOffer } from '#findings/reply.ts';
import { clipped, visible } from './harmless.ts';

/** A press that does something at a desk: which action, and the few words of ours it takes. */
export type DeskPress = Pick<PressOffer, 'command' | 'action' | 'given'>;

/** The platform's limits: characters in an id and on a button, buttons in a row and rows, fields in a form. */
const most = {
  id: 100,
  label: 80,
  inRow: 5,
  rows: 5,
  fields: 5,
  title: 45,
  fieldLabel: 45,
  hint: 100,
  choices: 25,
  typed: 300,
} as const;

const word = /^[a-z0-9.-]{1,40}$/;
/** A command that does one thing has an action without a name. */
const isAction = (text: string): boolean => text === '' || word.test(text);

/** The id of a desk press; nothing where it would not fit, or holds what is not ours. */
function deskId({ command, action, given }: DeskPress): string | undefined {
  const pairs = Object.entries(given);
  if (!isAction(action) || ![command, ...pairs.flat()].every((text) => word.test(text))) return undefined;
  const id = ['v1', 'do', command, action, ...pairs.map(([key, value]) => `${key}=${value}`)].join(':');
  return id.length <= most.id ? id : undefined;
}

/** What was pressed at a desk, or nothing when the id is not one of these. */
export function deskPressed(id: string): DeskPress | undefined {
  const [version, act, command = '', action = '', ...pairs] = id.split(':');
  if (version !== 'v1' || act !== 'do' || !word.test(command) || !isAction(action) || id.length > most.id) {
    return undefined;
  }
  const given = pairs.map((pair) => pair.split('='));
  if (!given.every((parts) => parts.length === 2 && parts.every((part) => word.test(part)))) return undefined;
  return { command, action, given: Object.fromEntries(given) };
}

/** The buttons of a desk, row by row. */
export function deskRows(presses: readonly PressOffer[]): readonly (readonly InteractionButtonComponentData[])[] {
  const buttons = presses.flatMap((offer, index): InteractionButtonComponentData[] => {
    const customId = deskId(offer);
    const label = clipped(
      visible(offer.short ?? offer.label)
        .replace(/\s+/g, ' ')
        .trim(),
      most.label,
    );
    const style = index === 0 ? ButtonStyle.Primary : ButtonStyle.Secondary;
    return customId === undefined ? [] : [{ type: ComponentType.Button, style, label, customId }];
  });
  const unlike = [...new Map(buttons.map((button) => [button.customId, button])).values()];
  return Array.from({ length: Math.min(most.rows, Math.ceil(unlike.length / most.inRow)) }, (_, row) =>
    unlike.slice(row * most.inRow, (row + 1) * most.inRow),
  );
}

/** The form an action asks for; nothing where its id would not fit. */
export function deskForm(offer: FormOffer): ModalBuilder | undefined {
  const id = deskId(offer);
  if (id === undefined) return undefined;
  const form = new ModalBuilder().setCustomId(id).setTitle(clipped(visible(offer.title), most.title));
  for (const field of offer.fields.slice(0, most.fields)) form.addLabelComponents(labelled(field));
  return form;
}

function labelled({ id, label, accepts, optional, choices, photo }: FormField): LabelBuilder {
  const built = new LabelBuilder()
    .setLabel(clipped(visible(label), most.fieldLabel))
    .setDescription(clipped(visible(accepts), most.hint));
  if (photo) return built.setFileUploadComponent(new FileUploadBuilder().setCustomId(id).setRequired(!optional));
  if (!choices) {
    return built.setTextInputComponent(
      new TextInputBuilder()
        .setCustomId(id)
        .setStyle(TextInputStyle.Short)
        .setRequired(!optional)
        .setMaxLength(most.typed),
    );
  }
  return built.setStringSelectMenuComponent(
    new StringSelectMenuBuilder()
      .setCustomId(id)
      .setRequired(!optional)
      .setMinValues(optional ? 0 : 1)
      .setMaxValues(1)
      .addOptions(choices.slice(0, most.choices).map((choice) => ({ label: choice.label, value: choice.id }))),
  );
}

/** What was filled in, each under the id of its field. */
export const deskFilled = ({ fields }: ModalSubmitInteraction): Readonly<Record<string, string>> =>
  Object.fromEntries(
    [...fields.fields.values()].flatMap((field) => {
      const text = 'values' in field ? field.values.join(', ') : 'value' in field ? String(field.value ?? '') : '';
      return text.trim() === '' ? [] : [[field.customId, text.slice(0, most.typed)]];
    }),
  );
