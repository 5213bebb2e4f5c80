import type { Desk } from '#chat/command.ts';
import type { Block, Paper } from '#findings/paper.ts';
import { airflow, minutes } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import { cubicMetresPerSecond, seconds } from '#quantity/units.ts';
import { doorGap } from '../questions/door.ts';
import { airflowsRecorded, decidedShort } from './handoff-airflow.ts';
import { choiceRecorded, type HandOff, numberRecorded, onSheet } from './handoff-facts.ts';

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
  return {
    measured: measured ?? before,
    shown,
    needed: needs.length > 0 ? cubicMetresPerSecond(Math.max(...needs)) : facts.needed,
    decided: decidedShort(off, desk.telling.units),
    runOn: numberRecorded(off, 'run-time-set', 'minutes'),
    gap: facts.gap,
  };
}

type Told = ReturnType<typeof told>;

const warning = (title: string, ...lines: readonly string[]): Block => ({ kind: 'warning', title, lines });

function warnings(off: HandOff, { measured, shown, needed, decided }: Told): readonly Block[] {
  const spillage = choiceRecorded(off, 'spillage-test', 'result')?.id;
  const leftOff = off.walks.some(({ state }) => state.steps.get('fan-left-off')?.status === 'closed');
  const stops = off.walks.flatMap(({ state }) => state.stops);
  return [
    ...(leftOff || spillage === 'fail' || spillage === 'not-tested'
      ? [
          warning(
            'The fan is locked off. Leave it off.',
            'It may pull exhaust gas from a fuel-burning appliance back into the home.',
            'Only a certified combustion tester or the fuel-gas trade may clear it.',
          ),
        ]
      : []),
    ...(finishedBy(off) && stops.length === 0
      ? []
      : [
          warning(
            'The work is not finished',
            'Do not count on the fan until the crew has closed the job.',
            ...stops.map(({ says }) => says),
          ),
        ]),
    ...(measured !== null && needed !== null && !meets(shown ?? measured, needed)
      ? [
          warning(
            meets(measured, needed)
              ? 'It may move less air than this room needs'
              : 'It moves less air than this room needs',
            ...decided,
            'Run it longer, and ask the crew what they will do about it.',
          ),
        ]
      : decided.length > 0
        ? [warning('Less air than this room needs was planned', ...decided)]
        : []),
  ];
}

/** What the crew found and set, in a line each; nothing that was not recorded. */
function fitted(off: HandOff, { units }: Desk['telling']): readonly Block[] {
  const says = (what: string, step: string, part: string): readonly string[] => {
    const choice = choiceRecorded(off, step, part);
    return choice ? [`${what}: ${choice.id === 'keep' ? 'the one that was there' : choice.label}.`] : [];
  };
  const old = numberRecorded(off, 'old-airflow', 'airflow');
  const items = [
    ...says('The new unit', 'confirm-unit', 'kind'),
    ...says('Its control', 'control-choice', 'control'),
    ...says('Its duct', 'duct-from-outside', 'material'),
    ...says('The air leaves at', 'air-leaves', 'ending'),
    ...(old === null ? [] : [`The old fan moved ${airflow.showShort(cubicMetresPerSecond(old), units)}.`]),
  ];
  return items.length === 0
    ? []
    : [
        { kind: 'heading', text: 'What is there now' },
        { kind: 'list', items },
      ];
}

/** The page that stays with whoever lives there, in plain words. */
export function occupantPaper(desk: Desk, off: HandOff): Paper {
  const { units } = desk.telling;
  const tells = told(desk, off);
  const { measured, needed, runOn, gap } = tells;
  const finished = finishedBy(off);
  const shown = (value: number): string => airflow.showShort(cubicMetresPerSecond(value), units);
  const figures = [
    ...(measured === null ? [] : [{ number: shown(measured), says: 'of air leaves the room, measured' }]),
    ...(needed === null ? [] : [{ number: shown(needed), says: 'is what the room needs' }]),
    ...(runOn === null ? [] : [{ number: minutes.showShort(seconds(runOn), units), says: 'it runs on by itself' }]),
  ];
  return {
    title: 'Your bathroom fan',
    under: `${off.sheet.name ?? `Job ${off.sheet.number}`}. ${finished ? `Finished ${off.day(finished.at)}.` : `As of ${off.day(off.made.toISOString())}.`}`,
    onePage: true,
    blocks: [
      ...warnings(off, tells),
      ...(figures.length > 0 ? [{ kind: 'figures', figures } as const] : []),
      ...fitted(off, desk.telling),
      { kind: 'heading', text: 'Using it' },
      {
        kind: 'list',
        items: [
          'Start the fan when the water starts, not when the mirror is wet.',
          runOn === null
            ? 'Let it run on after a shower until the mirror is clear.'
            : `Let it run on: the control is set to ${minutes.showShort(seconds(runOn), units)}.`,
          'Keep the bathroom door shut while it runs, and the way under the door free. That gap is where the fresh air comes in.',
          ...(gap === null
            ? []
            : [`The gap under the door: ${doorGap.show(gap, units)}. Do not close it with carpet or a draft strip.`]),
        ],
      },
      { kind: 'heading', text: 'Keeping it well' },
      {
        kind: 'list',
        items: [
          'Twice a year: switch the fan off, and vacuum or wipe the grille. Do not open the housing.',
          'Once a year, from the ground: see that the flap at the outside hood opens when the fan runs.',
          'Hold one sheet of toilet paper to the grille. If it no longer stays there, call us.',
        ],
      },
      { kind: 'heading', text: 'Call us, and switch it off, if' },
      {
        kind: 'list',
        items: [
          'it hums and does not turn, smells hot, sparks, or the breaker trips;',
          'water drips from it, or a stain grows on the ceiling around it;',
          'it has become louder, or moves less air than it did.',
        ],
      },
      warning(
        'If a carbon monoxide alarm sounds',
        'Everyone outside now. Call the fire service from outside. Nobody goes back in until they say so. Do not go back to turn the fan off.',
        'Smell burning or see smoke: get out, and call the fire service from outside.',
      ),
      {
        kind: 'text',
        text: 'Leave the wiring, the duct and the housing to a qualified person. Local code and the inspector decide.',
      },
      { kind: 'blanks', labels: ['Your crew', 'Phone'] },
    ],
    foot: `Job ${off.sheet.number}. Dates as in ${off.zone}. Keep this page with the papers of the house.`,
    made: off.made,
  };
}
