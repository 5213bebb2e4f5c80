import type { Desk, DeskOption } from '#chat/command.ts';
import { worded } from '#interview/worded.ts';
import type { Language } from '#words/language.ts';
import { checkCalled } from '../questions/callback-checks.ts';
import { jobWords } from '../words/job.ts';
import { languageAt } from '../words/swap.ts';

export type Sheet = ReturnType<Desk['store']['currentSheet']>;

export const jobCalled = ({ number, name }: Pick<Sheet, 'number' | 'name'>, language: Language = 'english'): string =>
  jobWords[language].called(number, name);

export const missingJob = (name = '', language: Language = 'english'): string =>
  jobWords[language].missing(name.slice(0, 40));

/** The job an action is about, where none has to be named. */
export const namedJob: DeskOption = {
  id: 'name',
  brief: 'the job, by name or number; the one open here when left out',
  suggest: (desk, typed) =>
    desk.store
      .listSheets({ limit: 25, search: typed })
      .map((sheet) => ({ id: String(sheet.number), label: jobCalled(sheet, languageAt(desk)) })),
};

export const sheetMeant = ({ store, speaker }: Desk, name: string | undefined): Sheet | undefined =>
  name === undefined ? store.currentSheet(speaker) : store.findSheet(name);

/** What a fact is called on the page of the command that asks for it. */
export function briefOf({ commands }: Pick<Desk, 'commands'>, fact: string, language: Language = 'english'): string {
  const asked = commands
    .flatMap((command) => (command.kind === 'answer' ? command.takes : []))
    .find(({ id }) => id === fact);
  if (asked !== undefined) return worded(asked, language).brief;
  return /^heard(?:-\d+)?$/.test(fact) ? jobWords[language].understood : (checkCalled(fact, language) ?? fact);
}

/** What somebody said, as they said it. */
export const saidOf = (
  { how, typed }: { readonly how: string; readonly typed: string },
  language: Language = 'english',
): string => (how === 'unknown' ? jobWords[language].dontKnow : typed);

export const howWords = jobWords.english.how;
