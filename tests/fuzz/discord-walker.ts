import { type APIApplicationCommandBasicOption, ApplicationCommandOptionType as Type } from 'discord.js';
import type { drawnChart } from '#chat/discord/chart-pictures.ts';
import { commands } from '#commands/index.ts';
import { startBot } from '../chat/discord/bot.ts';
import { jpeg } from '../support/photographs.ts';
import type { FieldValue, Form } from '../support/stand-in/forms.ts';
import type { Begun, Person } from '../support/stand-in/person.ts';
import type { Seen } from '../support/stand-in/seen.ts';
import { type StandIn, startStandIn } from '../support/stand-in/stand-in.ts';
import type { Upload } from '../support/stand-in/uploads.ts';
import { type Dice, dice } from '../support/whole-swap/dice.ts';
import { forgedId } from './forged.ts';
import { leadsOn, slipIn, unseenIn } from './harm.ts';
import { requestHarm } from './sent.ts';
import { anything, typedFor } from './typed.ts';
import { usualFor } from './usual.ts';
import type { Walker } from './walker.ts';

interface Options {
  /** The file the records are in, so that the program can be started again on it. */
  readonly file: string;
  readonly draw: typeof drawnChart;
  /** The platform's clock; the computer's if not said. */
  readonly now?: () => number;
  /** Milliseconds somebody waits for an answer. */
  readonly patience: number;
}

/** Somebody of a crew and what they have in front of them. */
interface Place {
  readonly person: Person;
  /** A word that only this server knows. */
  readonly secret: string;
  readonly messages: Seen[];
  readonly forms: Form[];
}

const mostMessages = 12;

