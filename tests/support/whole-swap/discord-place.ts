import { createHash } from 'node:crypto';
import { pngChunk } from '../photographs.ts';
import type { Form } from '../stand-in/forms.ts';
import type { Begun, Person } from '../stand-in/person.ts';
import type { Seen } from '../stand-in/seen.ts';
import { photo, type Upload } from '../stand-in/uploads.ts';
import type { Place, Sight } from './sight.ts';

/** What somebody in a server sees: a message, or a form. */
export interface DiscordSight extends Sight {
  readonly message: Seen | undefined;
  readonly opened: Form | undefined;
}

/** Waits for what was begun. Whoever makes the place may end the program meanwhile. */
type Wait = (begun: Begun, answer: Promise<DiscordSight>) => Promise<DiscordSight>;

interface DiscordPlace extends Place<DiscordSight> {
  /** A press with any id at all, as a forger would send it. */
  pressRaw(who: string, on: DiscordSight, id: string): Promise<DiscordSight>;
}

/** A server in which these people, each by their mention, walk a list. */
export function discordPlace(people: ReadonlyMap<string, Person>, wait: Wait): DiscordPlace {
  const person = (who: string): Person => {
    const found = people.get(who);
    if (!found) throw new Error(`Nobody here is called ${who}.`);
    return found;
  };
  const answered = (begun: Begun): Promise<DiscordSight> =>
    wait(begun, Promise.any([begun.form().then(formSight), begun.answer().then(messageSight)]));
  return {
    type: (who, words, given) => answered(person(who).begin.slash(words, given)),
    press(who, { message }, label) {
      if (!message) throw new Error(`There is no message to press [${label}] on.`);
      return answered(person(who).begin.press(message, label));
    },
    pressRaw(who, { message }, id) {
      if (!message) throw new Error(`There is no message to press ${id} on.`);
      return answered(person(who).begin.pressRaw(id, message));
    },
    fill(who, { opened }, values) {
      if (!opened) throw new Error('There is no form to fill in.');
      const kinds = new Map(opened.fields.map(({ id, kind }) => [id, kind]));
      const filled = Object.entries(values).map(([id, value]) => [
        id,
        kinds.get(id) === 'file' ? [pictureCalled(value)] : value,
      ]);
      return answered(person(who).begin.submit(opened, Object.fromEntries(filled)));
    },
  };
}

/** An invented photo of one dot, unlike any of another name: its dot has a width and height of its own. */
function pictureCalled(name: string): Upload {
  const dot = photo(name);
  const measures = createHash('sha256').update(name).digest().subarray(0, 8);
  const afterItsHead = 33;
  return {
    ...dot,
    bytes: Buffer.concat([
      dot.bytes.subarray(0, afterItsHead),
      pngChunk('pHYs', Buffer.concat([measures, Buffer.alloc(1)])),
      dot.bytes.subarray(afterItsHead),
    ]),
  };
}

export const messageSight = (message: Seen): DiscordSight => ({
  headline: message.embeds[0]?.title ?? message.content,
  text: message.text,
  presses: message.buttons.map(({ label }) => label),
  refused: message.ephemeral,
  message,
  opened: undefined,
});

const formSight = (opened: Form): DiscordSight => ({
  headline: opened.title,
  text: opened.title,
  presses: [],
  form: opened.fields.map(({ id, label, description, required, options }) => ({
    id,
    label,
    accepts: description,
    optional: !required,
    choices: options.map((option) => option.label),
  })),
  refused: false,
  message: undefined,
  opened,
});
