import type { Paper } from '#findings/paper.ts';
import type { Reply } from '#findings/reply.ts';
import { carrySheet } from '#walkthrough/carry-sheet.ts';
import { statusWords } from '../words/swap-status.ts';
import { remark } from './plain-replies.ts';
import type { OpenWalk } from './swap-walk.ts';

/** What is left of some stages, to take where there is no signal. */
export function carryReply(walk: OpenWalk, stage: string | undefined): Reply {
  const { stages, language } = walk.checklist;
  const told = statusWords[language].carry;
  const wanted = stages.filter(({ id }) => stage === undefined || id === stage);
  const lines = carrySheet(
    walk.state,
    wanted.map(({ id }) => id),
  );
  if (lines.length === 0) return { headline: told.nothingLeft, findings: [] };
  const paper: Paper = {
    title: told.title(walk.checklist.name),
    under: told.under(walk.sheet, lines.length, stage === undefined ? undefined : (wanted[0]?.title ?? stage)),
    blocks: [
      { kind: 'warning', ...told.warning },
      ...lines.flatMap(({ title, do: what, lookFor, caution, blanks, mayBeEnteredLater }) => [
        { kind: 'heading', text: `${title}${mayBeEnteredLater ? '' : ` ${told.atOnce}`}` } as const,
        { kind: 'text', text: `${what} ${lookFor}${caution ? ` ${told.caution(caution)}` : ''}` } as const,
        {
          kind: 'list',
          items: [...blanks.map((blank) => `${blank}: ____________`), told.doneBy],
        } as const,
      ]),
    ],
    foot: told.foot,
    made: new Date(walk.clock.now),
  };
  return {
    headline: told.headline(lines.length),
    findings: [remark('not-kept-yet', 'caution', told.notKept)],
    tables: [
      {
        ...told.table,
        rows: lines.slice(0, 25).map(({ title, blanks }) => [title, blanks.join('; ')]),
      },
    ],
    papers: [{ name: `carry-job-${walk.sheet}.pdf`, paper }],
  };
}