/** Several people in two servers who do anything in any order, and what of the replies should not be. */
export async function discordWalker(seed: number, { file, draw, now, patience }: Options): Promise<Walker> {
  const chance = dice(seed);
  const standIn = await startStandIn({ guilds: [], patience, ...(now ? { now } : {}) });
  let bot = await startBot(standIn, { file, draw });
  const places = crewsOf(standIn);
  const ids: string[] = [];
  const typed = new Set<string>();
  let read = 0;
  let complaints = 0;

  const typing = (text: string, { secret }: Place): string => {
    for (const word of text.split(/[^\w]+/)) typed.add(word);
    return chance.chance(0.05) ? `${secret} ${text}` : text;
  };

  const outcome = async (begun: Begun, place: Place): Promise<readonly string[]> => {
    const came = await Promise.any([begun.answer(), begun.form()]).catch((error: unknown) => {
      throw error instanceof AggregateError ? (error.errors as unknown[])[0] : error;
    });
    if ('fields' in came) {
      place.forms.push(came);
      return [];
    }
    place.messages.push(came);
    if (place.messages.length > mostMessages) place.messages.shift();
    for (const { customId } of [...came.buttons, ...came.menus]) if (customId !== undefined) ids.push(customId);
    if (ids.length > 400) ids.splice(0, 200);
    return wrongWith(came, place);
  };

  const wrongWith = (message: Seen, { secret }: Place): readonly string[] => {
    const { text, buttons, menus, embeds, files, thinking } = message;
    const leaked = places.find((other) => other.secret !== secret && text.includes(other.secret));
    const harm = unseenIn(text) ?? slipIn(text, typed);
    return [
      ...(leaked ? [`another server's words in: ${text}`] : []),
      ...(harm === undefined ? [] : [`${harm} in: ${text}`]),
      ...(thinking ? ['a promise was left standing'] : []),
      ...(text.trim() === '' && files.length === 0 ? ['an empty message'] : []),
      ...(buttons.length + menus.length + embeds.length > 0 || files.length > 0 || leadsOn(text, names)
        ? []
        : [`no way on after: ${text}`]),
    ];
  };

  const latest = ({ person, messages }: Place): Seen | undefined => {
    const old = messages[chance.chance(0.6) ? messages.length - 1 : chance.below(messages.length)];
    return old && person.look(old);
  };

  const option = (about: APIApplicationCommandBasicOption, place: Place): string | Upload => {
    if (about.type === Type.Attachment) return upload(chance);
    const offered = 'choices' in about ? (about.choices ?? []).map(({ value }) => String(value)) : [];
    if (offered.length > 0) return chance.oneOf(offered);
    const most = 'max_length' in about ? (about.max_length ?? 6000) : 6000;
    return typing(usualFor(about.name, chance), place).slice(0, most) || '0';
  };

  const slash = (place: Place): Deed => {
    const command = chance.oneOf(standIn.commands());
    const subs = (command.options ?? []).filter(({ type }) => type === Type.Subcommand);
    const sub = subs.length > 0 ? chance.oneOf(subs) : undefined;
    const takes = ((sub && 'options' in sub ? sub.options : command.options) ??
      []) as APIApplicationCommandBasicOption[];
    const share = chance.oneOf([0, 0.1, 0.4, 0.9]);
    const wanted = takes.filter(({ required }) => required || chance.chance(share));
    const options = Object.fromEntries(wanted.map((about) => [about.name, option(about, place)]));
    const words = [command.name, ...(sub ? [sub.name] : [])].join(' ');
    return {
      did: `/${words} ${JSON.stringify(options, (_, value) => (value?.bytes ? 'a file' : value))}`,
      begin: () => place.person.begin.slash(words, options, { twice: chance.chance(0.05) }),
    };
  };

  const suggest = (place: Place): Deed | undefined => {
    const command = chance.oneOf(standIn.commands());
    const subs = (command.options ?? []).filter(({ type }) => type === Type.Subcommand);
    const sub = subs.length > 0 ? chance.oneOf(subs) : undefined;
    const takes = ((sub && 'options' in sub ? sub.options : command.options) ??
      []) as APIApplicationCommandBasicOption[];
    const asked = takes.filter((about) => 'autocomplete' in about && about.autocomplete);
    if (asked.length === 0) return undefined;
    const { name } = chance.oneOf(asked);
    const partial = typing(usualFor(name, chance), place).slice(0, 600);
    const words = [command.name, ...(sub ? [sub.name] : [])].join(' ');
    return {
      did: `completes /${words} ${name} ${JSON.stringify(partial)}`,
      begin: () => place.person.begin.complete(words, name, partial),
      completes: true,
    };
  };

  const press = (place: Place): Deed | undefined => {
    const message = latest(place);
    if (!message || message.buttons.length + message.menus.length === 0) return undefined;
    const { person } = place;
    if (message.menus.length > 0 && chance.chance(0.5)) {
      const menu = chance.oneOf(message.menus);
      const chosen = menu.options.filter(() => chance.chance(0.3)).map(({ value }) => value);
      const values = chosen.length > 0 ? chosen : [chance.oneOf(menu.options).value];
      return { did: `picks ${values}`, begin: () => person.begin.pick(message, menu.customId, values) };
    }
    const button = message.buttons.length > 0 ? chance.oneOf(message.buttons) : undefined;
    if (!button) return undefined;
    const twice = chance.chance(0.05);
    return {
      did: `presses [${button.label}] ${button.customId}`,
      begin: () => person.begin.press(message, button.customId ?? button.label, { twice }),
    };
  };

  const forge = (place: Place): Deed | undefined => {
    const message = latest(place);
    if (!message) return undefined;
    const id = forgedId(ids, chance);
    const values = chance.chance(0.3) ? [anything(chance).slice(0, 100) || 'x'] : undefined;
    return {
      did: `forges ${JSON.stringify(id)} ${JSON.stringify(values)}`,
      begin: () => place.person.begin.pressRaw(id, message, values),
    };
  };

  const submit = (place: Place): Deed | undefined => {
    const form = place.forms.at(chance.chance(0.7) ? -1 : chance.below(place.forms.length));
    if (!form) return undefined;
    if (chance.chance(0.7)) place.forms.splice(place.forms.indexOf(form), 1);
    const filled = form.fields.flatMap((field): readonly [string, FieldValue][] => {
      if (!field.required && chance.chance(0.3)) return [];
      if (field.kind === 'file') return [[field.id, [upload(chance)]]];
      if (field.kind === 'menu') return [[field.id, [chance.oneOf(field.options).value]]];
      return [[field.id, typing(typedFor(field.id, chance), place).slice(0, 190) || '1']];
    });
    const values = Object.fromEntries(filled);
    return {
      did: `fills ${JSON.stringify(values, (_, value) => (value?.bytes ? 'a file' : value))}`,
      begin: () => place.person.begin.submit(form, values),
    };
  };

  const deed = (place: Place): Deed => {
    const roll = chance.below(100);
    const wanted =
      roll < 45
        ? press(place)
        : roll < 60
          ? submit(place)
          : roll < 70
            ? suggest(place)
            : roll < 80
              ? forge(place)
              : undefined;
    return wanted ?? slash(place);
  };

  const done = async (place: Place, { begin, completes }: Deed): Promise<readonly string[]> => {
    const begun = begin();
    if (!completes) return outcome(begun, place);
    const choices = await begun.choices();
    const leaked = places.find(
      ({ secret }) => secret !== place.secret && choices.some(({ name, value }) => `${name} ${value}`.includes(secret)),
    );
    return leaked ? [`another server's words are suggested: ${JSON.stringify(choices)}`] : [];
  };

  const heard = (): readonly string[] => {
    const sent = standIn.requests.slice(read).flatMap((request) =>
      requestHarm(
        request,
        places.map(({ person }) => person.id),
      ),
    );
    read = standIn.requests.length;
    const said = [...standIn.violations, ...bot.logged.map((line) => `logged: ${JSON.stringify(line)}`)];
    const fresh = said.slice(complaints);
    complaints = said.length;
    return [...sent, ...fresh];
  };

  return {
    async step() {
      if (chance.chance(0.003)) {
        await bot.stop();
        bot = await startBot(standIn, { file, draw });
        complaints = standIn.violations.length;
      }
      const together = Array.from({ length: chance.chance(0.05) ? 4 : 1 }, () => {
        const place = chance.oneOf(places);
        return { place, deed: deed(place) };
      });
      const did = together.map(({ place, deed: { did: what } }) => `${place.person.name}: ${what}`).join(' & ');
      try {
        const problems = await Promise.all(together.map((each) => done(each.place, each.deed)));
        return { did, problems: [...problems.flat(), ...heard()] };
      } catch (error) {
        return { did, problems: [String(error instanceof Error ? error.message : error).slice(0, 3000), ...heard()] };
      }
    },
    async close() {
      await bot.stop();
      await standIn.close();
    },
  };
}

