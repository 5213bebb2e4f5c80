import {
  type APIButtonComponent,
  type APIComponentInMessageActionRow,
  type APIMessageTopLevelComponent,
  type APISectionComponent,
  type APIStringSelectComponent,
  type APITextDisplayComponent,
  type APIThumbnailComponent,
  ButtonStyle,
  ComponentType,
} from 'discord.js';
import { overLimit, type Problem, place } from './problem.ts';

type Component =
  | APIMessageTopLevelComponent
  | APIComponentInMessageActionRow
  | APISectionComponent['accessory']
  | APITextDisplayComponent
  | APIThumbnailComponent;

interface Placed {
  readonly component: Component;
  readonly where: string;
}

/** Every component of a message, nested ones and accessories too, each with its place. */
export function everyComponent(at: string, components: readonly Component[]): readonly Placed[] {
  return components.flatMap((component, nth) => {
    const where = place(at, nth);
    const inner = 'components' in component ? everyComponent(place(where, 'components'), component.components) : [];
    const accessory =
      'accessory' in component ? [{ component: component.accessory, where: place(where, 'accessory') }] : [];
    return [{ component, where }, ...inner, ...accessory];
  });
}

/** All pictures and files that components show, with the place of each address. */
export const shownMedia = (at: string, components: readonly Component[]) =>
  everyComponent(at, components).flatMap(({ component, where }) => {
    switch (component.type) {
      case ComponentType.Thumbnail:
        return [{ media: component.media, where: place(where, 'media', 'url') }];
      case ComponentType.File:
        return [{ media: component.file, where: place(where, 'file', 'url') }];
      case ComponentType.MediaGallery:
        return component.items.map(({ media }, nth) => ({
          media,
          where: place(where, 'items', nth, 'media', 'url'),
        }));
      default:
        return [];
    }
  });

/** What the documentation says of buttons, menus and their ids. */
export function componentLimits(at: string, components: readonly APIMessageTopLevelComponent[]): readonly Problem[] {
  const all = everyComponent(at, components);
  return [
    ...all.flatMap(({ component, where }) => {
      switch (component.type) {
        case ComponentType.Button:
          return buttonLimits(where, component);
        case ComponentType.StringSelect:
          return menuLimits(where, component);
        case ComponentType.ActionRow:
          return rowLimits(where, component.components);
        default:
          return [];
      }
    }),
    ...repeatedIds(all),
  ];
}

const rowLimits = (where: string, inside: readonly APIComponentInMessageActionRow[]): readonly Problem[] =>
  inside.length > 1 && inside.some(({ type }) => type !== ComponentType.Button)
    ? [overLimit(where, 'a menu stands alone in its row')]
    : [];

function buttonLimits(where: string, button: APIButtonComponent): readonly Problem[] {
  const found: Problem[] = [];
  const has = (key: string) => key in button && Boolean(Object.entries(button).find(([name]) => name === key)?.[1]);
  const need = (key: string, needed: boolean) => {
    if (has(key) === needed) return;
    found.push(
      overLimit(place(where, key), `a button of style ${button.style} ${needed ? 'needs' : 'takes no'} ${key}`),
    );
  };
  need('custom_id', button.style !== ButtonStyle.Link && button.style !== ButtonStyle.Premium);
  need('url', button.style === ButtonStyle.Link);
  need('sku_id', button.style === ButtonStyle.Premium);
  if (button.style !== ButtonStyle.Premium && !has('label') && !has('emoji')) {
    found.push(overLimit(where, 'a button needs a label or an emoji'));
  }
  if (button.style === ButtonStyle.Link && !/^(https?|discord):\/\//.test(button.url)) {
    found.push(overLimit(place(where, 'url'), 'a button opens http, https or discord addresses only'));
  }
  return found;
}

interface Choices {
  readonly min_values?: number | undefined;
  readonly max_values?: number | undefined;
  readonly options: readonly { readonly value: string; readonly default?: boolean | undefined }[];
}

/** What holds for every list of choices, in a message or in a form. */
export function choiceLimits(
  where: string,
  { min_values: min, max_values: max, options }: Choices,
): readonly Problem[] {
  const found: Problem[] = [];
  const values = options.map(({ value }) => value);
  if (new Set(values).size < values.length) found.push(overLimit(place(where, 'options'), 'two choices share a value'));
  if ((min ?? 1) > (max ?? 1)) found.push(overLimit(place(where, 'min_values'), 'more choices needed than allowed'));
  if ((max ?? 1) > options.length) {
    found.push(overLimit(place(where, 'max_values'), `${max} choices allowed of ${options.length}`));
  }
  if (options.filter((option) => option.default).length > (max ?? 1)) {
    found.push(overLimit(place(where, 'options'), 'more choices set beforehand than allowed'));
  }
  return found;
}

const menuLimits = (where: string, menu: APIStringSelectComponent): readonly Problem[] => choiceLimits(where, menu);

/** Ids a person's press is told apart by, and the numbers of components: each may occur once. */
function repeatedIds(all: readonly Placed[]): readonly Problem[] {
  const seen = new Set<string>();
  return all.flatMap(({ component, where }) =>
    [
      { key: 'custom_id', id: 'custom_id' in component ? component.custom_id : undefined },
      { key: 'id', id: component.id },
    ].flatMap(({ key, id }) => {
      if (id === undefined) return [];
      const mark = `${key} ${id}`;
      if (seen.has(mark)) return [overLimit(place(where, key), `${key} ${JSON.stringify(id)} occurs twice`)];
      seen.add(mark);
      return [];
    }),
  );
}
