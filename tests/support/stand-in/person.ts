import {
  type APIApplicationCommandOptionChoice,
  type APIUser,
  ComponentType,
  InteractionResponseType,
} from 'discord.js';
import { commandData, type Options } from './command-data.ts';
import type { Channel, Guild } from './fixtures.ts';
import { type FieldValue, type Form, form, formData } from './forms.ts';
import { begin, type Deed, type Doer, type Interaction, memberPermissions } from './interactions.ts';
import type { StoredMessage } from './messages.ts';
import { report } from './report.ts';
import { type Seen, type SeenButton, type SeenMenu, seen } from './seen.ts';
import type { World } from './world.ts';

/** How something is done, where it is not done as usual. */
interface How {
  /** Milliseconds to wait for the bot. */
  readonly patience?: number;
  /** The platform tells the bot twice, as it may after a lost connection. */
  readonly twice?: boolean;
  /** Does it even where the platform's own program would not let a person. */
  readonly force?: boolean;
}

type Choice = APIApplicationCommandOptionChoice;

/** Something done, whose answer may be waited for in several ways. */
export interface Begun {
  readonly id: string;
  /** The message the bot answers with, or the one it changes. */
  answer(): Promise<Seen>;
  /** The form the bot shows. */
  form(): Promise<Form>;
  /** The suggestions the bot makes. */
  choices(): Promise<readonly Choice[]>;
  /** Milliseconds until the bot's first answer of any kind. */
  acknowledgement(): Promise<number>;
  /** Calls with the milliseconds from doing it to the first answer, and to the answer itself. */
  readonly onAcknowledged: (tell: (milliseconds: number) => void) => void;
  readonly onAnswered: (tell: (milliseconds: number) => void) => void;
}

/** What a person can do without waiting for the bot. */
interface Beginnings {
  slash(words: string, options?: Options, how?: How): Begun;
  complete(words: string, option: string, partial: string, others?: Options, how?: How): Begun;
  press(message: Seen, button: string, how?: How): Begun;
  pick(message: Seen, menu: string, choices: readonly string[], how?: How): Begun;
  /** A press with any id at all, as a forger would send it; with values it is a choice from a menu. */
  pressRaw(customId: string, message: Seen, values?: readonly string[], how?: How): Begun;
  submit(form: Form, values: Readonly<Record<string, FieldValue>>, how?: How): Begun;
}

/** Somebody of the crew at the platform, in one channel. */
export interface Person {
  readonly id: string;
  readonly name: string;
  /** The same person in another channel or thread. */
  in(channel: Channel): Person;
  readonly begin: Beginnings;
  slash(words: string, options?: Options, how?: How): Promise<Seen>;
  slashExpectingForm(words: string, options?: Options, how?: How): Promise<Form>;
  autocomplete(words: string, option: string, partial: string, others?: Options): Promise<readonly Choice[]>;
  press(message: Seen, button: string, how?: How): Promise<Seen>;
  pressExpectingForm(message: Seen, button: string, how?: How): Promise<Form>;
  pick(message: Seen, menu: string, choices: readonly string[], how?: How): Promise<Seen>;
  pickExpectingForm(message: Seen, menu: string, choices: readonly string[], how?: How): Promise<Form>;
  pressRaw(customId: string, message: Seen, values?: readonly string[], how?: How): Promise<Seen>;
  submit(form: Form, values: Readonly<Record<string, FieldValue>>, how?: How): Promise<Seen>;
  /** The message as it is now; undefined when it is gone or not for this person's eyes. */
  look(message: Seen): Seen | undefined;
  /** Waits until the message looks as wanted, and gives it as it looks then. */
  until(message: Seen, wanted: (message: Seen) => boolean, patience?: number): Promise<Seen>;
  /** Waits for the nth further message (from 0) that came with the same answer. */
  followUp(message: Seen, nth?: number): Promise<Seen>;
  /** What this person sees in the channel, oldest first. */
  messages(): readonly Seen[];
}

export interface PersonOptions {
  readonly user: APIUser;
  readonly guild: Guild;
  readonly channel: Channel;
  readonly roles: readonly string[];
  readonly permissions: Parameters<typeof memberPermissions>[0];
  readonly locale: string;
  readonly patience: number;
}

