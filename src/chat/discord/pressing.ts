import type { ModalSubmitInteraction } from 'discord.js';
import type { ScopedStore } from '#store/store.ts';
import { discordWords } from '#words/discord.ts';
import { begin, hear } from '../conversation.ts';
import type { Asking, Screen } from '../screen.ts';
import { type Heard, recalledTalk, screenOf, type Talk } from '../talk.ts';
import { type Component, type Decision, say } from './decision.ts';
import { deskPressed } from './desk-press.ts';
import { decidedDeskPress } from './desk-pressing.ts';
import { filledIn, formOf } from './form.ts';
import { answering, type House, languageOf, speakerOf, whoOf, wordsFor } from './house.ts';
import { type Press, pressed } from './press.ts';

type Pressed = Component | ModalSubmitInteraction;

/** What each press comes from; anything else was made up. */
const comesFrom = (act: Press['act'], interaction: Pressed): boolean => {
  if (act === 'form') return interaction.isButton() || interaction.isModalSubmit();
  return act === 'pick' || act === 'change' ? interaction.isStringSelectMenu() : interaction.isButton();
};

/** Settles what a press, a pick or a filled-in form leads to. */
export function decidedPress(house: House, store: ScopedStore, interaction: Pressed): Decision {
  const atDesk = deskPressed(interaction.customId);
  if (atDesk) return decidedDeskPress(house, store, interaction, atDesk);
  const press = pressed(interaction.customId);
  const words = wordsFor(store, interaction);
  if (!press || !comesFrom(press.act, interaction)) return say(words.startAgain);
  const talk = recalledTalk(store, answering(house), press.talk, languageOf(store, interaction));
  if (!talk) return say(words.questionClosed);
  const who = whoOf(interaction);
  if (press.act === 'start') return started(house, store, interaction, { talk, name: press.choice ?? '' });
  if (press.act === 'working' || press.act === 'everything') return explained(store, talk, press.act);
  if (talk.who !== who) return say(words.notYours(talk.who, talk.command.name));
  if (press.turn !== talk.revision) return shown(screenOf(store, talk, [words.earlierStep]));
  const standing = screenOf(store, talk);
  if (press.act === 'form' && !interaction.isModalSubmit()) return form(house, store, { talk, standing });
  const heard = heardFrom(press, interaction, standing);
  if ('problem' in heard) return shown({ ...standing, notes: [heard.problem] });
  const next = hear(store, talk, heard, who);
  house.typed.keep(talk.id, unread(heard, next));
  return shown(next);
}

const shown = (screen: Screen): Decision => ({ does: 'show', screen, where: 'in place' });

/** A follow-up is about the job of the answer it stands under, whatever lies open in the channel by now. */
function started(
  house: House,
  store: ScopedStore,
  interaction: Pressed,
  { talk, name }: { talk: Talk; name: string },
): Decision {
  const command = answering(house).find((each) => each.name === name);
  if (!command) return say(wordsFor(store, interaction).commandGone);
  const screen = begin(store, command, {}, { ...speakerOf(store, interaction), sheet: talk.sheet });
  return { does: 'show', screen, where: 'new' };
}

function explained(store: ScopedStore, talk: Talk, what: 'working' | 'everything'): Decision {
  const { reply, command } = screenOf(store, talk);
  return reply ? { does: 'explain', what, command, reply } : say(discordWords[talk.language ?? 'english'].beingChanged);
}

function form(house: House, store: ScopedStore, { talk, standing }: { talk: Talk; standing: Screen }): Decision {
  const { asking } = standing;
  if (!asking) return say(discordWords[talk.language ?? 'english'].nothingAsked);
  const known = asking.now === undefined ? undefined : store.newestFacts(talk.sheet).get(asking.question.id)?.typed;
  const typed = { ...(known === undefined ? {} : { [asking.question.id]: known }), ...house.typed.of(talk.id) };
  return {
    does: 'ask',
    form: formOf(asking, {
      command: talk.command.name,
      typed,
      language: talk.language,
      talk: talk.id,
      turn: talk.revision,
    }),
  };
}

function heardFrom(
  press: Press,
  interaction: Pressed,
  { asking, given = [], language = 'english' }: Screen,
): Heard | { problem: string } {
  const words = discordWords[language];
  if (press.act === 'change' && interaction.isStringSelectMenu()) {
    const [wanted = ''] = interaction.values;
    return given.some(({ id }) => id === wanted) ? { change: wanted } : { problem: words.noSuchAnswer };
  }
  if (press.act === 'back' || press.act === 'why' || press.act === 'not-known' || press.act === 'another-job')
    return { turn: press.act };
  if (!asking) return { problem: words.nothingAskedNow };
  if (interaction.isModalSubmit()) {
    const answers = filledIn(interaction, asking);
    return Object.keys(answers).length > 0 ? { answers } : { problem: words.nothingFilledIn };
  }
  const said = interaction.isStringSelectMenu() ? interaction.values.join(', ') : chosen(asking, press);
  return said === undefined ? { problem: words.notOffered } : { answers: { [asking.question.id]: said } };
}

const chosen = ({ choices }: Asking, { choice }: Press): string | undefined => choices[Number(choice)]?.id;

/** What was typed for questions that are still open, because it was not understood. */
function unread(heard: Heard, { asking, notes }: Screen): Readonly<Record<string, string>> {
  if (!('answers' in heard) || notes.length === 0) return {};
  const open = new Set((asking?.questions ?? []).map(({ id }) => id));
  return Object.fromEntries(Object.entries(heard.answers).filter(([id]) => open.has(id)));
}
