import type { Desk } from '#chat/command.ts';
import type { Block, Paper } from '#findings/paper.ts';
import { airflow, minutes } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import { cubicMetresPerSecond, seconds } from '#quantity/units.ts';
import { doorGap } from '../questions/door.ts';
import { occupantWords } from '../words/occupant.ts';
import { crewContact } from './crew-contact.ts';
import { airflowsRecorded, decidedShort } from './handoff-airflow.ts';
import { choiceRecorded, type HandOff, numberRecorded, onSheet, runOnNow } from './handoff-facts.ts';

/** How the last list at the house was closed; nothing while any list is open. What is packed in the shop finishes nothing. */
const finishedBy = ({ walks }: HandOff) => {
  const atHouse = walks.filter(({ checklist }) => checklist.id !== 'before-leaving-the-shop');
  return walks.every(({ state }) => state.closed !== null) ? (atHouse.at(-1)?.state.closed ?? null) : null;
};

/** The airflow measured and the airflow it was to be, in m³/s, and what else the page tells. */
function told(desk: Desk, off: HandOff) {
  const facts = onSheet(desk, off);
  // An airflow on the sheet may be that of the old fan: once a list is walked, only what was measured on it counts.
  const before = off.walks.length === 0 ? (facts.measured?.typical ?? null) : null;
  const { agreed, measured, shown, need } = airflowsRecorded(off);
  const needs = [agreed, need].filter((each) => each !== null);
  // A target that somebody only typed is not what the room needs.
  const onlyAgreed = need === null ? agreed : null;
  return {
    measured: measured ?? before,
    shown,
    needed: needs.length > 0 ? cubicMetresPerSecond(Math.max(...needs)) : facts.needed,
    onlyAgreed,
    need: need ?? facts.needed,
    decided: decidedShort(off, desk.telling.units),
    runOn: runOnNow(desk, off),
    gap: facts.gap,
  };
}

type Told = ReturnType<typeof told>;

const warning = ([title = '', ...lines]: readonly string[]): Block => ({ kind: 'warning', title, lines });

function warnings(off: HandOff, { measured, shown, needed, decided }: Told): readonly Block[] {
  const words = occupantWords[off.language];
  const spillage = choiceRecorded(off, 'spillage-test', 'result')?.id;
  const leftOff = off.walks.some(({ state }) => state.steps.get('fan-left-off')?.status === 'closed');
  const stops = new Set(
    off.walks.flatMap(({ state }) =>
      state.stops.map(({ listed }) => words.stopped[listed.step.risk === 'electrical' ? 'electrical' : 'other']),
    ),
  );
  return [
    ...(leftOff || spillage === 'fail' || spillage === 'not-tested' ? [warning(words.lockedOff)] : []),
    ...(finishedBy(off) && stops.size === 0 ? [] : [warning([...words.notFinished, ...stops])]),
    ...(measured !== null && needed !== null && !meets(shown ?? measured, needed)
      ? [warning([meets(measured, needed) ? words.mayMoveLess : words.movesLess, ...decided, words.runLonger])]
      : decided.length > 0
        ? [warning([words.lessPlanned, ...decided])]
        : []),
  ];
}

/** What the crew found and set, in a line each; nothing that was not recorded. */
function fitted(off: HandOff, { units }: Desk['telling']): readonly Block[] {
  const words = occupantWords[off.language];
  const says = (what: string, step: string, part: string): readonly string[] => {
    const choice = choiceRecorded(off, step, part);
    return choice ? [`${what}: ${choice.id === 'keep' ? words.kept : choice.label}.`] : [];
  };
  const old = numberRecorded(off, 'old-airflow', 'airflow');
  const items = [
    ...says(words.unit, 'confirm-unit', 'kind'),
    ...says(words.control, 'control-choice', 'control'),
    ...says(words.duct, 'duct-from-outside', 'material'),
    ...says(words.leavesAt, 'air-leaves', 'ending'),
    ...(old === null ? [] : [words.oldMoved(airflow.showShort(cubicMetresPerSecond(old), units))]),
  ];
  return items.length === 0
    ? []
    : [
        { kind: 'heading', text: words.thereNow },
        { kind: 'list', items },
      ];
}

/** Who to call, as the crew has settled it; a line to fill in by hand for what it has not. */
function whomToCall({ store }: Desk, words: { readonly crew: string; readonly phone: string }): readonly Block[] {
  const known = crewContact.map(({ id, key, read }) => {
    const reading = read(store.setting(key) ?? '');
    return { label: words[id === 'crew-name' ? 'crew' : 'phone'], value: 'value' in reading ? reading.value : null };
  });
  const printed = known.flatMap(({ label, value }) => (value === null ? [] : [`${label}: ${value}`]));
  const blank = known.flatMap(({ label, value }) => (value === null ? [label] : []));
  return [
    ...(printed.length > 0 ? [{ kind: 'heading', text: printed.join('. ') } as const] : []),
    ...(blank.length > 0 ? [{ kind: 'blanks', labels: blank } as const] : []),
  ];
}

/** The page that stays with whoever lives there, in plain words. */
export function occupantPaper(desk: Desk, off: HandOff): Paper {
  const { units } = desk.telling;
  const words = occupantWords[off.language];
  const tells = told(desk, off);
  const { measured, need, onlyAgreed, runOn, gap } = tells;
  const finished = finishedBy(off);
  const shown = (value: number): string => airflow.showShort(cubicMetresPerSecond(value), units);
  const figures = [
    ...(measured === null ? [] : [{ number: shown(measured), says: words.leaves }]),
    ...(onlyAgreed !== null
      ? [{ number: shown(onlyAgreed), says: words.agreedFor }]
      : need === null
        ? []
        : [{ number: shown(need), says: words.needs }]),
    ...(runOn === null ? [] : [{ number: minutes.showShort(seconds(runOn), units), says: words.runsOn }]),
  ];
  return {
    title: words.title,
    under: `${off.sheet.name ?? words.job(off.sheet.number)}. ${finished ? words.finished(off.day(finished.at)) : words.asOf(off.day(off.made.toISOString()))}`,
    onePage: true,
    blocks: [
      ...warnings(off, tells),
      ...(figures.length > 0 ? [{ kind: 'figures', figures } as const] : []),
      ...fitted(off, desk.telling),
      { kind: 'heading', text: words.using },
      {
        kind: 'list',
        items: [
          words.start,
          runOn === null ? words.untilClear : words.setTo(minutes.showShort(seconds(runOn), units)),
          words.door,
          ...(gap === null ? [] : [words.gap(doorGap.show(gap, units))]),
        ],
      },
      { kind: 'heading', text: words.keeping },
      {
        kind: 'list',
        items: words.care,
      },
      { kind: 'heading', text: words.callIf },
      {
        kind: 'list',
        items: words.signs,
      },
      warning(words.alarm),
      {
        kind: 'text',
        text: words.leaveIt,
      },
      ...whomToCall(desk, words),
    ],
    foot: words.foot(off.sheet.number, off.zone),
    made: off.made,
  };
}
