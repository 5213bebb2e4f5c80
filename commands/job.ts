import type { Action, Desk, DeskCommand } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import type { Choice } from '#interview/question.ts';
import { causesOfYear } from './workings/job-causes.ts';

type Sheet = ReturnType<Desk['store']['currentSheet']>;

const nameOf = ({ number, name }: Sheet): string =>
  name === null ? `Job ${number} (no name yet)` : `Job ${number}, ${name}`;

const counted = (count: number, one: string, several = `${one}s`): string => `${count} ${count === 1 ? one : several}`;

const current = ({ store, speaker }: Desk): Sheet => store.currentSheet(speaker);

const plainly = (headline: string, more: Partial<Reply> = {}): Reply => ({ headline, findings: [], ...more });

const suggestions = ({ store }: Desk, typed: string): readonly Choice[] =>
  store.listSheets({ limit: 25, search: typed }).map((sheet) => ({ id: String(sheet.number), label: nameOf(sheet) }));

/** What a fact is called on the page of the command that asks for it. */
const briefOf = ({ commands }: Desk, fact: string): string =>
  commands.flatMap((command) => (command.kind === 'answer' ? command.takes : [])).find(({ id }) => id === fact)
    ?.brief ?? fact;

const open: Action = {
  name: 'open',
  summary: 'Open a job sheet by name or number, or start a clean one.',
  options: [{ id: 'name', brief: 'a name such as 14 Maple St, or the number of an earlier job', suggest: suggestions }],
  act(desk, { name = '' }) {
    const { store, speaker } = desk;
    const wanted = name.trim();
    if (wanted === '') return plainly(`${nameOf(store.freshSheet(speaker))} is open here. Nothing is on it yet.`);
    const found = store.findSheet(wanted);
    if (!found && /^#?\s*\d+$/.test(wanted)) return plainly(missingJob(wanted));
    if (!found) {
      return plainly(`${nameOf(store.openSheet({ ...speaker, name: wanted }))} is open here. Nothing is on it yet.`);
    }
    if (found.state === 'closed') store.reopenSheet(found.number, speaker);
    const sheet = store.useSheet({ ...speaker, sheet: found.number });
    const known = store.newestFacts(sheet.number).size;
    return plainly(`${nameOf(sheet)} is open here again, with ${counted(known, 'answer')} on it.`);
  },
};

const missingJob = (name: string): string => `There is no job “${name.slice(0, 40)}” here. /job list shows them.`;

/** What somebody said, as they said it. */
const saidIn = ({ how, typed }: { readonly how: string; readonly typed: string }): string =>
  how === 'unknown' ? 'don’t know' : typed;

const howWords = {
  measured: 'measured',
  label: 'read off the label',
  estimated: 'estimated',
  told: 'as told',
  unknown: 'not known',
} as const;

const show: Action = {
  name: 'show',
  summary: 'Show what is on the job sheet, who said it and how it is known.',
  options: [{ id: 'name', brief: 'the job, by name or number; the one open here when left out', suggest: suggestions }],
  act(desk, { name }) {
    const sheet = name === undefined ? current(desk) : desk.store.findSheet(name);
    if (!sheet) return plainly(missingJob(name ?? ''));
    const facts = [...desk.store.newestFacts(sheet.number).values()];
    if (facts.length === 0) return plainly(`${nameOf(sheet)}: nothing is on it yet. Try /size or /duct.`);
    return plainly(`${nameOf(sheet)}: ${counted(facts.length, 'answer')}.`, {
      tables: [
        {
          title: 'On the sheet',
          columns: ['what', 'answer', 'how known', 'by'],
          rows: facts.map((fact) => [briefOf(desk, fact.fact), saidIn(fact), howWords[fact.how], fact.who]),
        },
      ],
    });
  },
};

const list: Action = {
  name: 'list',
  summary: 'List the jobs of this crew, newest first.',
  options: [
    {
      id: 'state',
      brief: 'open, closed or all',
      choices: [
        { id: 'open', label: 'open' },
        { id: 'closed', label: 'closed' },
        { id: 'all', label: 'all' },
      ],
    },
    { id: 'search', brief: 'part of the name' },
  ],
  act({ store }, { state = 'open', search }) {
    const wanted = state === 'open' || state === 'closed' ? state : undefined;
    const sheets = store.listSheets({ limit: mostListed, state: wanted, search });
    const kind = wanted === undefined ? '' : `${wanted} `;
    if (sheets.length === 0) {
      return plainly(
        search ? `No ${kind}job has that in its name.` : `There are no ${kind}jobs. /job open starts one.`,
      );
    }
    const newest =
      sheets.length === mostListed ? `The newest ${mostListed} ${kind}jobs` : counted(sheets.length, `${kind}job`);
    return plainly(`${newest}, newest first.`, {
      tables: [
        {
          title: 'Jobs',
          columns: ['no.', 'name', 'state', 'opened', 'answers'],
          rows: sheets.map((sheet) => [
            String(sheet.number),
            sheet.name ?? '(no name)',
            sheet.state,
            sheet.openedAt.slice(0, 10),
            String(store.newestFacts(sheet.number).size),
          ]),
        },
      ],
    });
  },
};

const mostListed = 25;

const undo: Action = {
  name: 'undo',
  summary: 'Take back the newest answer on the sheet; the one before it counts again.',
  options: [],
  act(desk) {
    const sheet = current(desk);
    const undone = desk.store.retractNewest(sheet.number, desk.speaker);
    if (!undone) return plainly(`${nameOf(sheet)}: there is nothing to take back.`);
    const before = desk.store.newestFacts(sheet.number).get(undone.fact);
    const now = before ? `It is ${saidIn(before)} again.` : 'It is unanswered again.';
    return plainly(`Took back: ${briefOf(desk, undone.fact)} (${saidIn(undone)}). ${now}`);
  },
};

const close: Action = {
  name: 'close',
  summary: 'Close the job open here. The next question starts on a clean sheet.',
  options: [],
  act(desk) {
    const sheet = desk.store.closeSheet(current(desk).number, desk.speaker);
    return plainly(
      `${nameOf(sheet)} is closed. The next question here starts on a clean sheet; /job open ${sheet.number} brings this one back.`,
    );
  },
};

const callbackCauses: Action = {
  name: 'causes',
  summary: 'What this crew’s callbacks turned out to be in a year.',
  options: [{ id: 'year', brief: 'the year, such as 2026', required: true }],
  act(desk, { year = '' }) {
    const wanted = year.trim();
    if (!/^\d{4}$/.test(wanted)) return plainly(`“${wanted.slice(0, 20)}” is not a year. Give one such as 2026.`);
    return causesOfYear(desk, wanted);
  },
};

const exported: Action = {
  name: 'export',
  summary: 'Everything on a job sheet as a file, who said it and when, what was taken back included.',
  options: [{ id: 'name', brief: 'the job, by name or number; the one open here when left out', suggest: suggestions }],
  act(desk, { name }) {
    const sheet = name === undefined ? current(desk) : desk.store.findSheet(name);
    if (!sheet) return plainly(missingJob(name ?? ''));
    const text = JSON.stringify(desk.store.sheetAsJson(sheet.number), null, 1);
    return plainly(`${nameOf(sheet)}: everything on it is in the file.`, {
      files: [{ name: `job-${sheet.number}.json`, type: 'application/json', text }],
    });
  },
};

const erase: Action = {
  name: 'erase',
  summary: 'Erase a job for good. Nothing of it can be brought back.',
  managersOnly: true,
  options: [
    { id: 'name', brief: 'the job to erase, by name or number', required: true, suggest: suggestions },
    { id: 'sure', brief: 'type the number of the job again', required: true },
  ],
  act({ store }, { name = '', sure = '' }) {
    const sheet = store.findSheet(name);
    if (!sheet) return plainly(missingJob(name));
    if (sure.replace(/^#/, '').trim() !== String(sheet.number)) {
      return plainly(`Nothing was erased. To erase ${nameOf(sheet)} for good, give sure=${sheet.number}.`);
    }
    store.eraseSheet(sheet.number);
    return plainly(`Job ${sheet.number} is erased. Backups made before today still hold it until they are deleted.`);
  },
};

const job: DeskCommand = {
  kind: 'desk',
  name: 'job',
  summary: 'The job sheet: open, show, list, undo, close, export, erase; and what callbacks were.',
  example: 'open 14 Maple St',
  actions: [open, show, list, undo, close, callbackCauses, exported, erase],
};

export default job;