interface Deed {
  readonly did: string;
  begin(): Begun;
  /** It is a word half typed, which is answered with suggestions. */
  readonly completes?: boolean;
}

const names = commands.map(({ name }) => name);

function crewsOf(standIn: StandIn): readonly Place[] {
  return ['Ashwood', 'Birchholm'].flatMap((secret) => {
    const guild = standIn.addGuild({ name: secret, channels: ['general', 'jobs'] });
    const channels = ['general', 'jobs'].map((name) => standIn.channel(name, guild));
    return channels.flatMap((channel, index) => {
      const person = standIn.user({ name: `${secret} ${index}`, guild, channel });
      const lead = standIn.user({ name: `${secret} lead`, guild, channel, permissions: ['ManageGuild'] });
      return [person, lead].map((each) => ({ person: each, secret, messages: [], forms: [] }));
    });
  });
}

/** A file of any kind: a photo, a list, or something that claims to be one. */
function upload(chance: Dice): Upload {
  const bytes = chance.oneOf<Uint8Array>([
    jpeg({ more: String(chance.below(1000)) }),
    Buffer.from('name,fan-curve,collar\nHall bath 80,84@0.1 66@0.25,4 in\n'),
    Buffer.from(`{"version":1,"x":${JSON.stringify(anything(chance))}}`),
    Buffer.from(anything(chance)),
    Buffer.alloc(0),
    Buffer.alloc(2000, 0xff),
  ]);
  return {
    name: chance.oneOf(['photo.jpg', '../../etc/passwd', 'list.csv', '@everyone.png', 'job.json']),
    contentType: chance.oneOf(['image/jpeg', 'text/csv', 'application/json', 'text/html']),
    bytes,
    ...(chance.chance(0.1)
      ? {
          served: chance.oneOf([
            { gone: true } as const,
            { redirect: 'http://127.0.0.1:1/' },
            { breaks: true } as const,
          ]),
        }
      : {}),
  };
}
