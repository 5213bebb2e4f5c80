import type { Desk } from '#chat/command.ts';
import type { PressOffer, Reply } from '#findings/reply.ts';
import { demoFans } from '#knowledge/demo-fans.ts';
import { type DemoDeed, type DemoStop, demoHouse } from '#knowledge/demo-house.ts';
import { answered, bringTo, demoSheet, toldBy } from './demo-house.ts';
import type { Sheet } from './job-sheets.ts';

const { stops } = demoHouse;

/** One stop of the demo: what goes on, what to type, and what the command itself answers in the demo house. */
export function stopReply(desk: Desk, stop: DemoStop): Reply {
  return desk.store.together(() => {
    const sheet = demoSheet(desk);
    bringTo(desk, sheet.number, stop);
    const there = inTheHouse(desk, sheet);
    const told = toldBy(stop);
    if (stop.before) done(there, stop.before, { sheet, told });
    const { keeps: _, suggestions: __, asks: ___, refused: ____, ...reply } = done(there, stop.shows, { sheet, told });
    const place = stops.indexOf(stop) + 1;
    return {
      ...reply,
      ...(reply.chart ? { chart: marked(reply.chart) } : {}),
      notes: [
        `Demo, stop ${place} of ${stops.length}: ${stop.title}. ${stop.happens}`,
        `House, people and fans are invented. On a job of your own, type /${stop.type}.`,
      ],
      presses: pressesAt(place),
    };
  });
}

/** A chart is passed on without the words around it, so it says itself that nothing of it is real. */
const marked = <Drawn extends { readonly title: string }>(chart: Drawn): Drawn => ({
  ...chart,
  title: `${chart.title} (invented house)`,
});

const press = (label: string, stop: string): PressOffer => ({ label, command: 'demo', action: '', given: { stop } });

function pressesAt(place: number): readonly PressOffer[] {
  const next = stops[place];
  return [
    ...(next
      ? [{ ...press(`Next: ${next.title}`, String(place + 1)), goesOn: true as const }]
      : [press('Put the demo house away', 'end')]),
    ...(place > 1 ? [press('Back', String(place - 1))] : []),
  ];
}

/** The job of the house, and what it answers by now. */
interface House {
  readonly sheet: Sheet;
  readonly told: Readonly<Record<string, string>>;
}

/** What a command does in the demo house. */
function done(desk: Desk, { command: name, action: called, given }: DemoDeed, { sheet, told }: House): Reply {
  const command = desk.commands.find((each) => each.name === name);
  if (command?.kind === 'answer') return answered(desk, sheet.number, { command: name, told });
  const action = command?.actions.find((each) => each.name === called);
  if (!action) throw new Error(`knowledge/demo/house.json: there is no /${name} ${called}`);
  const about = Object.entries(given).map(([key, value]) => [key, value === '#' ? String(sheet.number) : value]);
  const reply = action.act(desk, Object.fromEntries(about));
  if ('start' in reply) throw new Error(`knowledge/demo/house.json: /${name} ${called} asks`);
  return reply;
}

/** The same desk with the demo house lying open on it, and the invented fans on the shelf. Nothing of the crew's is touched. */
function inTheHouse(desk: Desk, sheet: Sheet): Desk {
  const shelf = demoFans.map(({ name, label }) => ({
    name,
    label,
    units: 'inch-pound' as const,
    demo: true,
    who: desk.speaker.who,
    at: desk.now(),
  }));
  const store = {
    ...desk.store,
    currentSheet: () => sheet,
    shelfFans: () => shelf,
    shelfFan: (wanted: string) => shelf.find(({ name }) => name.toLowerCase() === wanted.trim().toLowerCase()),
  };
  return { ...desk, store, recall: desk.recallOn(sheet.number) };
}
