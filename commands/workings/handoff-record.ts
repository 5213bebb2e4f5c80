import type { Desk } from '#chat/command.ts';
import type { Block, Paper } from '#findings/paper.ts';
import { airflow } from '#quantity/kinds.ts';
import { cubicMetresPerSecond } from '#quantity/units.ts';
import { decidedShort } from './handoff-airflow.ts';
import { type HandOff, numberRecorded } from './handoff-facts.ts';
import { listBlock, stepBlocks, walkHeadings } from './handoff-steps.ts';
import { briefOf, howWords } from './job-sheets.ts';

/** Whoever the crew knows by a name is told by it. */
const namesOf = (desk: Desk): ((who: string) => string) => {
  const names = new Map(desk.store.members().map(({ who, name }) => [who, name]));
  return (who) => names.get(who) ?? who;
};

function factsBlock(desk: Desk, { sheet, moment }: HandOff): readonly Block[] {
  const nameOf = namesOf(desk);
  const facts = [...desk.store.newestFacts(sheet.number).values()];
  if (facts.length === 0) return [];
  return [
    { kind: 'heading', text: 'What was known and planned' },
    {
      kind: 'table',
      columns: ['What', 'Answer', 'How known', 'By', 'When'],
      widths: [0.29, 0.25, 0.14, 0.12, 0.2],
      rows: facts.map(({ fact, typed, how, who, at }) => [
        briefOf(desk, fact),
        how === 'unknown' ? 'not known' : typed,
        howWords[how],
        nameOf(who),
        moment(at),
      ]),
    },
  ];
}

/** The numbers somebody looks for first. */
function figuresBlock(desk: Desk, off: HandOff): readonly Block[] {
  const { units } = desk.telling;
  const air = (step: string, part: string, says: string) => {
    const value = numberRecorded(off, step, part);
    return value === null ? [] : [{ number: airflow.showShort(cubicMetresPerSecond(value), units), says }];
  };
  const last = off.walks.at(-1);
  const figures = [
    ...air('old-airflow', 'airflow', 'moved before'),
    ...air('target-airflow', 'airflow', 'agreed'),
    ...air('target-airflow', 'need', 'the room needs'),
    ...air('measured-airflow', 'mean', 'measured after'),
    ...air('measured-airflow', 'low-end', 'its low end'),
    ...(last
      ? [{ number: `${last.state.progress.done} of ${last.state.progress.of}`, says: 'steps closed or passed over' }]
      : []),
  ];
  return figures.length === 0 ? [] : [{ kind: 'figures', figures }];
}

/** What must be read first: stops, and what is not closed. */
function warnings({ walks }: HandOff): readonly Block[] {
  const stopped = walks.flatMap(({ state }) =>
    state.stops.map(({ listed, says, answer }) => `${listed.title}: ${says} (${answer.name})`),
  );
  const open = walks.filter(({ state }) => state.closed === null);
  return [
    ...(stopped.length === 0 ? [] : [{ kind: 'warning', title: 'Stopped', lines: stopped } as const]),
    ...(open.length === 0
      ? []
      : [
          {
            kind: 'warning',
            title: 'Not closed',
            lines: open.map(
              ({ checklist, state: { progress, holds } }) =>
                `${checklist.name}: ${progress.done} of ${progress.of} steps. Holds still to sign: ${holds.length === 0 ? 'none' : holds.map(({ listed }) => listed.title).join('; ')}.`,
            ),
          } as const,
        ]),
  ];
}

/** What stays to be minded once the work is done. */
const remaining = ({ walks, moment }: HandOff): readonly Block[] => [
  ...listBlock(
    'Out of range',
    walks.flatMap(({ state }) =>
      state.outOfRange.map(
        ({ listed, says, passed }) => `${listed.title}: ${says}${passed ? ' Passed over by a lead.' : ''}`,
      ),
    ),
  ),
  ...listBlock(
    'Passed over by a lead, with the reason',
    walks.flatMap(({ state }) =>
      [...state.steps.values()]
        .filter(({ status }) => status === 'skipped')
        .map(
          ({ listed, because, answer }) =>
            `${listed.title}: ${because ?? 'no reason on record'} (${answer ? `${answer.name}, ${moment(answer.at)}` : 'nobody named'})`,
        ),
    ),
  ),
  ...listBlock(
    'Advice that remains',
    walks.flatMap(({ state }) => state.advice.map(({ listed, says }) => `${listed.title}: ${says}`)),
  ),
];

/** The page for the file: what was known, what was done by whom and when, and what remains. */
export function recordPaper(desk: Desk, off: HandOff): Paper {
  const name = off.sheet.name ?? `job ${off.sheet.number}`;
  return {
    title: `Job record: ${name}`,
    under: `Job ${off.sheet.number}, made ${off.moment(off.made.toISOString())}. Times as in ${off.zone}.`,
    blocks: [
      ...warnings(off),
      ...figuresBlock(desk, off),
      ...listBlock('Less air than needed, as a lead decided', decidedShort(off, desk.telling.units)),
      ...remaining(off),
      ...factsBlock(desk, off),
      ...off.walks.flatMap((walk) => [...walkHeadings(walk, off), ...stepBlocks(walk, off, desk.telling)]),
      ...off.broughtIn.flatMap((walk): readonly Block[] => [
        {
          kind: 'warning',
          title: `Brought in from a file: ${walk.checklist.name}`,
          lines: ['What follows is what the file says. Nothing in it was signed or proven here.'],
        },
        ...stepBlocks(walk, off, desk.telling),
      ]),
    ],
    foot: `${name}. From the crew’s own records. No certificate: local code, the inspector and licensed trades decide.`,
    made: off.made,
  };
}
