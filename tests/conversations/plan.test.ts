import { expect, it } from 'vitest';
import { terminalSession } from '#chat/terminal/session.ts';
import { commands } from '#commands/index.ts';
import { openStore } from '#store/store.ts';

/** More questions than a whole plan can have. */
const patience = 120;

const sessionOn = (store: ReturnType<typeof openStore>) =>
  terminalSession({
    store: store.scoped('terminal'),
    commands,
    who: 'lead',
    paper: { width: 100, colour: false },
    drawn: async () => undefined,
  });

/** 7 Fennel Row is an invented house. What is not told here nobody knew. */
const told =
  'plan room-length="9 ft" room-width="6 ft" fixtures="toilet, tub" fan-curve="110@0.1 84@0.25" collar="4 in" duct-run="14 ft 4 in flex; 2 x elbow 90; wall cap" door-width=30 door-gap=1/2 attic-temperature="20 F"';

it('a lead plans a whole house in the terminal, over two sittings, and reads every part', async () => {
  const store = openStore(':memory:');
  const first = sessionOn(store);
  await first.say(told);
  for (let count = 0; count < 5; count += 1) await first.say("don't know");
  const later = sessionOn(store);
  let said = await later.say('plan');
  let asked = 0;
  while (later.asking() && asked < patience) {
    said = await later.say("don't know");
    asked += 1;
  }
  expect(asked).toBeLessThan(patience);
  expect(said).toMatch(/The plan: the room needs 54/);
  expect(said).toMatch(/STOP/);
  for (const part of [
    'Air the room needs',
    'Fan and duct',
    'Make-up air and combustion',
    'Run time',
    'Sweating duct',
    'Wiring and control',
    'Room in the box',
    'Running cost',
    'Parts',
  ]) {
    expect(said).toContain(part);
  }
  expect(said.match(/^Still to find out$/gm)).toHaveLength(1);
  expect(said).not.toContain('Not known:');
  // Stops come first, whatever part they are of.
  const weights = [...said.matchAll(/^(STOP|Caution|Advice|Fine):/gm)].map(([, weight]) => weight);
  expect(weights.lastIndexOf('STOP')).toBeLessThan(weights.indexOf('Advice'));
  store.close();
});

it('a plan asks for no airflow it works out itself, and goes by fan and duct as far as they are known', async () => {
  const store = openStore(':memory:');
  const session = sessionOn(store);
  const prompts = [await session.say('plan plan-covers="air-needed, duct, run-time"')];
  while (session.asking() && prompts.length < patience) prompts.push(await session.say("don't know"));
  expect(prompts.join('\n')).not.toMatch(/How much air (?:does the fan really move|must it move)/);
  const said = prompts.at(-1) ?? '';
  expect(said).toMatch(/most likely 50 cfm.*; gets 57 cfm/s);
  expect(said).toMatch(/needed 50 cfm/);
  store.close();
});

it('an airflow nobody knew before does not stand in the way of fan and duct told later', async () => {
  const store = openStore(':memory:');
  const session = sessionOn(store);
  await session.say('runtime room-length=8 room-width=5 ceiling-height=8 delivered-airflow="don\'t know"');
  await session.say('stop');
  let said = await session.say('plan plan-covers="run-time" fan-curve="110@0.1 84@0.25" collar="4 in"');
  for (let count = 0; session.asking() && count < patience; count += 1) said = await session.say("don't know");
  const unknownDuct = said;
  await session.say('duct duct-run="14 ft 4 in flex; 2 x elbow 90; wall cap"');
  said = await session.say('plan');
  for (let count = 0; session.asking() && count < patience; count += 1) said = await session.say("don't know");
  expect(said).not.toBe(unknownDuct);
  expect(said).not.toContain('20 to 80 cfm');
  store.close();
});
