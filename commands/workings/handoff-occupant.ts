import type { Desk } from '#chat/command.ts';
import type { Block, Paper } from '#findings/paper.ts';
import { airflow, minutes } from '#quantity/kinds.ts';
import { cubicMetresPerSecond, seconds } from '#quantity/units.ts';
import { type HandOff, onSheet, recorded } from './handoff-facts.ts';

const numberIn = (value: Readonly<Record<string, unknown>> | undefined, part: string): number | null => {
  const said = value?.[part];
  return typeof said === 'number' ? said : null;
};

/** How the last list at the house was closed; nothing while any list is open. What is packed in the shop finishes nothing. */
const finishedBy = ({ walks }: HandOff) => {
  const atHouse = walks.filter(({ checklist }) => checklist.id !== 'before-leaving-the-shop');
  return walks.every(({ state }) => state.closed !== null) ? (atHouse.at(-1)?.state.closed ?? null) : null;
};

/** The page that stays with whoever lives there, in plain words. */
export function occupantPaper(desk: Desk, off: HandOff): Paper {
  const { units } = desk.telling;
  const facts = onSheet(desk);
  const measured = numberIn(recorded(desk, off, 'measured-airflow')?.value, 'mean');
  const runOn = numberIn(recorded(desk, off, 'run-time-set')?.value, 'minutes');
  // An airflow on the sheet may be that of the old fan: once a list is walked, only what was measured on it counts.
  const before = off.walks.length === 0 ? facts.measured : null;
  const moved = measured === null ? before : airflow.showShort(cubicMetresPerSecond(measured), units);
  const spillage = recorded(desk, off, 'spillage-test')?.value['result'];
  const leftOff = off.walks.some(({ state }) => state.steps.get('fan-left-off')?.status === 'closed');
  const finished = finishedBy(off);
  const stops = off.walks.flatMap(({ state }) => state.stops);
  const figures = [
    ...(moved === null ? [] : [{ number: moved, says: 'of air leaves the room, measured' }]),
    ...(facts.needed === null ? [] : [{ number: facts.needed, says: 'is what the room needs' }]),
    ...(runOn === null ? [] : [{ number: minutes.showShort(seconds(runOn), units), says: 'it runs on by itself' }]),
  ];
  const notDone: readonly Block[] =
    finished && stops.length === 0
      ? []
      : [
          {
            kind: 'warning',
            title: 'The work is not finished',
            lines: ['Do not count on the fan until the crew has closed the job.', ...stops.map(({ says }) => says)],
          },
        ];
  const lockedOff: readonly Block[] =
    leftOff || spillage === 'fail' || spillage === 'not-tested'
      ? [
          {
            kind: 'warning',
            title: 'The fan is locked off. Leave it off.',
            lines: [
              'It may pull exhaust gas from a fuel-burning appliance back into the home.',
              'Only a certified combustion tester or the fuel-gas trade may clear it.',
            ],
          },
        ]
      : [];
  return {
    title: 'Your bathroom fan',
    under: `${off.sheet.name ?? `Job ${off.sheet.number}`}. ${finished ? `Finished ${off.day(finished.at)}.` : `As of ${off.day(off.made.toISOString())}.`}`,
    blocks: [
      ...lockedOff,
      ...notDone,
      ...(figures.length > 0 ? [{ kind: 'figures', figures } as const] : []),
      { kind: 'heading', text: 'Using it' },
      {
        kind: 'list',
        items: [
          'Start the fan when the water starts, not when the mirror is wet.',
          runOn === null
            ? 'Let it run on after a shower until the mirror is clear.'
            : `Let it run on: the control is set to ${minutes.showShort(seconds(runOn), units)}.`,
          'Keep the bathroom door shut while it runs, and the way under the door free. That gap is where the fresh air comes in.',
          ...(facts.gap === null
            ? []
            : [`The gap under the door: ${facts.gap}. Do not close it with carpet or a draft strip.`]),
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
      {
        kind: 'warning',
        title: 'If a carbon monoxide alarm sounds',
        lines: [
          'Everyone outside now. Call the fire service from outside. Nobody goes back in until they say so. Do not go back to turn the fan off.',
          'Smell burning or see smoke: get out, and call the fire service from outside.',
        ],
      },
      {
        kind: 'text',
        text: 'Leave the wiring, the duct and the housing to a qualified person. Local code and the inspector decide.',
      },
    ],
    foot: `Job ${off.sheet.number}. Dates as in ${off.zone}. Keep this page with the papers of the house.`,
    made: off.made,
  };
}
