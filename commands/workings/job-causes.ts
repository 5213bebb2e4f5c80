import type { Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { type CauseId, causes } from '#knowledge/causes.ts';
import { isInvented } from './demo-house.ts';
import { counted, saying } from './plain-replies.ts';

/** More jobs than this are not looked through for one answer. */
const mostJobs = 2000;
/** More bars than this on a phone are not read; the rest stand in the table. */
const mostBars = 8;

const isCause = (id: unknown): id is CauseId => typeof id === 'string' && Object.hasOwn(causes, id);

/** What the crew's callbacks turned out to be in one year, most frequent first, as a table and a chart. */
export function causesOfYear({ store }: Desk, year: string): Reply {
  const found = new Map<CauseId, string[]>();
  for (const sheet of store.listSheets({ limit: mostJobs })) {
    const fact = store.newestFacts(sheet.number).get('confirmed-cause');
    if (isInvented(sheet) || !fact?.at.startsWith(year) || !isCause(fact.value)) continue;
    const name = sheet.name ?? `job ${sheet.number}`;
    found.set(fact.value, [...(found.get(fact.value) ?? []), name]);
  }
  const rows = [...found].sort(([, one], [, other]) => other.length - one.length);
  const total = rows.reduce((sum, [, jobs]) => sum + jobs.length, 0);
  if (total === 0) {
    return saying(`No callback of ${year} has a confirmed cause yet. Record one with /callback confirmed-cause.`);
  }
  const bars = rows.slice(0, mostBars);
  const most = Math.max(...rows.map(([, jobs]) => jobs.length));
  const headline = `${counted(total, 'callback', 'callbacks')} of ${year} with a confirmed cause.`;
  const left = rows.length - bars.length;
  return saying(headline, {
    tables: [
      {
        title: `What the callbacks of ${year} were`,
        columns: ['cause', 'how many', 'jobs'],
        rows: rows.map(([cause, jobs]) => [
          causes[cause].name,
          String(jobs.length),
          `${jobs.slice(0, 3).join(', ')}${jobs.length > 3 ? ' and more' : ''}`,
        ]),
      },
    ],
    chart: {
      title: `Causes of the callbacks of ${year}${left > 0 ? `, the ${bars.length} most frequent` : ''}`,
      x: { label: 'callbacks with this cause', min: 0, max: most },
      y: { label: 'cause', min: 0, max: bars.length },
      bars: bars.map(([cause, { length }]) => ({
        label: causes[cause].name,
        amount: length,
        shown: `${length} of ${total}`,
      })),
      lines: [],
      bands: [],
      marks: [],
      levels: [],
      alt: `${headline} ${bars.map(([cause, { length }]) => `${causes[cause].name}: ${length}`).join('; ')}.`,
    },
  });
}
