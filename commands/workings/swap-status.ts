import type { Desk } from '#chat/command.ts';
import type { Finding, Table } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import { nextSteps } from '#walkthrough/next-steps.ts';
import { eitherOf, isLead } from '#walkthrough/signing.ts';
import { remark } from './plain-replies.ts';
import { listsOf, type OpenWalk, type Walker, walkOn } from './swap-walk.ts';

/** "[#####---------------] 18 of 71" */
function bar(done: number, of: number): string {
  const full = of === 0 ? 20 : Math.floor((20 * done) / of);
  return `[${'#'.repeat(full)}${'-'.repeat(20 - full)}] ${done} of ${of}`;
}

export const spentText = (milliseconds: number): string => {
  const minutes = Math.round(milliseconds / 60_000);
  return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
};

/** Where one list stands, for anybody of the crew. */
export function statusReply(desk: Desk, walk: OpenWalk, walker: Walker): Reply {
  const { state } = walk;
  const { progress, spent, people, stops, outOfRange } = state;
  const waited = nextSteps(state, walker).others.map(({ listed, waitsFor }) => [listed.title, waitsFor]);
  const signers = state.list.checklist.words.signers;
  const head = state.closed
    ? `Closed by ${state.closed.name}. `
    : state.paused
      ? `Paused by ${state.paused.name}. `
      : '';
  return {
    headline: `${head}${bar(progress.done, progress.of)}${progress.nextHold ? `, next hold: ${progress.nextHold.title}` : ''}`,
    findings: [
      ...stops.map(({ listed, says }) => remark('stopped', 'stop', `${listed.title}: ${says}`)),
      ...outOfRange.map(({ listed, says, passed }) =>
        remark(
          'out-of-range',
          passed ? 'advice' : 'caution',
          `${listed.title}: ${says}${passed ? ' Passed by a lead.' : ''}`,
        ),
      ),
      ...proofFindings(walk),
      ...state.reported.map(({ fact, value, name }) =>
        remark('reported', 'advice', `${name} reported ${fact} = ${value}. It counts once a lead confirms it.`),
      ),
    ],
    tables: [
      {
        title: 'Where it stands',
        columns: ['', ''],
        rows: [
          ['On the job', people.map(({ name }) => name).join(', ') || 'nobody has joined'],
          ['Time spent', `${spentText(spent.working)} at work, ${spentText(spent.away)} away`],
        ],
      },
      ...tableOf(
        'Holds still to sign',
        ['hold', 'waits for', 'now'],
        state.holds.map(({ listed, waitsFor, reached }) => [
          listed.title,
          eitherOf(waitsFor, signers),
          reached ? 'can be signed' : 'not reached',
        ]),
      ),
      ...tableOf('Free now, for somebody else', ['step', 'waits for'], waited),
      ...(isLead(walker.standing) ? tableOf('Holds of all jobs', ['job', 'list', 'hold'], holdsOfAll(desk)) : []),
    ],
  };
}

const mostRows = 12;

function tableOf(title: string, columns: readonly string[], rows: readonly (readonly string[])[]): readonly Table[] {
  if (rows.length === 0) return [];
  const more = rows.length - mostRows;
  const shown = more > 0 ? [...rows.slice(0, mostRows), [`and ${more} more`, ...columns.slice(1).map(() => '')]] : rows;
  return [{ title, columns, rows: shown }];
}

/** What is known of each opened box being dead. */
const proofFindings = ({ state }: OpenWalk): readonly Finding[] =>
  [...state.deadProofs.values()].flatMap(({ box, state: proof, signedBy, until, because }) => {
    if (proof === 'never') return [];
    if (proof === 'current')
      return [
        remark(
          'dead-proof',
          'advice',
          `The ${box.name} was proven dead by ${signedBy}. It lapses by itself at ${until?.slice(11, 16)} UTC, and with any break, new person or power.`,
        ),
      ];
    return [remark('dead-proof', 'caution', `The ${box.name} counts as live again. ${because ?? ''}`.trim())];
  });

const mostJobs = 50;

/** The next hold of every open list of the crew that can be signed now. */
const holdsOfAll = (desk: Desk): readonly (readonly string[])[] =>
  desk.store.listSheets({ limit: mostJobs, state: 'open' }).flatMap(({ number, name }) =>
    listsOf(desk, number).flatMap((list) => {
      const walk = walkOn(desk, number, list);
      if (!walk || walk.state.closed) return [];
      return walk.state.holds
        .filter(({ reached }) => reached)
        .map(({ listed }) => [`${number}${name === null ? '' : `, ${name}`}`, walk.checklist.name, listed.title]);
    }),
  );
