import type { Progress, StepMark } from '#findings/progress.ts';
import type { Chart } from '#findings/reply.ts';
import { eitherOf } from '#walkthrough/signing.ts';
import type { StepView } from '#walkthrough/walk-state.ts';
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
  const { signers } = checklist.words;
  return {
    stages: checklist.stages.flatMap(({ id, title }) => {
      const marks = views.filter(({ listed }) => listed.step.stage === id).map(markOf);
      return marks.length === 0 ? [] : [{ label: shortly(title), marks }];
    }),
    remarks: [
      ...state.stops.map(({ listed, says }) => `Stopped: ${listed.title}. ${says}`),
      ...state.outOfRange.map(
        ({ listed, says, passed }) =>
          `Out of range: ${listed.title}. ${says}${passed ? ' Passed over by a lead.' : ''}`,
      ),
      ...state.holds.map(
        ({ listed, waitsFor, reached }) =>
          `Hold: ${listed.title} waits for ${eitherOf(waitsFor, signers)}${reached ? ', now' : ''}`,
      ),
    ],
  };
}

/** The progress of a list as a picture. */
export function progressChart(walk: OpenWalk): Chart {
  const { checklist, sheet, state } = walk;
  const progress = progressOf(walk);
  const title = `${checklist.name}, job ${sheet}: ${state.progress.done} of ${state.progress.of} steps`;
  const stages = progress.stages.map(({ label, marks }) => {
    const left = marks.filter((mark) => mark !== 'done' && mark !== 'passed').length;
    return `${label} ${left === 0 ? 'done' : `${left} of ${marks.length} left`}`;
  });
  return {
    title,
    x: { label: 'steps', min: 0, max: 1 },
    y: { label: 'stage', min: 0, max: 1 },
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
