import {
  type APIComponentInModalActionRow,
  type APIFileUploadComponent,
  type APILabelComponent,
  type APIModalInteractionResponseCallbackComponent,
  type APIModalInteractionResponseCallbackData,
  type APIModalSubmissionComponent,
  ComponentType,
} from 'discord.js';
import { attached } from './command-data.ts';
import type { Doer, Interaction, InteractionData } from './interactions.ts';
import { isUpload, type Upload } from './uploads.ts';
import type { World } from './world.ts';

/** A form as a person sees it. */
export interface Form {
  readonly customId: string;
  readonly title: string;
  readonly fields: readonly FormField[];
  /** Words between the fields. */
  readonly texts: readonly string[];
  /** What it was shown in answer to. */
  readonly from: Interaction;
  readonly parts: readonly APIModalInteractionResponseCallbackComponent[];
}

interface FormField {
  readonly id: string;
  readonly label: string;
  readonly description: string;
  readonly kind: 'text' | 'long text' | 'menu' | 'radio' | 'boxes' | 'box' | 'file' | 'other';
  readonly required: boolean;
  /** What is filled in beforehand. */
  readonly value: string;
  readonly options: readonly { readonly label: string; readonly value: string }[];
}

/** What a person fills in: text, one or several choices by label or value, a tick, or files. */
export type FieldValue = string | boolean | Upload | readonly string[] | readonly Upload[];

type Component = APIComponentInModalActionRow | APILabelComponent['component'];

export function form(data: APIModalInteractionResponseCallbackData, from: Interaction): Form {
  return {
    customId: data.custom_id,
    title: data.title,
    fields: data.components.flatMap((part) =>
      part.type === ComponentType.Label
        ? [field(part.component, part.label, part.description)]
        : part.type === ComponentType.ActionRow
          ? part.components.map((component) => field(component, ''))
          : [],
    ),
    texts: data.components.flatMap((part) => (part.type === ComponentType.TextDisplay ? [part.content] : [])),
    from,
    parts: data.components,
  };
}

const field = (component: Component, label: string, description = ''): FormField => ({
  id: component.custom_id,
  label: label || ('label' in component ? (component.label ?? '') : ''),
  description,
  kind: kindOf(component),
  required: 'required' in component ? (component.required ?? true) : component.type !== ComponentType.Checkbox,
  value: 'value' in component ? (component.value ?? '') : '',
  options: optionsOf(component),
});

const optionsOf = (component: Component) =>
  'options' in component ? component.options.map(({ label, value }) => ({ label, value })) : [];

function kindOf(component: Component): FormField['kind'] {
  switch (component.type) {
    case ComponentType.TextInput:
      return component.style === 2 ? 'long text' : 'text';
    case ComponentType.StringSelect:
      return 'menu';
    case ComponentType.RadioGroup:
      return 'radio';
    case ComponentType.CheckboxGroup:
      return 'boxes';
    case ComponentType.Checkbox:
      return 'box';
    case ComponentType.FileUpload:
      return 'file';
    default:
      return 'other';
  }
}

/** The filled-in form as the platform sends it, after the checks its own program makes. */
export function formData(
  world: World,
  doer: Doer,
  shown: Form,
  values: Readonly<Record<string, FieldValue>>,
): InteractionData {
  const named = (name: string) => shown.fields.find(({ id, label }) => id === name || label === name);
  for (const name of Object.keys(values)) {
    if (named(name)) continue;
    throw new Error(`"${shown.title}" has no field ${name}. It has: ${shown.fields.map(({ id }) => id).join(', ')}.`);
  }
  const given = new Map(Object.entries(values).map(([name, value]) => [named(name)?.id, value]));
  const resolved = { attachments: {} };
  let nth = 0;
  const fill = (component: Component): unknown => {
    nth += 1;
    const about = { type: component.type, id: component.id ?? nth, custom_id: component.custom_id };
    return { ...about, ...entered(world, doer, component, given.get(component.custom_id), resolved) };
  };
  const components = shown.parts.map((part) => {
    nth += 1;
    const id = part.id ?? nth;
    if (part.type === ComponentType.Label) return { type: part.type, id, component: fill(part.component) };
    if (part.type === ComponentType.ActionRow) return { type: part.type, id, components: part.components.map(fill) };
    return { type: part.type, id };
  });
  return {
    custom_id: shown.customId,
    components: components as APIModalSubmissionComponent[],
    ...(Object.keys(resolved.attachments).length > 0 ? { resolved } : {}),
  };
}

function entered(
  world: World,
  doer: Doer,
  component: Component,
  value: FieldValue | undefined,
  resolved: { readonly attachments: Record<string, unknown> },
) {
  const refuse = (why: string): never => {
    throw new Error(`The field ${component.custom_id} ${why}.`);
  };
  switch (component.type) {
    case ComponentType.TextInput: {
      const text = value === undefined ? (component.value ?? '') : String(value);
      if (text === '' && component.required !== false) refuse('must be filled in');
      if (text !== '' && text.length < (component.min_length ?? 0)) refuse('needs more characters');
      if (text.length > (component.max_length ?? 4000)) refuse('takes fewer characters');
      return { value: text };
    }
    case ComponentType.Checkbox:
      return { value: value === undefined ? (component.default ?? false) : value === true };
    case ComponentType.RadioGroup: {
      const [chosen] = choices(component.options, value, refuse);
      if (chosen === undefined && component.required !== false) refuse('must be chosen');
      return { value: chosen ?? null };
    }
    case ComponentType.StringSelect:
    case ComponentType.CheckboxGroup: {
      const chosen = choices(component.options, value, refuse);
      const most = component.type === ComponentType.StringSelect ? 1 : component.options.length;
      checkCount(chosen.length, component, most, refuse);
      return { values: chosen };
    }
    case ComponentType.FileUpload: {
      const uploads = [value ?? []].flat().filter(isUpload);
      checkCount(uploads.length, component as APIFileUploadComponent, 1, refuse);
      return { values: uploads.map((upload) => attached(world, doer.channel, upload, resolved)) };
    }
    default:
      return { values: [value ?? []].flat() };
  }
}

type Choice = { readonly label: string; readonly value: string; readonly default?: boolean };

function choices(options: readonly Choice[], value: FieldValue | undefined, refuse: (why: string) => never): string[] {
  if (value === undefined) return options.filter((option) => option.default).map((option) => option.value);
  return [value].flat().map((wanted) => {
    const option = options.find((one) => one.value === wanted || one.label === wanted);
    return option?.value ?? refuse(`offers no ${String(wanted)}`);
  });
}

function checkCount(
  count: number,
  limits: { readonly min_values?: number; readonly max_values?: number; readonly required?: boolean },
  usualMost: number,
  refuse: (why: string) => never,
): void {
  if (count === 0 && limits.required === false) return;
  if (count < (limits.min_values ?? 1)) refuse(`needs ${limits.min_values ?? 1}`);
  if (count > (limits.max_values ?? usualMost)) refuse(`takes at most ${limits.max_values ?? usualMost}`);
}
