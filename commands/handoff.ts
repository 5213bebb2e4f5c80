import type { Action, DeskCommand } from '#chat/command.ts';
import { languageMeant } from '#words/language.ts';
import { handoffWords } from './words/handoff.ts';
import { languageAt } from './words/swap.ts';
import { handOffOf } from './workings/handoff-facts.ts';
import { occupantPaper } from './workings/handoff-occupant.ts';
import { recordPaper } from './workings/handoff-record.ts';
import { remark, saying } from './workings/plain-replies.ts';
import { refusedReply } from './workings/swap-entering.ts';

const make: Action = {
  name: '',
  summary: 'Make the page for the occupant and the job record, as PDF.',
  options: [
    { id: 'job', brief: 'the job, by name or number; the one open here when left out' },
    {
      id: 'language',
      brief: 'of the occupant’s page; yours when left out',
      choices: [
        { id: 'english', label: 'English' },
        { id: 'spanish', label: 'Español' },
      ],
    },
  ],
  act(desk, { job, language }) {
    const own = languageAt(desk);
    const words = handoffWords[own];
    const sheet = job === undefined ? desk.store.currentSheet(desk.speaker) : desk.store.findSheet(job);
    if (!sheet) return refusedReply(words.noSuchJob);
    const off = handOffOf(desk, sheet.number);
    const lived = language === undefined ? own : languageMeant(language);
    if (lived === undefined) return refusedReply(words.whichLanguage);
    const open = handOffOf(desk, sheet.number, own).walks.filter(({ state }) => state.closed === null);
    const unfinished = off.walks.length === 0 || open.length > 0;
    return saying(words.papers(sheet.name ?? words.job(sheet.number)), {
      language: own,
      findings: [
        ...(off.walks.length === 0 ? [remark('no-list', 'caution', words.noList)] : []),
        ...open.map(({ checklist: { name }, state: { progress } }) =>
          remark('not-closed', 'caution', words.notClosed(name, progress.done, progress.of)),
        ),
        ...(unfinished ? [] : [remark('read-first', 'advice', words.readFirst)]),
        ...(words.recordIn === '' ? [] : [remark('record-language', 'advice', words.recordIn)]),
      ],
      papers: [
        { name: `occupant-job-${sheet.number}.pdf`, paper: occupantPaper(desk, handOffOf(desk, sheet.number, lived)) },
        { name: `record-job-${sheet.number}.pdf`, paper: recordPaper(desk, off) },
      ],
    });
  },
};

const handoff: DeskCommand = {
  kind: 'desk',
  name: 'handoff',
  summary: 'The papers of a job: one page for the occupant, and the record for the file.',
  example: 'job=1',
  actions: [make],
};

export default handoff;
