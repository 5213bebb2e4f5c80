import type { Reply } from '#findings/reply.ts';
import type { UnitSystem } from '#interview/question.ts';
import { replay } from '#interview/replay.ts';
import type { ScopedStore } from '#store/store.ts';
import { conversationWords } from '#words/conversation.ts';
import { fileWords } from '#words/files.ts';
import type { Language } from '#words/language.ts';
import { recallFor, recallFrom, unitsOf } from './answers.ts';
import { withAssumed } from './assumed.ts';
import type { Action, Desk, Start } from './command.ts';
import { glossed } from './glossed.ts';
import { inUnits } from './in-units.ts';

/** Words are no photo: it is sent itself. */
export const wordsAreNoPhoto = ({ language = 'english' }: { readonly language?: Language | undefined }) => ({
  rejected: fileWords[language].wordsAreNoPhoto,
});

/** A desk whose store is opened only when something on it is used, so that help needs no records. */
export const deskFor = ({
  store,
  photo = () => wordsAreNoPhoto(rest.speaker),
  recordsOpen = () => false,
  units,
  ...rest
}: Pick<Desk, 'speaker' | 'commands' | 'mayManage'> & {
  readonly store: () => ScopedStore;
  readonly photo?: Desk['photo'] | undefined;
  /** Whether the records are open anyway, so that a look at the crew's units costs nothing. */
  readonly recordsOpen?: () => boolean;
  /** The units asked for; the crew's own hold where they are left out. */
  readonly units?: UnitSystem | undefined;
}): Desk => ({
  ...rest,
  photo,
  get store() {
    return store();
  },
  get bareUnits() {
    return units ?? (recordsOpen() ? unitsOf(store()) : 'inch-pound');
  },
  get telling() {
    return { units: units ?? unitsOf(store()), language: rest.speaker.language };
  },
  recall: (question) => recallFrom(store(), store().currentSheet(rest.speaker).number)(question),
  recallOn: (sheet) => recallFrom(store(), sheet),
  answerOn: (sheet, name) => answerOn({ ...rest, store: store(), sheet }, name),
  now: () => store().now(),
});

function answerOn(
  {
    store,
    sheet,
    commands,
    speaker: { language },
  }: Pick<Desk, 'store' | 'commands' | 'speaker'> & { readonly sheet: number },
  name: string,
): ReturnType<Desk['answerOn']> {
  const command = commands.find((each) => each.name === name);
  if (command?.kind !== 'answer') throw new Error(`there is no answering command ${name}`);
  const outcome = replay(command.interview(), recallFor(store, sheet, command), 'conversation');
  if (!outcome.complete) return { lacks: outcome.unanswered };
  const units = unitsOf(store);
  return { reply: withAssumed(command.answer(outcome.inputs, { units, language }), outcome.assumed, units) };
}

/** Does it, and tells it in the units of the desk. */
export function acted(action: Action, desk: Desk, options: Readonly<Record<string, string>>): Reply | Start {
  const reply = action.act(desk, options);
  if ('start' in reply) return reply;
  const told = inUnits(reply, desk.bareUnits);
  return action.glosses ? glossed(told) : told;
}

/** Why somebody may not do this, in a sentence; nothing where they may. */
export const refusal = ({ managersOnly }: Action, { mayManage, speaker }: Desk): string | undefined =>
  managersOnly && !mayManage ? conversationWords[speaker.language ?? 'english'].managersOnly : undefined;
