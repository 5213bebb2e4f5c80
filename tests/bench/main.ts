/**
 * `npm run bench`: how fast and how large it is, beside what is aimed at. Add a section to the list to have it measured.
 *
 * With words, only the sections whose title has them; `--long` measures those too that take minutes; `--keep` writes what was
 * measured into DEVELOPERS.md.
 */
import { cpus, loadavg } from 'node:os';
import { plainWords } from './ask.ts';
import { callbackQuestions } from './callback.ts';
import { charts } from './charts.ts';
import { ductAnswers } from './duct-answers.ts';
import { growth } from './growth.ts';
import { interactions } from './interactions.ts';
import { keepFigures, type Measured } from './kept-figures.ts';
import { heaviestLoad, sustainedLoad } from './load.ts';
import { lookUps } from './lookup.ts';
import { wholePlan } from './plan.ts';
import { type Section, table } from './rows.ts';
import { soak } from './soak.ts';
import { startTime } from './start-time.ts';

const sections: readonly Section[] = [
  ductAnswers,
  wholePlan,
  callbackQuestions,
  charts,
  lookUps,
  plainWords,
  growth,
  startTime,
  interactions,
  sustainedLoad,
  heaviestLoad,
  soak,
];

const say = (text: string) => process.stdout.write(`${text}\n`);
const load = () =>
  loadavg()
    .map((each) => each.toFixed(1))
    .join(' ');

const words = process.argv.slice(2);
const only = words
  .filter((word) => !word.startsWith('--'))
  .join(' ')
  .toLowerCase();
const wanted = ({ title, long }: Section): boolean =>
  only === '' ? long === undefined || words.includes('--long') : title.toLowerCase().includes(only);

const machine = `Node ${process.version}, ${cpus().length} processors`;
say(`${machine}, load before ${load()}`);
const measured: Measured[] = [];
for (const section of sections.filter(wanted)) {
  const rows = await section.measure();
  measured.push({ title: section.title, rows });
  say(`\n${section.title}\n${table(rows)}`);
}
say(`\nLoad after ${load()}`);
if (words.includes('--keep')) keepFigures(`${machine}.`, measured);
