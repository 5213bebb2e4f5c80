import type { Progress, StepMark } from '#findings/progress.ts';
import type { Chart } from '#findings/reply.ts';
import { eitherOf } from '#walkthrough/signing.ts';
import type { StepView } from '#walkthrough/walk-state.ts';
import { statusWords } from '../words/swap-status.ts';
import type { OpenWalk } from './swap-walk.ts';

function markOf({ status, listed }: StepView): StepMark {
  switch (status) {
    case 'closed':
    case 'served':
      return 'done';
    case 'skipped':
      return 'passed';
    case 'stopped':
      return 'stopped';
    default:
      return listed.step.hold ? 'hold' : 'open';
  }
}

/** "Survey: look, covers stay on" is "Survey" on a phone. */
const shortly = (title: string): string => title.split(':')[0] ?? title;

/** Stage by stage how the steps of a list stand, with the holds that remain and who is waited for. */
function progressOf({ checklist, state }: OpenWalk): Progress {
  const views = [...state.steps.values()];
  const told = statusWords[checklist.language];
  return {
    words: { marks: told.marks, of: told.of },
    stages: checklist.stages.flatMap(({ id, title }) => {
      const marks = views.filter(({ listed }) => listed.step.stage === id).map(markOf);
      return marks.length === 0 ? [] : [{ label: shortly(title), marks }];
    }),
    remarks: [
      ...state.stops.map(({ listed, says }) => told.stopped(listed.title, says)),
      ...state.outOfRange.map(
        ({ listed, says, passed }) => `${told.outOfRange(listed.title, says)}${passed ? ` ${told.passedOver}` : ''}`,
      ),
      ...state.holds.map(({ listed, waitsFor, reached }) =>
        told.hold(listed.title, eitherOf(waitsFor, checklist), reached),
      ),
    ],
  };
}

/** The progress of a list as a picture. */
export function progressChart(walk: OpenWalk): Chart {
  const { checklist, sheet, state } = walk;
  const progress = progressOf(walk);
  const told = statusWords[checklist.language];
  const title = told.chartTitle(checklist.name, sheet, state.progress);
  const stages = progress.stages.map(({ label, marks }) => {
    const left = marks.filter((mark) => mark !== 'done' && mark !== 'passed').length;
    return left === 0 ? told.stageDone(label) : told.stageLeft(label, left, marks.length);
  });
  return {
    title,
    x: { label: told.steps, min: 0, max: 1 },
    y: { label: told.stage, min: 0, max: 1 },
    progress,
    lines: [],
    bands: [],
    marks: [],
    levels: [],
    alt: `${title}. ${stages.join('; ')}. ${progress.remarks
      .slice(0, 3)
      .map((says) => `${says.replace(/\.$/, '')}.`)
      .join(' ')}`.trim(),
  };
}
