import type { Desk } from '#chat/command.ts';
import type { Block, Paper } from '#findings/paper.ts';
import type { HandOff } from './handoff-facts.ts';
import { spentText } from './swap-status.ts';
import { saidIn } from './swap-values.ts';
import type { OpenWalk } from './swap-walk.ts';

const howWords: Readonly<Record<string, string>> = {
  measured: 'measured',
  label: 'read off the label',
  estimated: 'estimated',
  told: 'as told',
  unknown: 'not known',
};

/** Whoever the crew knows by a name is told by it. */
const namesOf = (desk: Desk): ((who: string) => string) => {
  const names = new Map(desk.store.members().map(({ who, name }) => [who, name]));
  return (who) => names.get(who) ?? who;
};

function factsBlock(desk: Desk, { sheet, moment }: HandOff): readonly Block[] {
  const nameOf = namesOf(desk);
  const brief = new Map(
    desk.commands
      .flatMap((command) => (command.kind === 'answer' ? command.takes : []))
      .map((each) => [each.id, each.brief]),
  );
  const facts = [...desk.store.newestFacts(sheet.number).values()];
  if (facts.length === 0) return [];
  return [
    { kind: 'heading', text: 'What was known' },
    {
      kind: 'table',
      columns: ['What', 'Answer', 'How known', 'By', 'When'],
      widths: [0.3, 0.28, 0.14, 0.12, 0.16],
      rows: facts.map(({ fact, typed, how, who, at }) => [
        brief.get(fact) ?? fact,
        how === 'unknown' ? 'not known' : typed,
        howWords[how] ?? how,
        nameOf(who),
        moment(at),
      ]),
    },
  ];
}

/** One list with every step that was closed, passed, stopped or ended, and what is still open. */
function walkBlocks({ checklist, state }: OpenWalk, { moment }: HandOff, desk: Desk): readonly Block[] {
  const { units } = desk.telling;
  const views = [...state.steps.values()];
  const told = views.filter(({ answer }) => answer !== null);
  const open = views.filter(({ answer, status }) => answer === null && status !== 'served');
  const words: Readonly<Record<string, string>> = {
    closed: '',
    skipped: 'Passed over: ',
    stopped: 'STOPPED: ',
    lapsed: 'Ended since: ',
    served: '',
    open: 'Not closed: ',
    blocked: 'Not closed: ',
  };
  const passed = views.filter(({ status }) => status === 'skipped');
  return [
    { kind: 'heading', text: `${checklist.name}: ${state.progress.done} of ${state.progress.of} steps` },
    {
      kind: 'text',
      text: `${state.closed ? `Closed by ${state.closed.name}, ${moment(state.closed.at)}.` : 'Not closed.'} At work ${spentText(state.spent.working)}, away ${spentText(state.spent.away)}.`,
    },
    ...(told.length === 0
      ? []
      : [
          {
            kind: 'table',
            columns: ['Step', 'Recorded', 'By', 'When'],
            widths: [0.3, 0.42, 0.12, 0.16],
            rows: told.map(({ listed, answer, status, because }) => [
              `${listed.title}${listed.step.hold ? ', hold' : ''}`,
              `${words[status] ?? ''}${[answer ? saidIn(listed, answer.value, units) : '', status === 'closed' ? '' : (because ?? '')].filter(Boolean).join('. ') || (listed.step.hold ? 'signed' : 'done')}`,
              answer?.name ?? '',
              answer ? moment(answer.at) : '',
            ]),
          } as const,
        ]),
    ...listBlock(
      'Passed over by a lead',
      passed.map(({ listed, because, answer }) => `${listed.title}: ${because ?? ''} (${answer?.name ?? ''})`),
    ),
    ...listBlock(
      'Out of range',
      state.outOfRange.map(({ listed, says }) => `${listed.title}: ${says}`),
    ),
    ...listBlock(
      'Stopped',
      state.stops.map(({ listed, says, answer }) => `${listed.title}: ${says} (${answer.name})`),
    ),
    ...listBlock(
      'Advice that remains',
      state.advice.map(({ listed, says }) => `${listed.title}: ${says}`),
    ),
    ...listBlock(
      'Notes',
      state.notes.map(({ says, name, at }) => `${says} (${name}, ${moment(at)})`),
    ),
    ...listBlock(
      'Answered anew',
      state.corrections.map(
        ({ step, before, after }) =>
          `${state.list.byId.get(step)?.title ?? step}: ${before.name}, then ${after.name} ${moment(after.at)}`,
      ),
    ),
    ...listBlock(
      'Photos',
      views.flatMap(({ listed, photos, answer }) => [
        ...photos.map(({ reference, name }) => `${listed.title}: ${reference} (${name})`),
        ...listed.parts.flatMap((part) =>
          part.kind === 'photo' && answer?.value[part.id] ? [`${listed.title}: ${String(answer.value[part.id])}`] : [],
        ),
      ]),
    ),
    ...listBlock(
      `Still open: ${open.length}`,
      checklist.stages.flatMap(({ id, title }) => {
        const left = open.filter(({ listed }) => listed.step.stage === id);
        return left.length === 0 ? [] : [`${title}: ${left.map(({ listed }) => shortName(listed)).join(', ')}`];
      }),
    ),
  ];
}

const shortName = ({ step, box, person }: OpenWalk['state']['list']['steps'][number]): string =>
  [step.code, box?.name ?? person?.name].filter(Boolean).join(' ');

const listBlock = (text: string, items: readonly string[]): readonly Block[] =>
  items.length === 0
    ? []
    : [
        { kind: 'heading', text },
        { kind: 'list', items },
      ];

/** The page for the file: what was known, what was done by whom and when, and what remains. */
export function recordPaper(desk: Desk, off: HandOff): Paper {
  return {
    title: `Job record: ${off.sheet.name ?? `job ${off.sheet.number}`}`,
    under: `Job ${off.sheet.number}, made ${off.moment(off.made.toISOString())}. Times as in ${off.zone}.`,
    blocks: [...factsBlock(desk, off), ...off.walks.flatMap((walk) => walkBlocks(walk, off, desk))],
    foot: 'From the crew’s own records. No certificate: local code, the inspector and licensed trades decide.',
    made: off.made,
  };
}
