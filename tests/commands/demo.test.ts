import { expect, it } from 'vitest';
import { begin, hear } from '#chat/conversation.ts';
import type { Screen } from '#chat/screen.ts';
import { recalledTalk } from '#chat/talk.ts';
import demo from '#commands/demo.ts';
import { commands } from '#commands/index.ts';
import job from '#commands/job.ts';
import swap from '#commands/swap.ts';
import { toldBy } from '#commands/workings/demo-house.ts';
import type { Reply } from '#findings/reply.ts';
import { type DemoStop, demoHouse } from '#knowledge/demo-house.ts';
import type { ScopedStore } from '#store/store.ts';
import { answer, crew, ladder } from '../store/workbench.ts';
import { dialogue, done, wordsOfReply } from './at-a-desk.ts';

// The demo house, its people, fans and readings are invented.

const { stops } = demoHouse;
const speaker = { ...ladder, who: 'ann' };
const answering = commands.filter((command) => command.kind === 'answer');

const stopAt = (store: ScopedStore, place: number): Reply =>
  done(demo, '', { stop: String(place) }, { store, commands });

/** The same as a crew does it on a job of its own: the command begun, and every question answered one after another. */
function byHand(store: ScopedStore, stop: DemoStop): Reply | undefined {
  const command = answering.find(({ name }) => name === stop.shows.command);
  if (!command) throw new Error(`${stop.shows.command} answers nothing`);
  const told = toldBy(stop);
  let screen: Screen = begin(store, command, stop.answers, speaker);
  for (let count = 0; screen.asking && count < 60; count += 1) {
    const talk = recalledTalk(store, answering, screen.talk ?? '');
    if (!talk) throw new Error('the talk is gone');
    const { question } = screen.asking;
    const enough = screen.asking.choices.some(({ id }) => id === 'enough') ? 'enough' : "don't know";
    screen = hear(store, talk, { answers: { [question.id]: told[question.id] ?? enough } }, speaker.who);
  }
  return screen.reply;
}

const told = ({ headline, findings, tables, assumed, chart }: Reply) => ({
  headline,
  findings,
  tables,
  assumed,
  chart: chart && { ...chart, title: chart.title.replace(' (invented house)', '') },
});

it('shows at every stop that computes what the command itself answers a crew that does the same', () => {
  const store = crew();
  const own = crew();
  const computing = stops.filter(({ shows }) => answering.some(({ name }) => name === shows.command));
  expect(computing.length).toBeGreaterThanOrEqual(6);
  for (const stop of stops) {
    const shown = stopAt(store, stops.indexOf(stop) + 1);
    if (!computing.includes(stop)) {
      own.addFacts(
        own.currentSheet(speaker).number,
        Object.entries(stop.answers).flatMap(([id, typed]) => {
          const question = answering.flatMap(({ takes }) => takes).find((each) => each.id === id);
          const read = question?.read(typed.replace(/ (?:measured|off the label)$/, ''), 'inch-pound');
          return read && 'value' in read ? [answer(id, read.value, { typed, who: 'ann' })] : [];
        }),
      );
      continue;
    }
    const reply = byHand(own, stop);
    if (!reply) throw new Error(`${stop.title} ends with a question`);
    expect(told(shown), stop.title).toEqual(told(reply));
    expect(shown.findings.length).toBeGreaterThan(0);
  }
});

it('compares, hands over and lists steps as the commands do on a job of one’s own', () => {
  const store = crew();
  done(demo, '', { stop: '5' }, { store, commands });
  const fans = stopAt(store, 5);
  const sheet = store.findSheet(demoHouse.name)?.number ?? 0;
  store.useSheet({ ...speaker, sheet });
  const fan = commands.find(({ name }) => name === 'fan');
  if (fan?.kind !== 'desk') throw new Error('there is no shelf');
  done(fan, 'demo', {}, { store, commands });
  const given = { first: 'Demo 80, Demo 110 selector, Demo held 80' };
  expect(told(fans)).toEqual(told(done(fan, 'compare', given, { store, commands })));
  expect(told(stopAt(store, 8))).toEqual(told(done(swap, 'next', { step: 'S01' }, { store, commands })));
});

it('takes for the airflow needed what size says', () => {
  const [pick] = stopAt(crew(), 3).findings;
  expect(toldBy(stops.at(-1) as DemoStop)['airflow-needed']).toBe('54 cfm');
  expect(pick?.value?.shown).toContain('54 cfm');
});

