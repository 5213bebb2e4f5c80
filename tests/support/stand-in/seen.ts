import { type APIEmbed, type APIMessageTopLevelComponent, ButtonStyle, ComponentType, MessageFlags } from 'discord.js';
import { everyComponent } from '../payload-judge/component-limits.ts';
import type { Showing, StoredFile, StoredMessage } from './messages.ts';

/** A button as a person sees it. */
export interface SeenButton {
  readonly kind: 'button';
  readonly label: string;
  readonly customId: string | undefined;
  readonly url: string | undefined;
  readonly style: 'primary' | 'secondary' | 'success' | 'danger' | 'link' | 'premium';
  readonly disabled: boolean;
}

/** A menu as a person sees it. */
export interface SeenMenu {
  readonly kind: 'menu';
  readonly placeholder: string;
  readonly customId: string;
  readonly options: readonly { readonly label: string; readonly value: string; readonly description: string }[];
  readonly disabled: boolean;
}

/** Words or pictures between the buttons. */
interface SeenPart {
  readonly kind: 'text' | 'picture' | 'file';
  readonly text: string;
}

type SeenComponent = SeenButton | SeenMenu | SeenPart;

/** A message as somebody sees it at one moment. It does not change; ask again to see edits. */
export interface Seen {
  readonly id: string;
  readonly channelId: string;
  /** The interaction that led to it, if one did. */
  readonly interactionId: string | undefined;
  readonly content: string;
  readonly embeds: readonly APIEmbed[];
  /** All words of the message in reading order: content, embeds, text displays, one piece a line. */
  readonly text: string;
  /** Buttons, menus, texts and pictures in order, out of their rows and boxes. */
  readonly components: readonly SeenComponent[];
  readonly buttons: readonly SeenButton[];
  readonly menus: readonly SeenMenu[];
  readonly files: readonly StoredFile[];
  readonly ephemeral: boolean;
  /** The bot has promised an answer and not given it. */
  readonly thinking: boolean;
  /** What it showed before, oldest first. */
  readonly earlier: readonly Pick<Seen, 'content' | 'embeds' | 'text' | 'components' | 'files'>[];
}

export const seen = (message: StoredMessage): Seen => ({
  id: message.id,
  channelId: message.channelId,
  interactionId: message.interaction?.id,
  ...shown(message.showing),
  ephemeral: (message.showing.flags & MessageFlags.Ephemeral) !== 0,
  thinking: message.pending,
  earlier: message.earlier.map(shown),
});

function shown({ content, embeds, components, files }: Showing) {
  const flat = flattened(components);
  return {
    content,
    embeds,
    components: flat,
    buttons: flat.filter((component) => component.kind === 'button'),
    menus: flat.filter((component) => component.kind === 'menu'),
    files,
    text: [content, ...embeds.flatMap(embedLines), ...flat.flatMap((part) => (part.kind === 'text' ? [part.text] : []))]
      .filter((line) => line !== '')
      .join('\n'),
  };
}

const embedLines = ({ author, title, description, fields, footer }: APIEmbed): readonly string[] => [
  author?.name ?? '',
  title ?? '',
  description ?? '',
  ...(fields ?? []).map(({ name, value }) => `${name}: ${value}`),
  footer?.text ?? '',
];

const styles: Record<ButtonStyle, SeenButton['style']> = {
  [ButtonStyle.Primary]: 'primary',
  [ButtonStyle.Secondary]: 'secondary',
  [ButtonStyle.Success]: 'success',
  [ButtonStyle.Danger]: 'danger',
  [ButtonStyle.Link]: 'link',
  [ButtonStyle.Premium]: 'premium',
};

const flattened = (components: readonly APIMessageTopLevelComponent[]): readonly SeenComponent[] =>
  everyComponent('', components).flatMap(({ component }): readonly SeenComponent[] => {
    switch (component.type) {
      case ComponentType.Button:
        return [
          {
            kind: 'button',
            label: ('label' in component && component.label) || ('emoji' in component && component.emoji?.name) || '',
            customId: 'custom_id' in component ? component.custom_id : undefined,
            url: 'url' in component ? component.url : undefined,
            style: styles[component.style],
            disabled: component.disabled ?? false,
          },
        ];
      case ComponentType.StringSelect:
        return [
          {
            kind: 'menu',
            placeholder: component.placeholder ?? '',
            customId: component.custom_id,
            options: component.options.map(({ label, value, description = '' }) => ({ label, value, description })),
            disabled: component.disabled ?? false,
          },
        ];
      case ComponentType.TextDisplay:
        return [{ kind: 'text', text: component.content }];
      case ComponentType.MediaGallery:
        return component.items.map(({ media, description }) => ({ kind: 'picture', text: description ?? media.url }));
      case ComponentType.Thumbnail:
        return [{ kind: 'picture', text: component.description ?? component.media.url }];
      case ComponentType.File:
        return [{ kind: 'file', text: component.file.url }];
      default:
        return [];
    }
  });