export function person(world: World, options: PersonOptions): Person {
  const { user, guild, channel, roles, locale, patience } = options;
  const doer: Doer = { user, guild, channel, roles, locale, permissions: memberPermissions(options.permissions) };

  const does = (deed: Omit<Deed, 'doer'>, how: How = {}): Begun =>
    begun(world, begin(world, { ...deed, doer, twice: how.twice }), how.patience ?? patience);

  const visible = (id: string): StoredMessage => {
    const message = world.messages.get(id);
    if (!message || message.deleted) throw new Error(`${user.global_name} cannot act on a message that is gone.`);
    if (message.onlyFor !== undefined && message.onlyFor !== user.id) {
      throw new Error(
        `${user.global_name} cannot see this message: it is for ${world.users.get(message.onlyFor)?.username}.`,
      );
    }
    return message;
  };

  const pressed = (message: Seen, name: string, values: readonly string[] | undefined, how?: How) => {
    const data = {
      custom_id: name,
      component_type: values ? ComponentType.StringSelect : ComponentType.Button,
      ...(values ? { values } : {}),
    };
    return does({ kind: 'press', name, data, on: visible(message.id) }, how);
  };

  const beginnings: Beginnings = {
    slash(words, given = {}, how) {
      const data = commandData(world, doer, { words, options: given, force: how?.force });
      return does({ kind: 'command', name: `/${words}`, data }, how);
    },
    complete(words, focused, partial, others = {}, how) {
      const data = commandData(world, doer, { words, options: { ...others, [focused]: partial }, focused });
      return does({ kind: 'suggestion', name: `/${words} ${focused}`, data }, how);
    },
    press(message, wanted, how) {
      const button = buttonNamed(seen(visible(message.id)), wanted);
      if (button.customId === undefined) throw new Error(`[${wanted}] opens an address; the bot is not told.`);
      return pressed(message, button.customId, undefined, how);
    },
    pick(message, wanted, chosen, how) {
      const menu = menuNamed(seen(visible(message.id)), wanted);
      return pressed(
        message,
        menu.customId,
        chosen.map((one) => optionNamed(menu, one)),
        how,
      );
    },
    pressRaw: (customId, message, values, how) => pressed(message, customId, values, how),
    submit(shown, values, how) {
      const data = formData(world, doer, shown, values);
      return does({ kind: 'form', name: shown.customId, data, on: shown.from.on, from: shown.from }, how);
    },
  };

  const look = (message: Seen): Seen | undefined => {
    const stored = world.messages.get(message.id);
    if (!stored || stored.deleted || (stored.onlyFor ?? user.id) !== user.id) return undefined;
    return { ...seen(stored), interactionId: message.interactionId };
  };

  return {
    id: user.id,
    name: user.global_name ?? user.username,
    in: (other) => person(world, { ...options, channel: other }),
    begin: beginnings,
    slash: async (...deed) => beginnings.slash(...deed).answer(),
    slashExpectingForm: async (...deed) => beginnings.slash(...deed).form(),
    autocomplete: async (...deed) => beginnings.complete(...deed).choices(),
    press: async (...deed) => beginnings.press(...deed).answer(),
    pressExpectingForm: async (...deed) => beginnings.press(...deed).form(),
    pick: async (...deed) => beginnings.pick(...deed).answer(),
    pickExpectingForm: async (...deed) => beginnings.pick(...deed).form(),
    pressRaw: async (...deed) => beginnings.pressRaw(...deed).answer(),
    submit: async (...deed) => beginnings.submit(...deed).answer(),
    look,
    until: (message, wanted, wait = patience) =>
      world.signal.until(
        () => {
          const now = look(message);
          return now && wanted(now) ? now : undefined;
        },
        wait,
        () => report(world, world.interactions.get(message.interactionId ?? '')),
      ),
    followUp: (message, nth = 0) => {
      const interaction = world.interactions.get(message.interactionId ?? '');
      if (!interaction) throw new Error('This message did not come with an answer, so nothing follows up on it.');
      return world.signal.until(
        () => {
          const found = interaction.followUps[nth];
          return found && { ...seen(found), interactionId: interaction.id };
        },
        patience,
        () => report(world, interaction),
      );
    },
    messages: () =>
      [...world.messages.values()]
        .filter((message) => message.channelId === channel.id && !message.deleted)
        .filter((message) => (message.onlyFor ?? user.id) === user.id)
        .map(seen),
  };
}

function begun(world: World, interaction: Interaction, patience: number): Begun {
  const wait = <T>(look: () => T | undefined) => world.signal.until(look, patience, () => report(world, interaction));
  return {
    id: interaction.id,
    answer: () =>
      wait(() => {
        if (interaction.answered.at === undefined) return undefined;
        if (interaction.form) throw new Error(`The bot showed the form "${interaction.form.title}", not a message.`);
        if (!interaction.answer)
          throw new Error(`The bot answered with type ${interaction.response?.type}, no message.`);
        return { ...seen(interaction.answer), interactionId: interaction.id };
      }),
    form: () =>
      wait(() => {
        if (interaction.form) return form(interaction.form, interaction);
        if (interaction.acknowledged.at === undefined) return undefined;
        throw new Error(`The bot showed no form.\n${report(world, interaction)}`);
      }),
    choices: () =>
      wait(() => {
        const { response } = interaction;
        if (response?.type !== InteractionResponseType.ApplicationCommandAutocompleteResult) return undefined;
        return response.data.choices ?? [];
      }),
    acknowledgement: () => wait(() => interaction.acknowledged.at).then((at) => at - interaction.firedAt),
    onAcknowledged: (tell) => interaction.acknowledged.tell((at) => tell(at - interaction.firedAt)),
    onAnswered: (tell) => interaction.answered.tell((at) => tell(at - interaction.firedAt)),
  };
}

function buttonNamed({ buttons, text }: Seen, wanted: string): SeenButton {
  const button = buttons.find(({ label, customId }) => label === wanted || customId === wanted);
  const there = buttons.map(({ label }) => `[${label}]`).join(' ') || 'no buttons';
  if (!button) throw new Error(`There is no [${wanted}]. There are: ${there}, under: ${text}`);
  if (button.disabled) throw new Error(`[${wanted}] cannot be pressed: it is greyed out.`);
  return button;
}

function menuNamed({ menus, text }: Seen, wanted: string): SeenMenu {
  const menu = menus.find(({ placeholder, customId }) => placeholder === wanted || customId === wanted);
  const there = menus.map(({ placeholder, customId }) => placeholder || customId).join(', ') || 'none';
  if (!menu) throw new Error(`There is no menu "${wanted}". Menus: ${there}, under: ${text}`);
  if (menu.disabled) throw new Error(`The menu "${wanted}" cannot be opened: it is greyed out.`);
  return menu;
}

function optionNamed({ options, placeholder }: SeenMenu, wanted: string): string {
  const option = options.find(({ label, value }) => value === wanted || label === wanted);
  if (option) return option.value;
  throw new Error(`"${placeholder}" offers no ${wanted}. It offers: ${options.map(({ label }) => label).join(', ')}.`);
}
