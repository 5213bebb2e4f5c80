import { type APIEmbed, type APIMessageTopLevelComponent, ComponentType, MessageFlags } from 'discord.js';
import { componentLimits, everyComponent, shownMedia } from './component-limits.ts';
import { againstHouseRules, lostOnArrival, overLimit, type Problem, place } from './problem.ts';

/** A file sent beside a payload. */
export interface SentFile {
  /** The form field, `files[0]`. */
  readonly field: string;
  readonly name: string;
  readonly size: number;
}

/** What is known of a message before it is edited. */
export interface Standing {
  readonly flags: number;
  readonly files: readonly string[];
  /** What it shows besides files. */
  readonly shows: MessageBody;
}

/** What a payload says of a file, sent now (`id` counts the files) or kept (`id` is the platform's). */
interface MessageFile {
  readonly id: string;
  readonly filename?: string;
  readonly description?: string | null;
}

/** The fields of a message payload that the limits look at, once its shape has been judged. */
export interface MessageBody {
  readonly content?: string | null;
  readonly embeds?: readonly APIEmbed[] | null;
  readonly components?: readonly APIMessageTopLevelComponent[] | null;
  readonly attachments?: readonly MessageFile[] | null;
  readonly allowed_mentions?: { readonly parse?: readonly string[] | null } | null;
  readonly flags?: number | null;
  readonly poll?: unknown;
  readonly sticker_ids?: readonly string[] | null;
}

export interface MessageCase {
  /** Where in the payload the message lies: `data` in a first answer, nowhere otherwise. */
  readonly at: string;
  readonly body: MessageBody;
  readonly files: readonly SentFile[];
  readonly editing: boolean;
  /** The message being edited, where it is known. */
  readonly standing?: Standing;
  /** The largest file the platform takes, in bytes. */
  readonly fileLimit: number;
}

const embedCharacters = 6000;
const textDisplayCharacters = 4000;
const componentsInAll = 40;
const rowsInAll = 5;
const contentCharacters = 2000;

/** What the platform's documentation says about messages and its description does not. */
export function messageLimits(message: MessageCase): readonly Problem[] {
  const { body, at, standing } = message;
  const components = body.components ?? standing?.shows.components ?? [];
  return [
    ...(laidOut(message) ? layoutLimits(message, components) : classicLimits(message, components)),
    ...componentLimits(place(at, 'components'), components),
    ...embedLimits(place(at, 'embeds'), body.embeds ?? []),
    ...emptiness(message),
    ...fileLimits(message),
    ...mentionRules(message),
  ];
}

/** Whether the message is laid out by components alone, now or already. */
const laidOut = ({ body, standing }: MessageCase): boolean =>
  (((body.flags ?? 0) | (standing?.flags ?? 0)) & MessageFlags.IsComponentsV2) !== 0;

function classicLimits({ at, body }: MessageCase, components: readonly APIMessageTopLevelComponent[]) {
  const found: Problem[] = [];
  if (components.length > rowsInAll) {
    found.push(overLimit(place(at, 'components'), `${components.length} rows; a message holds ${rowsInAll}`));
  }
  components.forEach(({ type }, nth) => {
    if (type === ComponentType.ActionRow) return;
    found.push(overLimit(place(at, 'components', nth), `component type ${type} needs the components-v2 flag`));
  });
  if ((body.content?.length ?? 0) > contentCharacters) {
    found.push(overLimit(place(at, 'content'), `${body.content?.length} characters; ${contentCharacters} fit`));
  }
  return found;
}

function layoutLimits({ at, body, files, standing }: MessageCase, components: readonly APIMessageTopLevelComponent[]) {
  const found: Problem[] = [];
  for (const key of ['content', 'embeds', 'poll', 'sticker_ids'] as const) {
    // What a message showed before it was laid out by components must be taken away.
    const value = body[key] === undefined ? standing?.shows[key] : body[key];
    if (value === undefined || value === null || value === '' || (Array.isArray(value) && value.length === 0)) continue;
    found.push(overLimit(place(at, key), 'not allowed in a message made of components-v2'));
  }
  const all = everyComponent('', components);
  if (all.length > componentsInAll) {
    found.push(overLimit(place(at, 'components'), `${all.length} components with nested ones; ${componentsInAll} fit`));
  }
  const characters = all.reduce(
    (sum, { component }) => sum + (component.type === ComponentType.TextDisplay ? component.content.length : 0),
    0,
  );
  if (characters > textDisplayCharacters) {
    const says = `${characters} characters of text displays in all; ${textDisplayCharacters} fit`;
    found.push(overLimit(place(at, 'components'), says));
  }
  const shown = new Set(shownMedia('', components).map(({ media }) => media.url));
  for (const { name, field } of files) {
    if (!shown.has(`attachment://${name}`)) {
      found.push(lostOnArrival(field, `no component shows attachment://${name}, so nobody sees it`));
    }
  }
  return found;
}