it('says at every stop that it is invented, what goes on and what to type', () => {
  const store = crew();
  stops.forEach((stop, index) => {
    const { notes, presses, chart, refused } = stopAt(store, index + 1);
    expect(notes).toHaveLength(2);
    expect(notes?.[0]).toBe(`Demo, stop ${index + 1} of ${stops.length}: ${stop.title}. ${stop.happens}`);
    expect(notes?.[1]).toMatch(/invented.*\/[a-z]+/);
    expect(presses?.some(({ goesOn }) => goesOn) ?? false).toBe(index + 1 < stops.length);
    if (chart) expect(chart.title).toContain('(invented house)');
    expect(refused).toBeUndefined();
    const [command = ''] = stop.type.split(/[ ,;]/);
    expect(commands.map(({ name }) => name)).toContain(command);
  });
});

it('leaves the channel’s own sheet, the shelf and the counts of the crew as they were', () => {
  const store = crew();
  const own = store.openSheet({ ...speaker, name: '14 Maple St' });
  store.addFact(own.number, answer('room-length', 2.4, { typed: '8 ft' }));
  stops.forEach((_, index) => {
    stopAt(store, index + 1);
  });
  expect(store.currentSheet(speaker)).toEqual(own);
  expect([...store.newestFacts(own.number).keys()]).toEqual(['room-length']);
  expect(store.shelfFans()).toEqual([]);
  const house = store.findSheet(demoHouse.name)?.number ?? 0;
  store.addFact(house, answer('confirmed-cause', 'bearing', { at: new Date('2026-03-01') }));
  expect(done(job, 'causes', { year: '2026' }, { store, commands }).headline).toContain('No callback of 2026');
  const list = wordsOfReply(done(job, 'list', {}, { store, commands }));
  expect(list).toContain('1 open job, newest first, and the demo house, which counts nowhere.');
  expect(list).toContain('Demo: 12 Sample Street (invented)');
  expect(wordsOfReply(done(swap, 'status', { job: String(house) }, { store, commands }))).toContain('0 of ');
  expect(wordsOfReply(done(job, 'show', { name: String(house) }, { store, commands }))).not.toMatch(/check-|heard/);
});

it('carries its mark into the export', () => {
  const store = crew();
  stopAt(store, 2);
  const house = store.findSheet(demoHouse.name)?.number ?? 0;
  for (const as of ['json', 'csv']) {
    const { files = [] } = done(job, 'export', { name: String(house), as }, { store, commands });
    expect(files.map(({ text }) => text).join('\n'), as).toContain('Demo: 12 Sample Street (invented)');
  }
});

it('shows a stop the same after going on and back', () => {
  const store = crew();
  const first = stops.map((_, index) => told(stopAt(store, index + 1)));
  for (const place of [4, 12, 1, 7, 5, 10]) {
    expect(told(stopAt(store, place)), String(place)).toEqual(first[place - 1]);
  }
});

it('is put away for good, and made anew', () => {
  const store = crew();
  stopAt(store, 9);
  expect(done(demo, '', { stop: 'end' }, { store, commands }).headline).toBe(
    'The demo house is put away: job 1 is erased. /demo makes it anew.',
  );
  expect(store.listSheets({ limit: 9 })).toEqual([]);
  expect(done(demo, '', { stop: 'end' }, { store, commands }).headline).toContain('There is no demo house here');
  stopAt(store, 1);
  const house = store.findSheet(demoHouse.name)?.number ?? 0;
  store.closeSheet(house, speaker);
  stopAt(store, 2);
  expect(store.findSheet(house)?.state).toBe('open');
});

it('goes on in a terminal with an empty line, next or a number, and not once something else was asked', async () => {
  const told = await dialogue({ store: crew(), commands }, 'demo', '', 'next', '2', 'working', '', 'size', 'stop', '');
  const places = [...told.matchAll(/bot: Demo, stop (\d+)/g)].map(([, place]) => place);
  expect(places).toEqual(['1', '2', '3', '2', '3']);
  expect(told).toContain('1  Next: the survey (or press Enter)');
});

it('tells the same house in metric units', () => {
  const store = crew();
  store.saveSetting('units', { value: 'metric', who: 'ann' });
  expect(wordsOfReply(stopAt(store, 3))).toContain('25.5 L/s');
  expect(stopAt(store, 12).headline).toContain('Cold bare duct');
});
