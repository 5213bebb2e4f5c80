import type { Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { callbackTexts } from '#knowledge/callback-texts.ts';
import { type CauseId, causes } from '#knowledge/causes.ts';
import { jobWords } from '../words/job.ts';
import { languageAt } from '../words/swap.ts';
import { isInvented } from './demo-house.ts';
import { saying } from './plain-replies.ts';

/** More jobs than this are not looked through for one answer. */
const mostJobs = 2000;
/** More bars than this on a phone are not read; the rest stand in the table. */
const mostBars = 8;

const isCause = (id: unknown): id is CauseId => typeof id === 'string' && Object.hasOwn(causes, id);

/** What the crew's callbacks turned out to be in one year, most frequent first, as a table and a chart. */
export function causesOfYear(desk: Desk, year: string): Reply {
  const { store } = desk;
  const language = languageAt(desk);
  const texts = jobWords[language].causes;
  const named = callbackTexts[language].causes;
  const found = new Map<CauseId, string[]>();
  for (const sheet of store.listSheets({ limit: mostJobs })) {
    const fact = store.newestFacts(sheet.number).get('confirmed-cause');
    if (isInvented(sheet) || !fact?.at.startsWith(year) || !isCause(fact.value)) continue;
    const name = sheet.name ?? texts.job(sheet.number);
    found.set(fact.value, [...(found.get(fact.value) ?? []), name]);
  }
  const rows = [...found].sort(([, one], [, other]) => other.length - one.length);
  const total = rows.reduce((sum, [, jobs]) => sum + jobs.length, 0);
  if (total === 0) {
    return saying(jobWords[language].noCause(year), { language });
  }
  const bars = rows.slice(0, mostBars);
  const most = Math.max(...rows.map(([, jobs]) => jobs.length));
  const headline = texts.headline(total, year);
  const left = rows.length - bars.length;
  return saying(headline, {
    language,
    tables: [
      {
        title: texts.title(year),
        columns: texts.columns,
        rows: rows.map(([cause, jobs]) => [
          named[cause].name,
          String(jobs.length),
          `${jobs.slice(0, 3).join(', ')}${jobs.length > 3 ? texts.andMore : ''}`,
        ]),
      },
    ],
    chart: {
      title: texts.chart(year, left > 0 ? bars.length : undefined),
      x: { label: texts.x, min: 0, max: most },
      y: { label: texts.y, min: 0, max: bars.length },
      bars: bars.map(([cause, { length }]) => ({
        label: named[cause].name,
        amount: length,
        shown: texts.of(length, total),
      })),
      lines: [],
      bands: [],
      marks: [],
      levels: [],
      alt: `${headline} ${bars.map(([cause, { length }]) => `${named[cause].name}: ${length}`).join('; ')}.`,
    },
  });
}
