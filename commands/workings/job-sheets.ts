import type { Desk, DeskOption } from '#chat/command.ts';
import { checkCalled } from '../questions/callback-checks.ts';

export type Sheet = ReturnType<Desk['store']['currentSheet']>;

export const jobCalled = ({ number, name }: Pick<Sheet, 'number' | 'name'>): string =>
  name === null ? `Job ${number} (no name yet)` : `Job ${number}, ${name}`;

export const missingJob = (name = ''): string => `There is no job “${name.slice(0, 40)}” here. /job list shows them.`;

/** The job an action is about, where none has to be named. */
export const namedJob: DeskOption = {
  id: 'name',
  brief: 'the job, by name or number; the one open here when left out',
  suggest: ({ store }, typed) =>
    store
      .listSheets({ limit: 25, search: typed })
      .map((sheet) => ({ id: String(sheet.number), label: jobCalled(sheet) })),
};

export const sheetMeant = ({ store, speaker }: Desk, name: string | undefined): Sheet | undefined =>
  name === undefined ? store.currentSheet(speaker) : store.findSheet(name);

/** What a fact is called on the page of the command that asks for it. */
export const briefOf = ({ commands }: Pick<Desk, 'commands'>, fact: string): string =>
  commands.flatMap((command) => (command.kind === 'answer' ? command.takes : [])).find(({ id }) => id === fact)
    ?.brief ?? (/^heard(?:-\d+)?$/.test(fact) ? 'What was understood' : (checkCalled(fact) ?? fact));

/** What somebody said, as they said it. */
export const saidOf = ({ how, typed }: { readonly how: string; readonly typed: string }): string =>
  how === 'unknown' ? 'don’t know' : typed;

export const howWords = {
  measured: 'measured',
  label: 'read off the label',
  estimated: 'estimated',
  told: 'as told',
  unknown: 'not known',
} as const;
