import type { Desk } from '#chat/command.ts';
import type { Block } from '#findings/paper.ts';
import type { StepView } from '#walkthrough/walk-state.ts';
import type { HandOff } from './handoff-facts.ts';
import { spentText } from './swap-status.ts';
import { saidIn } from './swap-values.ts';
import type { OpenWalk } from './swap-walk.ts';

type Units = Desk['telling'];

/** A heading with points under it; nothing where there are none. */
export const listBlock = (text: string, items: readonly string[]): readonly Block[] =>
  items.length === 0
    ? []
    : [
        { kind: 'heading', text },
        { kind: 'list', items },
      ];

/** How a list went: how far, who closed it, how long it took. */
export const walkHeadings = ({ checklist, state }: OpenWalk, { moment }: HandOff): readonly Block[] => [
  { kind: 'heading', text: `${checklist.name}: ${state.progress.done} of ${state.progress.of} steps` },
  {
    kind: 'text',
    text: `${state.closed ? `Closed by ${state.closed.name}, ${moment(state.closed.at)}.` : 'Not closed.'} At work ${spentText(state.spent.working)}, away ${spentText(state.spent.away)}.`,
  },
];

const statusWords: Readonly<Record<StepView['status'], string>> = {
  closed: '',
  skipped: 'Passed over',
  stopped: 'STOPPED',
  lapsed: 'Ended since',
  served: '',
  open: 'Not closed',
  blocked: 'Not closed',
};

/** "SIGNED. Permit: Not needed, asked", "Passed over. The owner keeps the grille." */
function recordedAt({ listed, answer, status, because }: StepView, { units }: Units): string {
  const said = answer ? saidIn(listed, answer.value, units) : '';
  const signed = listed.step.hold && answer?.what === 'signed' ? 'SIGNED' : '';
  const why = status === 'closed' || status === 'served' ? '' : (because ?? '').replace(/\.$/, '');
  const parts = [statusWords[status], signed, said, why].filter(Boolean);
  return parts.length === 0 ? 'Done' : parts.join('. ');
}

/** Every step that was answered, stage by stage, and what was written, sent or left open beside them. */
export function stepBlocks({ checklist, state }: OpenWalk, { moment }: HandOff, telling: Units): readonly Block[] {
  const views = [...state.steps.values()];
  const told = views.filter(({ answer }) => answer !== null);
  const open = views.filter(({ answer, status }) => answer === null && status !== 'served');
  const rows = checklist.stages.flatMap(({ id, title }) => {
    const here = told.filter(({ listed }) => listed.step.stage === id);
    return here.length === 0
      ? []
      : [
          [title],
          ...here.map((view) => [
            `${view.listed.title}${view.listed.step.hold ? ', hold' : ''}`,
            recordedAt(view, telling),
            view.answer?.name ?? '',
            view.answer ? moment(view.answer.at) : '',
          ]),
        ];
  });
  return [
    ...(rows.length === 0
      ? []
      : [
          {
            kind: 'table',
            columns: ['Step', 'Recorded', 'By', 'When'],
            widths: [0.28, 0.4, 0.12, 0.2],
            rows,
          } as const,
        ]),
    ...listBlock(
      'Notes',
      state.notes.map(({ says, name, at }) => `${says} (${name}, ${moment(at)})`),
    ),
    ...listBlock(
      'Answered anew',
      state.corrections.map(
        ({ step, before, after }) =>
          `${state.list.byId.get(step)?.title ?? step}: ${before.name}, then ${after.name}, ${moment(after.at)}`,
      ),
    ),
    ...photoBlocks(views, moment),
    ...listBlock(
      `Still open: ${open.length} steps`,
      checklist.stages.flatMap(({ id, title }) => {
        const left = open.filter(({ listed }) => listed.step.stage === id);
        return left.length === 0 ? [] : [`${title}: ${left.map(({ listed }) => shortName(listed)).join(', ')}`];
      }),
    ),
  ];
}

/** Where each photo lies, and the beginning of the checksum by which one that was changed is known. */
function photoBlocks(views: readonly StepView[], moment: HandOff['moment']): readonly Block[] {
  const rows = views.flatMap(({ listed, photos, answer }) => {
    const hung = photos.map(({ reference, checksum, name, at }) => [
      listed.title,
      reference,
      checksum?.slice(0, 12) ?? '',
      name,
      moment(at),
    ]);
    const given = listed.parts.flatMap((part) => {
      const said = part.kind === 'photo' ? answer?.value[part.id] : undefined;
      return answer && said !== undefined && !photos.some(({ reference }) => reference === said)
        ? [[listed.title, String(said), '', answer.name, moment(answer.at)]]
        : [];
    });
    return [...hung, ...given];
  });
  return rows.length === 0
    ? []
    : [
        { kind: 'heading', text: `Photos: ${rows.length}` },
        {
          kind: 'table',
          columns: ['Step', 'Where it lies', 'Checksum', 'By', 'When'],
          widths: [0.25, 0.27, 0.16, 0.12, 0.2],
          rows,
        },
      ];
}

const shortName = ({ step, box, person }: StepView['listed']): string =>
  [step.code, box?.name ?? person?.name].filter(Boolean).join(' ');
