import type { Paper } from '#findings/paper.ts';
import type { Reply } from '#findings/reply.ts';
import { carrySheet } from '#walkthrough/carry-sheet.ts';
import { remark } from './plain-replies.ts';
import type { OpenWalk } from './swap-walk.ts';

/** What is left of some stages, to take where there is no signal. */
export function carryReply(walk: OpenWalk, stage: string | undefined): Reply {
  const { stages } = walk.checklist;
  const wanted = stages.filter(({ id }) => stage === undefined || id === stage);
  const lines = carrySheet(
    walk.state,
    wanted.map(({ id }) => id),
  );
  if (lines.length === 0) return { headline: 'Nothing is left to do there.', findings: [] };
  const paper: Paper = {
    title: `${walk.checklist.name}: carry sheet`,
    under: `Job ${walk.sheet}. ${lines.length} steps left${stage === undefined ? '' : ` in ${wanted[0]?.title ?? stage}`}.`,
    blocks: [
      {
        kind: 'warning',
        title: 'Nothing on this sheet counts until it is entered',
        lines: [
          'Holds are signed with signal, by the person themselves. Steps marked “at once” are entered when they are done.',
          'Before you rely on a dead box after any break, test it again.',
        ],
      },
      ...lines.flatMap(({ title, do: what, lookFor, caution, blanks, mayBeEnteredLater }) => [
        { kind: 'heading', text: `${title}${mayBeEnteredLater ? '' : ' (at once, with signal)'}` } as const,
        { kind: 'text', text: `${what} ${lookFor}${caution ? ` Caution: ${caution}` : ''}` } as const,
        {
          kind: 'list',
          items: [...blanks.map((blank) => `${blank}: ____________`), 'Done by ____________ at ______'],
        } as const,
      ]),
    ],
    foot: 'Fanwright carry sheet. Local code, the inspector and the licensed trades come first.',
    made: new Date(walk.clock.now),
  };
  return {
    headline: `Carry sheet: ${lines.length} steps left.`,
    findings: [remark('not-kept-yet', 'caution', 'Nothing on paper counts until it is entered with /swap done.')],
    tables: [
      {
        title: 'To do',
        columns: ['step', 'write down'],
        rows: lines.slice(0, 25).map(({ title, blanks }) => [title, blanks.join('; ')]),
      },
    ],
    papers: [{ name: `carry-job-${walk.sheet}.pdf`, paper }],
  };
}
