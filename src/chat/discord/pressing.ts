import type { ModalSubmitInteraction } from 'discord.js';
import type { ScopedStore } from '#store/store.ts';
import { begin, type Heard, hear, recalledTalk, screenOf, type Talk } from '../conversation.ts';
import type { Asking, Screen } from '../screen.ts';
import { type Component, type Decision, say } from './decision.ts';
import { deskPressed } from './desk-press.ts';
import { decidedDeskPress } from './desk-pressing.ts';
import { filledIn, formOf } from './form.ts';
import { answering, type House, languageOf, speakerOf, whoOf } from './house.ts';
import { type Press, pressed } from './press.ts';

type Pressed = Component | ModalSubmitInteraction;

const outOfDate = 'This button is out of date. Start again with a command such as /duct.';

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
  if (!press || !comesFrom(press.act, interaction)) return say(outOfDate);
  const talk = recalledTalk(store, answering(house), press.talk, languageOf(store, interaction));
  if (!talk) return say('This question is no longer open. Start again with a command such as /duct.');
  const who = whoOf(interaction);
  if (press.act === 'start') return started(house, store, interaction, { talk, name: press.choice ?? '' });
  if (press.act === 'working' || press.act === 'everything') return explained(store, talk, press.act);
  if (talk.who !== who) {
    return say(
      `This is ${talk.who}’s to answer. Use /${talk.command.name} for one of your own; the answers so far carry over.`,
    );
  }
  if (press.turn !== talk.revision) {
    return shown(screenOf(store, talk, ['That was an earlier step. Here is where it stands.']));
  }
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
  if (!command) return say('This command is no longer here. Type / to see those that are.');
  const screen = begin(store, command, {}, { ...speakerOf(store, interaction), sheet: talk.sheet });
  return { does: 'show', screen, where: 'new' };
}

function explained(store: ScopedStore, talk: Talk, what: 'working' | 'everything'): Decision {
  const { reply, command } = screenOf(store, talk);
  return reply
    ? { does: 'explain', what, command, reply }
    : say('An answer is being changed, so there is nothing to show yet. Answer the question, or press Back.');
}

function form(house: House, store: ScopedStore, { talk, standing }: { talk: Talk; standing: Screen }): Decision {
  const { asking } = standing;
  if (!asking) return say('Nothing is being asked just now. Type / for a command, or change an answer with the menu.');
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

function heardFrom(press: Press, interaction: Pressed, { asking, given = [] }: Screen): Heard | { problem: string } {
  if (press.act === 'change' && interaction.isStringSelectMenu()) {
    const [wanted = ''] = interaction.values;
    return given.some(({ id }) => id === wanted) ? { change: wanted } : { problem: 'There is no such answer here.' };
  }
  if (press.act === 'back' || press.act === 'why' || press.act === 'not-known') return { turn: press.act };
  if (!asking) return { problem: 'Nothing is being asked just now.' };
  if (interaction.isModalSubmit()) {
    const answers = filledIn(interaction, asking);
    return Object.keys(answers).length > 0 ? { answers } : { problem: 'Nothing was filled in.' };
  }
  const said = interaction.isStringSelectMenu() ? interaction.values.join(', ') : chosen(asking, press);
  return said === undefined
    ? { problem: 'That choice is not among the ones offered now.' }
    : { answers: { [asking.question.id]: said } };
}

const chosen = ({ choices }: Asking, { choice }: Press): string | undefined => choices[Number(choice)]?.id;

/** What was typed for questions that are still open, because it was not understood. */
function unread(heard: Heard, { asking, notes }: Screen): Readonly<Record<string, string>> {
  if (!('answers' in heard) || notes.length === 0) return {};
  const open = new Set((asking?.questions ?? []).map(({ id }) => id));
  return Object.fromEntries(Object.entries(heard.answers).filter(([id]) => open.has(id)));
}
