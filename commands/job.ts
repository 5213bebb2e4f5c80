import type { Action, Desk, DeskCommand } from '#chat/command.ts';
import { isInvented } from './workings/demo-house.ts';
import { calledAlike, lastUsed, whichMeant } from './workings/job-alike.ts';
import { causesOfYear } from './workings/job-causes.ts';
import {
  briefOf,
  howWords,
  jobCalled,
  missingJob,
  namedJob,
  type Sheet,
  saidOf,
  sheetMeant,
} from './workings/job-sheets.ts';
import { exportJob, importJob } from './workings/job-transfer.ts';
import { saying } from './workings/plain-replies.ts';

const counted = (count: number, one: string, several = `${one}s`): string => `${count} ${count === 1 ? one : several}`;

const current = ({ store, speaker }: Desk): Sheet => store.currentSheet(speaker);

const open: Action = {
  name: 'open',
  summary: 'Open a job sheet by name or number, or start a clean one.',
  options: [
    { ...namedJob, brief: 'a name such as 14 Maple St, or the number of an earlier job' },
    {
      id: 'new',
      brief: 'yes: a new job, though another is called much the same',
      choices: [{ id: 'yes', label: 'yes' }],
    },
  ],
  act(desk, { name = '', new: isNew }) {
    const { store, speaker } = desk;
    const wanted = name.trim();
    if (wanted === '') return saying(`${jobCalled(store.freshSheet(speaker))} is open here. Nothing is on it yet.`);
    const found = store.findSheet(wanted);
    if (!found && /^#?\s*\d+$/.test(wanted)) return saying(missingJob(wanted));
    const alike = found || isNew !== undefined ? [] : calledAlike(desk, wanted);
    if (alike.length > 0) return whichMeant(alike);
    if (!found) {
      return saying(`${jobCalled(store.openSheet({ ...speaker, name: wanted }))} is open here. Nothing is on it yet.`);
    }
    if (found.state === 'closed') store.reopenSheet(found.number, speaker);
    const sheet = store.useSheet({ ...speaker, sheet: found.number });
    const known = store.newestFacts(sheet.number).size;
    return saying(`${jobCalled(sheet)} is open here again, with ${counted(known, 'answer')} on it.`);
  },
};

const show: Action = {
  name: 'show',
  summary: 'Show what is on the job sheet, who said it and how it is known.',
  options: [namedJob],
  act(desk, { name }) {
    const sheet = sheetMeant(desk, name);
    if (!sheet) return saying(missingJob(name));
    const facts = [...desk.store.newestFacts(sheet.number).values()];
    if (facts.length === 0) return saying(`${jobCalled(sheet)}: nothing is on it yet. Try /size or /duct.`);
    return saying(`${jobCalled(sheet)}: ${counted(facts.length, 'answer')}.`, {
      tables: [
        {
          title: 'On the sheet',
          asTyped: true,
          columns: ['what', 'answer', 'how known', 'by'],
          rows: facts.map((fact) => [briefOf(desk, fact.fact), saidOf(fact), howWords[fact.how], fact.who]),
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
  act(desk, { state = 'open', search }) {
    const { store } = desk;
    const wanted = state === 'open' || state === 'closed' ? state : undefined;
    const sheets = store.listSheets({ limit: mostListed, state: wanted, search });
    const kind = wanted === undefined ? '' : `${wanted} `;
    if (sheets.length === 0) {
      return saying(search ? `No ${kind}job has that in its name.` : `There are no ${kind}jobs. /job open starts one.`);
    }
    const own = sheets.filter((sheet) => !isInvented(sheet)).length;
    const newest = sheets.length === mostListed ? `The newest ${mostListed} ${kind}jobs` : counted(own, `${kind}job`);
    const besides = own < sheets.length ? ', and the demo house, which counts nowhere' : '';
    return saying(`${newest}, newest first${besides}.`, {
      tables: [
        {
          title: 'Jobs',
          columns: ['no.', 'name', 'state', 'opened', 'last used', 'answers'],
          rows: sheets.map((sheet) => [
            String(sheet.number),
            sheet.name ?? '(no name)',
            sheet.state,
            sheet.openedAt.slice(0, 10),
            lastUsed(desk, sheet).slice(0, 10),
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
    if (!undone) return saying(`${jobCalled(sheet)}: there is nothing to take back.`);
    const before = desk.store.newestFacts(sheet.number).get(undone.fact);
    const now = before ? `It is ${saidOf(before)} again.` : 'It is unanswered again.';
    return saying(`Took back: ${briefOf(desk, undone.fact)} (${saidOf(undone)}). ${now}`);
  },
};

const close: Action = {
  name: 'close',
  summary: 'Close the job open here. The next question starts on a clean sheet.',
  options: [],
  act(desk) {
    const sheet = desk.store.closeSheet(current(desk).number, desk.speaker);
    return saying(
      `${jobCalled(sheet)} is closed. The next question here starts on a clean sheet; /job open ${sheet.number} brings this one back.`,
    );
  },
};

const callbackCauses: Action = {
  name: 'causes',
  summary: 'What this crew’s callbacks turned out to be in a year.',
  options: [{ id: 'year', brief: 'the year, such as 2026', required: true }],
  act(desk, { year = '' }) {
    const wanted = year.trim();
    if (!/^\d{4}$/.test(wanted)) return saying(`“${wanted.slice(0, 20)}” is not a year. Give one such as 2026.`);
    return causesOfYear(desk, wanted);
  },
};

const erase: Action = {
  name: 'erase',
  summary: 'Erase a job for good. Nothing of it can be brought back.',
  managersOnly: true,
  options: [
    { ...namedJob, brief: 'the job to erase, by name or number', required: true },
    { id: 'sure', brief: 'type the number of the job again', required: true },
  ],
  act({ store }, { name = '', sure = '' }) {
    const sheet = store.findSheet(name);
    if (!sheet) return saying(missingJob(name));
    if (sure.replace(/^#/, '').trim() !== String(sheet.number)) {
      return saying(`Nothing was erased. To erase ${jobCalled(sheet)} for good, give sure=${sheet.number}.`);
    }
    store.eraseSheet(sheet.number);
    return saying(`Job ${sheet.number} is erased. Backups made before today still hold it until they are deleted.`);
  },
};

const job: DeskCommand = {
  kind: 'desk',
  name: 'job',
  summary: 'The job sheet: open, show, list, undo, close, export, import, erase; and what callbacks were.',
  example: 'open 14 Maple St',
  actions: [open, show, list, undo, close, callbackCauses, exportJob, importJob, erase],
};

export default job;
