import type { AnswerCommand } from '#chat/command.ts';
import { begin, hear } from '#chat/conversation.ts';
import type { Screen } from '#chat/screen.ts';
import { type Heard, recalledTalk, type Talk } from '#chat/talk.ts';
import duct from '#commands/duct.ts';
import size from '#commands/size.ts';
import type { ScopedStore } from '#store/store.ts';

export const commands = [size, duct] as readonly AnswerCommand<unknown>[];
export const [sizing, ducting] = commands as readonly [AnswerCommand<unknown>, AnswerCommand<unknown>];

export const ladder = { channel: 'thread-1', who: 'apprentice' };

/** A talk as it is found in the records: what a button or a restart sees. */
export function talkIn(store: ScopedStore, screen: Screen): Talk {
  const talk = recalledTalk(store, commands, screen.talk ?? '');
  if (!talk) throw new Error('there is no such talk');
  return talk;
}

/** Goes on with a talk, turn by turn; a plain text answers what is asked. */
export function turns(store: ScopedStore, screen: Screen, ...said: readonly (string | Heard)[]): Screen {
  return said.reduce<Screen>((now, each) => {
    const answer = typeof each === 'string' ? { answers: { [now.asking?.question.id ?? 'none']: each } } : each;
    return hear(store, talkIn(store, now), answer, ladder.who);
  }, screen);
}

export const started = (
  store: ScopedStore,
  command: AnswerCommand<unknown>,
  given: Readonly<Record<string, string>> = {},
): Screen => begin(store, command, given, ladder);

/** The id of the question that is asked, or nothing where there is an answer. */
export const askedIn = ({ asking }: Screen): string | undefined => asking?.question.id;
