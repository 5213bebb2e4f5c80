import type { Desk } from '#chat/command.ts';
import type { Finding, Table } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import { nextSteps } from '#walkthrough/next-steps.ts';
import { eitherOf, isLead } from '#walkthrough/signing.ts';
import { languageAt } from '../words/swap.ts';
import { statusWords } from '../words/swap-status.ts';
import { isInvented } from './demo-house.ts';
import { remark } from './plain-replies.ts';
import { factText, whoClears } from './swap-facts.ts';
import { progressChart } from './swap-progress.ts';
import { listsOf, type OpenWalk, toldOf, type Walker, walkOn, zoneOf } from './swap-walk.ts';

/** "[#####---------------] 18 of 71" */
function bar(walk: OpenWalk): string {
  const { done, of, nextHold } = walk.state.progress;
  const full = of === 0 ? 20 : Math.floor((20 * done) / of);
  return `[${'#'.repeat(full)}${'-'.repeat(20 - full)}] ${toldOf(walk).progress(done, of, nextHold?.title)}`;
}

export const spentText = (milliseconds: number): string => {
  const minutes = Math.round(milliseconds / 60_000);
  return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
};

/** Where one list stands, for anybody of the crew. */
export function statusReply(desk: Desk, walk: OpenWalk, walker: Walker): Reply {
  const { state } = walk;
  const told = statusWords[walk.checklist.language];
  const { spent, people, stops, outOfRange } = state;
  const waited = nextSteps(state, walker).others.map(({ listed, waitsFor }) => [listed.title, waitsFor]);
  const head = state.closed ? told.closedBy(state.closed.name) : state.paused ? told.pausedBy(state.paused.name) : '';
  return {
    headline: `${head}${bar(walk)}`,
    findings: [
      ...stops.map(({ listed, says }) => remark('stopped', 'stop', `${listed.title}: ${says}`)),
      ...outOfRange.map(({ listed, says, passed }) =>
        remark(
          'out-of-range',
          passed ? 'advice' : 'caution',
          `${listed.title}: ${says}${passed ? ` ${told.passed}` : ''}`,
        ),
      ),
      // A closed list has its power back on purpose.
      ...(state.closed ? [] : proofFindings(walk)),
      ...openNotes(walk),
      ...state.reported.map(({ fact, value, name }) =>
        remark('reported', 'advice', told.reported(name, factText(walk, fact, value), whoClears(walk, fact))),
      ),
    ],
    tables: [
      {
        title: told.title,
        columns: ['', ''],
        rows: [
          [told.onTheJob, people.map(({ name }) => name).join(', ') || told.nobody],
          [told.timeSpent, told.spent(spentText(spent.working), spentText(spent.away))],
        ],
      },
      ...tableOf(
        walk,
        told.holds,
        state.holds.map(({ listed, waitsFor, reached }) => [
          listed.title,
          eitherOf(waitsFor, walk.checklist),
          reached ? told.canBeSigned : told.notReached,
        ]),
      ),
      ...tableOf(walk, told.others, waited),
      ...tableOf(walk, told.last, doneLast(desk, walk)),
      ...(isLead(walker.standing) ? tableOf(walk, told.ofAllJobs, holdsOfAll(desk)) : []),
    ],
    chart: progressChart(walk),
  };
}

const mostRows = 12;

function tableOf(
  walk: OpenWalk,
  { title, columns }: Omit<Table, 'rows'>,
  rows: readonly (readonly string[])[],
): readonly Table[] {
  if (rows.length === 0) return [];
  const more = rows.length - mostRows;
  const shown =
    more > 0 ? [...rows.slice(0, mostRows), [toldOf(walk).andMore(more), ...columns.slice(1).map(() => '')]] : rows;
  return [{ title, columns, rows: shown }];
}

/** What is known of each opened box being dead. */
const proofFindings = ({ state, checklist }: OpenWalk): readonly Finding[] =>
  [...state.deadProofs.values()].flatMap(({ box, state: proof, signedBy, until, because }) => {
    const told = statusWords[checklist.language];
    if (proof === 'never') return [];
    if (proof === 'current')
      return [remark('dead-proof', 'advice', told.provenDead(box.name, signedBy ?? '', until?.slice(11, 16) ?? ''))];
    return [remark('dead-proof', 'caution', told.liveAgain(box.name, because ?? ''))];
  });

const mostNotes = 5;

/** What was noted at steps that are not done: where somebody is stuck. */
const openNotes = ({ state }: OpenWalk): readonly Finding[] =>
  state.notes
    .flatMap(({ step, says, name }) => {
      const view = step === null ? undefined : state.steps.get(step);
      const isDone = view === undefined || ['closed', 'skipped', 'served'].includes(view.status);
      return isDone ? [] : [remark('note', 'advice', `${view.listed.title}: ${says} (${name})`)];
    })
    .slice(-mostNotes);

const mostDone = 5;

/** Who did what last, newest first, so that two on one list see each other. */
function doneLast(desk: Desk, { state, events, checklist }: OpenWalk): readonly (readonly string[])[] {
  const timeZone = zoneOf(desk) ?? 'UTC';
  const told = statusWords[checklist.language];
  const clock = new Intl.DateTimeFormat(told.locale, {
    timeZone,
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    hour12: false,
  });
  const refused = new Set(state.refused.map(({ event }) => event.id));
  return events
    .flatMap(({ id, step, what, who, standing, at }) => {
      const listed = step === null ? undefined : state.list.byId.get(step);
      const counts = ['done', 'signed', 'overridden', 'undone'].includes(what) && !refused.has(id);
      if (!listed || !counts) return [];
      return [
        [
          `${listed.title}${told.happened[what] ?? ''}`,
          standing.name ?? who,
          `${clock.format(new Date(at))}${timeZone === 'UTC' ? ' UTC' : ''}`,
        ],
      ];
    })
    .slice(-mostDone)
    .reverse();
}

const mostJobs = 50;

/** What every open list of the crew waits for: the holds that can be signed now, else the next one. */
const holdsOfAll = (desk: Desk): readonly (readonly string[])[] =>
  desk.store.listSheets({ limit: mostJobs, state: 'open' }).flatMap(({ number, name }) =>
    listsOf(desk, number).flatMap((list) => {
      const walk = isInvented({ name }) ? undefined : walkOn(desk, number, list, languageAt(desk));
      if (!walk || walk.state.closed) return [];
      const { holds } = walk.state;
      const reached = holds.filter((hold) => hold.reached);
      return (reached.length > 0 ? reached : holds.slice(0, 1)).map((hold) => [
        `${number}${name === null ? '' : `, ${name}`}`,
        walk.checklist.name,
        hold.listed.title,
        hold.reached ? statusWords[languageAt(desk)].canBeSigned : statusWords[languageAt(desk)].notReached,
      ]);
    }),
  );
