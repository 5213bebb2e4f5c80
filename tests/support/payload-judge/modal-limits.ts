import { type APIModalInteractionResponseCallbackData, type APITextInputComponent, ComponentType } from 'discord.js';
import { choiceLimits } from './component-limits.ts';
import { overLimit, type Problem, place } from './problem.ts';

const partsInAll = 5;

/** What the documentation says of forms and the description does not. */
export function modalLimits(at: string, form: APIModalInteractionResponseCallbackData): readonly Problem[] {
  const found: Problem[] = [];
  if (form.components.length > partsInAll) {
    const says = `${form.components.length} parts; a form holds ${partsInAll}`;
    found.push(overLimit(place(at, 'components'), says));
  }
  const seen = new Set<string>();
  for (const { field, where, labelled } of fields(place(at, 'components'), form)) {
    if (seen.has(field.custom_id)) found.push(overLimit(place(where, 'custom_id'), `${field.custom_id} occurs twice`));
    seen.add(field.custom_id);
    found.push(...fieldLimits(where, field, labelled));
  }
  return found;
}

type Field = ReturnType<typeof fields>[number]['field'];

/** The parts of a form a person fills in. */
const fields = (at: string, { components }: APIModalInteractionResponseCallbackData) =>
  components.flatMap((part, nth) => {
    if (part.type === ComponentType.Label) {
      return [{ field: part.component, where: place(at, nth, 'component'), labelled: true }];
    }
    if (part.type !== ComponentType.ActionRow) return [];
    return part.components.map((field, inner) => ({
      field,
      where: place(at, nth, 'components', inner),
      labelled: false,
    }));
  });

function fieldLimits(where: string, field: Field, labelled: boolean): readonly Problem[] {
  switch (field.type) {
    case ComponentType.TextInput:
      return textLimits(where, field, labelled);
    case ComponentType.StringSelect:
      return [...choiceLimits(where, field), ...optionalLimits(where, field), ...disabledLimits(where, field)];
    case ComponentType.CheckboxGroup:
      return [...choiceLimits(where, { max_values: field.options.length, ...field }), ...optionalLimits(where, field)];
    case ComponentType.RadioGroup:
      return choiceLimits(where, field);
    case ComponentType.FileUpload:
      return optionalLimits(where, field);
    default:
      return [];
  }
}

/** A field that asks for nothing at least must say that it may be left out. */
const optionalLimits = (
  where: string,
  { min_values: min, required }: { readonly min_values?: number; readonly required?: boolean },
): readonly Problem[] =>
  min === 0 && required !== false ? [overLimit(place(where, 'required'), 'min_values 0 needs required: false')] : [];

const disabledLimits = (where: string, { disabled }: { readonly disabled?: boolean }): readonly Problem[] =>
  disabled ? [overLimit(place(where, 'disabled'), 'a form takes no disabled menu')] : [];

function textLimits(where: string, field: APITextInputComponent, labelled: boolean): readonly Problem[] {
  const found: Problem[] = [];
  const { min_length: min = 0, max_length: max = 4000, value } = field;
  if (!labelled && !field.label) found.push(overLimit(place(where, 'label'), 'a text field needs a label'));
  if (min > max) found.push(overLimit(place(where, 'min_length'), `at least ${min} but at most ${max} characters`));
  if (value && (value.length > max || value.length < min)) {
    found.push(overLimit(place(where, 'value'), `${value.length} characters set beforehand; ${min} to ${max} fit`));
  }
  return found;
}
