import type { Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { type CauseId, causes } from '#knowledge/causes.ts';
import { counted, saying } from './plain-replies.ts';

/** More jobs than this are not looked through for one answer. */
const mostJobs = 2000;
/** A bar of this many marks is the most frequent cause. */
const fullBar = 20;

const isCause = (id: unknown): id is CauseId => typeof id === 'string' && Object.hasOwn(causes, id);

/** What the crew's callbacks turned out to be in one year, most frequent first, as a table with bars. */
export function causesOfYear({ store }: Desk, year: string): Reply {
  const found = new Map<CauseId, string[]>();
  for (const sheet of store.listSheets({ limit: mostJobs })) {
    const fact = store.newestFacts(sheet.number).get('confirmed-cause');
    if (!fact?.at.startsWith(year) || !isCause(fact.value)) continue;
    const name = sheet.name ?? `job ${sheet.number}`;
    found.set(fact.value, [...(found.get(fact.value) ?? []), name]);
  }
  const rows = [...found].sort(([, one], [, other]) => other.length - one.length);
  const total = rows.reduce((sum, [, jobs]) => sum + jobs.length, 0);
  if (total === 0) {
    return saying(`No callback of ${year} has a confirmed cause yet. Record one with /callback confirmed-cause.`);
  }
  const most = rows[0]?.[1].length ?? 1;
  return saying(`${counted(total, 'callback', 'callbacks')} of ${year} with a confirmed cause.`, {
    tables: [
      {
        title: `What the callbacks of ${year} were`,
        columns: ['cause', 'how many', '', 'jobs'],
        rows: rows.map(([cause, jobs]) => [
          causes[cause].name,
          String(jobs.length),
          '█'.repeat(Math.max(1, Math.round((fullBar * jobs.length) / most))),
          `${jobs.slice(0, 3).join(', ')}${jobs.length > 3 ? ' and more' : ''}`,
        ]),
      },
    ],
  });
}
