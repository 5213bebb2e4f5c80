import type { ScopedStore } from '#store/store.ts';
import { recallFrom, unitsOf } from './answers.ts';
import type { Action, Desk } from './command.ts';

/** Words are no photo: it is sent itself. */
export const wordsAreNoPhoto = {
  rejected: 'Words are no photo. Send the photo itself: press the button of the step, or use /swap photo.',
};

/** A desk whose store is opened only when something on it is used, so that help needs no records. */
export const deskFor = ({
  store,
  photo = () => wordsAreNoPhoto,
  ...rest
}: Pick<Desk, 'speaker' | 'commands' | 'mayManage'> & {
  readonly store: () => ScopedStore;
  readonly photo?: Desk['photo'] | undefined;
}): Desk => ({
  ...rest,
  photo,
  get store() {
    return store();
  },
  get telling() {
    return { units: unitsOf(store()) };
  },
  recall: (question) => recallFrom(store(), store().currentSheet(rest.speaker).number)(question),
  recallOn: (sheet) => recallFrom(store(), sheet),
  now: () => store().now(),
});

/** Why somebody may not do this, in a sentence; nothing where they may. */
export const refusal = ({ managersOnly }: Action, { mayManage }: Desk): string | undefined =>
  managersOnly && !mayManage ? 'Only people who may manage this server can change that. Ask one of them.' : undefined;