function embedLimits(at: string, embeds: readonly APIEmbed[]): readonly Problem[] {
  const found: Problem[] = [];
  const total = embeds.reduce((sum, embed) => sum + embedTexts(embed).reduce((all, text) => all + text.length, 0), 0);
  if (total > embedCharacters) {
    found.push(overLimit(at, `${total} characters over all embeds; ${embedCharacters} fit in a message`));
  }
  embeds.forEach((embed, nth) => {
    const pictures = [embed.image, embed.thumbnail, embed.video].some(Boolean);
    if (embedTexts(embed).length === 0 && !pictures)
      found.push(overLimit(place(at, nth), 'an embed with nothing in it'));
    embed.fields?.forEach((field, fieldNth) => {
      for (const key of ['name', 'value'] as const) {
        if (field[key].trim() === '')
          found.push(overLimit(place(at, nth, 'fields', fieldNth, key), 'may not be empty'));
      }
    });
  });
  return found;
}

const embedTexts = ({ title, description, author, footer, fields }: APIEmbed): readonly string[] =>
  [title, description, author?.name, footer?.text, ...(fields ?? []).flatMap(({ name, value }) => [name, value])]
    .map((text) => (text ?? '').trim())
    .filter((text) => text !== '');

const emptyMessage = 50006;

function emptiness({ at, body, files, editing, standing }: MessageCase): readonly Problem[] {
  const untouched = editing && [body.content, body.embeds, body.components, body.attachments].includes(undefined);
  if (untouched && !standing) return [];
  const kept = body.attachments?.length ?? standing?.files.length ?? 0;
  if (!isEmpty({ ...standing?.shows, ...body }) || files.length > 0 || (editing && kept > 0)) return [];
  return [{ ...overLimit(at, 'a message with nothing in it'), code: emptyMessage }];
}

const isEmpty = ({ content, embeds, components, sticker_ids: stickers, poll }: MessageBody): boolean =>
  (content ?? '').trim() === '' && [embeds, components, stickers].every((list) => (list ?? []).length === 0) && !poll;

const tooLarge = 40005;
const mostFiles = 10;

function fileLimits({ at, body, files, editing, standing, fileLimit }: MessageCase): readonly Problem[] {
  const found: Problem[] = [];
  if (files.length > mostFiles) found.push(overLimit('', `${files.length} files; a message takes ${mostFiles}`));
  for (const { field, size } of files) {
    if (size <= fileLimit) continue;
    found.push({ ...overLimit(field, `${size} bytes; the platform takes ${fileLimit}`), code: tooLarge });
  }
  body.attachments?.forEach(({ id }, nth) => {
    const isNew = files.some(({ field }) => field === `files[${id}]`);
    // A long id is that of a file the message has already; a short one counts the files sent now.
    if (isNew || (editing && id.length > 2)) return;
    found.push(overLimit(place(at, 'attachments', nth, 'id'), `no file was sent as files[${id}]`));
  });
  const known = new Set([...files.map(({ name }) => name), ...(standing?.files ?? [])]);
  for (const { url, where } of [
    ...shownMedia(place(at, 'components'), body.components ?? []).map(({ media, where }) => ({
      url: media.url,
      where,
    })),
    ...embedPictures(place(at, 'embeds'), body.embeds ?? []),
  ]) {
    if (!url.startsWith('attachment://')) continue;
    const name = url.slice('attachment://'.length);
    if (!/^[\w.-]+$/.test(name)) {
      found.push(overLimit(where, `${url}: the platform renames files with other signs than letters, digits, . _ -`));
    } else if (!known.has(name) && (!editing || standing !== undefined)) {
      found.push(overLimit(where, `${url} names no file of this message`));
    }
  }
  return found;
}

const embedPictures = (at: string, embeds: readonly APIEmbed[]) =>
  embeds.flatMap(({ image, thumbnail, author, footer }, nth) =>
    [
      { url: image?.url, where: place(at, nth, 'image', 'url') },
      { url: thumbnail?.url, where: place(at, nth, 'thumbnail', 'url') },
      { url: author?.icon_url, where: place(at, nth, 'author', 'icon_url') },
      { url: footer?.icon_url, where: place(at, nth, 'footer', 'icon_url') },
    ].flatMap(({ url, where }) => (url === undefined ? [] : [{ url, where }])),
  );

/** Without this field the platform notifies whoever is named in the text, which may be text somebody typed. */
function mentionRules({ at, body }: MessageCase): readonly Problem[] {
  const where = place(at, 'allowed_mentions');
  const { allowed_mentions: mentions } = body;
  if (mentions?.parse?.length === 0) return [];
  return [againstHouseRules(where, 'every message says `allowed_mentions: { parse: [] }`, so that it can ping nobody')];
}
