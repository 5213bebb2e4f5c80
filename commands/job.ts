import type { Action, Desk, DeskCommand } from '#chat/command.ts';
import { jobWords } from './words/job.ts';
import { languageAt } from './words/swap.ts';
import { isInvented } from './workings/demo-house.ts';
import { calledAlike, whichMeant } from './workings/job-alike.ts';
import { causesOfYear } from './workings/job-causes.ts';
import { briefOf, jobCalled, missingJob, namedJob, type Sheet, saidOf, sheetMeant } from './workings/job-sheets.ts';
import { exportJob, importJob } from './workings/job-transfer.ts';
import { saying } from './workings/plain-replies.ts';

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
    const language = languageAt(desk);
    const texts = jobWords[language];
    const wanted = name.trim();
    if (wanted === '') return saying(texts.openClean(jobCalled(store.freshSheet(speaker), language)), { language });
    const found = store.findSheet(wanted);
    if (!found && /^#?\s*\d+$/.test(wanted)) return saying(missingJob(wanted, language), { language });
    const alike = found || isNew !== undefined ? [] : calledAlike(desk, wanted);
    if (alike.length > 0) return whichMeant(alike, language);
    if (!found) {
      const fresh = store.openSheet({ ...speaker, name: wanted });
      return saying(texts.openClean(jobCalled(fresh, language)), { language });
    }
    if (found.state === 'closed') store.reopenSheet(found.number, speaker);
    const sheet = store.useSheet({ ...speaker, sheet: found.number });
    const known = store.newestFacts(sheet.number).size;
    return saying(texts.openAgain(jobCalled(sheet, language), known), { language });
  },
};

const show: Action = {
  name: 'show',
  summary: 'Show what is on the job sheet, who said it and how it is known.',
  options: [namedJob],
  act(desk, { name }) {
    const language = languageAt(desk);
    const texts = jobWords[language];
    const sheet = sheetMeant(desk, name);
    if (!sheet) return saying(missingJob(name, language), { language });
    const called = jobCalled(sheet, language);
    const facts = [...desk.store.newestFacts(sheet.number).values()];
    if (facts.length === 0) return saying(texts.nothingYet(called), { language });
    return saying(texts.answers(called, facts.length), {
      language,
      tables: [
        {
          ...texts.onTheSheet,
          asTyped: true,
          rows: facts.map((fact) => [
            briefOf(desk, fact.fact, language),
            saidOf(fact, language),
            texts.how[fact.how],
            fact.who,
          ]),
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
    const language = languageAt(desk);
    const texts = jobWords[language];
    const wanted = state === 'open' || state === 'closed' ? state : undefined;
    const sheets = store.listSheets({ limit: mostListed, state: wanted, search });
    if (sheets.length === 0) return saying(search ? texts.noneNamedSo(wanted) : texts.none(wanted), { language });
    const own = sheets.filter((sheet) => !isInvented(sheet)).length;
    const all = sheets.length < mostListed;
    return saying(texts.listed(all ? own : mostListed, wanted, all, own < sheets.length), {
      language,
      tables: [
        {
          title: texts.jobs.title,
          columns: texts.jobs.columns,
          rows: sheets.map((sheet) => [
            String(sheet.number),
            sheet.name ?? texts.jobs.noName,
            texts.jobs.states[sheet.state],
            sheet.openedAt.slice(0, 10),
            store.lastUse(sheet.number).slice(0, 10),
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
    const language = languageAt(desk);
    const texts = jobWords[language];
    const sheet = current(desk);
    const undone = desk.store.retractNewest(sheet.number, desk.speaker);
    if (!undone) return saying(texts.nothingToUndo(jobCalled(sheet, language)), { language });
    const before = desk.store.newestFacts(sheet.number).get(undone.fact);
    const now = before && saidOf(before, language);
    return saying(texts.tookBack(briefOf(desk, undone.fact, language), saidOf(undone, language), now), { language });
  },
};

const close: Action = {
  name: 'close',
  summary: 'Close the job open here. The next question starts on a clean sheet.',
  options: [],
  act(desk) {
    const sheet = desk.store.closeSheet(current(desk).number, desk.speaker);
    const language = languageAt(desk);
    return saying(jobWords[language].closed(jobCalled(sheet, language), sheet.number), { language });
  },
};

const callbackCauses: Action = {
  name: 'causes',
  summary: 'What this crew’s callbacks turned out to be in a year.',
  options: [{ id: 'year', brief: 'the year, such as 2026', required: true }],
  act(desk, { year = '' }) {
    const wanted = year.trim();
    const language = languageAt(desk);
    if (!/^\d{4}$/.test(wanted)) return saying(jobWords[language].noYear(wanted.slice(0, 20)), { language });
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
  act(desk, { name = '', sure = '' }) {
    const { store } = desk;
    const language = languageAt(desk);
    const texts = jobWords[language];
    const sheet = store.findSheet(name);
    if (!sheet) return saying(missingJob(name, language), { language });
    if (sure.replace(/^#/, '').trim() !== String(sheet.number)) {
      return saying(texts.notErased(jobCalled(sheet, language), sheet.number), { language });
    }
    store.eraseSheet(sheet.number);
    return saying(texts.erased(sheet.number), { language });
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
