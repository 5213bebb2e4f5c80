/** `npm run bench`: how fast and how large it is, beside what is aimed at. Add a section to the list to have it measured. */
import { cpus, loadavg } from 'node:os';
import { callbackQuestions } from './callback.ts';
import { charts } from './charts.ts';
import { ductAnswers } from './duct-answers.ts';
import { interactions } from './interactions.ts';
import { wholePlan } from './plan.ts';
import { type Section, table } from './rows.ts';
import { startTime } from './start-time.ts';

const sections: readonly Section[] = [ductAnswers, wholePlan, callbackQuestions, charts, startTime, interactions];

const say = (text: string) => process.stdout.write(`${text}\n`);
const load = () =>
  loadavg()
    .map((each) => each.toFixed(1))
    .join(' ');

const [only = ''] = process.argv.slice(2);
say(`Node ${process.version}, ${cpus().length} processors, load before ${load()}`);
for (const { title, measure } of sections) {
  if (!title.toLowerCase().includes(only.toLowerCase())) continue;
  const rows = await measure();
  say(`\n${title}\n${table(rows)}`);
}
say(`\nLoad after ${load()}`);
