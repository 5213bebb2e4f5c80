import type { Logged } from '../support/stand-in/world.ts';
import { actedOn, unseenIn } from './harm.ts';

/** What somebody typed goes back as it was in these, and is shown to nobody. */
const unshown = ['value', 'custom_id'];

/** Nothing is formatted on buttons, in menus and forms, nor in the words for a picture. */
const unformatted = ['components', 'attachments', 'choices'];

/** Texts that the platform formats and acts on. */
const formatted = ['content', 'title', 'description'];

/** Everything in what the bot sent that must not stand in any text. */
export function requestHarm({ method, path, body }: Logged, people: readonly string[]): readonly string[] {
  if (!/^\/(?:interactions|webhooks|channels)\//.test(path) || method === 'GET') return [];
  const told = (problem: string, text: string) => `${problem} was sent in ${method} ${path}: ${text.slice(0, 300)}`;
  const whole = JSON.stringify(body) ?? '';
  const maySpeakTo = whole.includes('"content":') && !whole.includes('"allowed_mentions":{"parse":[]');
  const texts = textsIn(body, [...unshown, ...unformatted]).filter(({ key }) => formatted.includes(key));
  return [
    ...(maySpeakTo ? [told('a message that may mention somebody', whole)] : []),
    ...textsIn(body, unshown).flatMap(({ text }) => {
      const found = unseenIn(text);
      return found === undefined ? [] : [told(found, text)];
    }),
    ...texts.flatMap(({ text }) => {
      const found = actedOn(text, people);
      return found === undefined ? [] : [told(found, text)];
    }),
  ];
}

interface Text {
  readonly key: string;
  readonly text: string;
}

/** Every text in what was sent, but for what stands under some keys. */
function textsIn(value: unknown, leftOut: readonly string[], key = ''): readonly Text[] {
  if (leftOut.includes(key)) return [];
  if (typeof value === 'string') return [{ key, text: value }];
  if (Array.isArray(value)) return value.flatMap((each) => textsIn(each, leftOut, key));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => textsIn(each, leftOut, name));
}
