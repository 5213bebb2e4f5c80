import type { Action, Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { jobWords } from '../words/job.ts';
import { languageAt } from '../words/swap.ts';
import { jobCsv } from './job-csv.ts';
import { jobCalled, missingJob, namedJob, sheetMeant } from './job-sheets.ts';
import { remark, saying } from './plain-replies.ts';
import { refusedReply } from './swap-entering.ts';

/** What /job import takes at most, in bytes. */
const mostTaken = 1_000_000;

export const exportJob: Action = {
  name: 'export',
  summary: 'Everything on a job sheet as a file, who said it and when, what was taken back included.',
  options: [
    namedJob,
    {
      id: 'as',
      brief: 'json, which /job import reads (the usual), or csv for a spreadsheet',
      choices: [
        { id: 'json', label: 'json' },
        { id: 'csv', label: 'csv' },
      ],
    },
  ],
  act(desk, { name, as = 'json' }) {
    const sheet = sheetMeant(desk, name);
    const language = languageAt(desk);
    if (!sheet) return { ...refusedReply(missingJob(name, language)), language };
    if (as.toLowerCase() === 'csv') {
      return saying(jobWords[language].exportedCsv(jobCalled(sheet, language)), {
        language,
        files: [{ name: `job-${sheet.number}.csv`, type: 'text/csv', text: jobCsv(desk, sheet.number) }],
      });
    }
    const text = JSON.stringify(desk.store.exportJob(sheet.number), null, 1);
    return saying(jobWords[language].exported(jobCalled(sheet, language)), {
      ...(Buffer.byteLength(text) > mostTaken ? {} : { language }),
      findings:
        Buffer.byteLength(text) > mostTaken
          ? [remark('too-large', 'caution', 'It is larger than 1 MB, and /job import takes no more than that.')]
          : [],
      files: [{ name: `job-${sheet.number}.json`, type: 'application/json', text }],
    });
  },
};

export const importJob: Action = {
  name: 'import',
  summary: 'Make a job of a file that /job export wrote. No signature in it counts here.',
  options: [
    { id: 'file', brief: 'the JSON file that /job export wrote', file: true },
    { id: 'json', brief: 'the same as text, when it is short', longest: 6000 },
  ],
  act(desk, { file, json }) {
    const text = file ?? json;
    if (text === undefined || text.trim() === '') return refusedReply('Give the JSON file that /job export wrote.');
    const read = desk.store.importJob(text, desk.speaker);
    if ('rejected' in read)
      return refusedReply(`Nothing was brought in. ${read.rejected} Use the file as /job export wrote it.`);
    return broughtIn(desk, read.value.number);
  },
};

function broughtIn({ store }: Desk, number: number): Reply {
  const sheet = store.findSheet(number);
  const walked = store.importedWalkEvents(number).length > 0;
  const alike = sheet?.name
    ? store
        .listSheets({ limit: 3, search: sheet.name })
        .find((each) => each.number !== number && each.name === sheet.name)
    : undefined;
  const known = store.newestFacts(number).size;
  return saying(
    `Brought in as ${sheet ? jobCalled(sheet) : `job ${number}`}, with ${known === 1 ? '1 answer' : `${known} answers`}. /job open ${number} opens it.`,
    {
      findings: [
        ...(walked
          ? [
              remark(
                'not-signed-here',
                'caution',
                'Its list was walked elsewhere and is for reading: no signature, proof of being dead or reading in it counts here. /swap start makes a new list, and every hold is signed anew.',
              ),
            ]
          : []),
        remark(
          'said-elsewhere',
          'advice',
          'Its answers are used, and marked as imported. One that takes a precaution off the list counts once somebody of this crew says it too.',
        ),
        ...(alike
          ? [
              remark(
                'same-name',
                'advice',
                `Job ${alike.number} has the same name. Use the numbers to tell them apart.`,
              ),
            ]
          : []),
        ...(store.expiredSheets().includes(number)
          ? [
              remark(
                'about-to-go',
                'caution',
                'It was closed longer ago than this crew keeps closed jobs, so it will be erased with the next tidying. /job open keeps it.',
              ),
            ]
          : []),
      ],
    },
  );
}
