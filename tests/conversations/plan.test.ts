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
  expect(said).toContain('What is still unknown, and what knowing it is worth');
  // Stops come first, whatever part they are of.
  const weights = [...said.matchAll(/^(STOP|Caution|Advice|Fine):/gm)].map(([, weight]) => weight);
  expect(weights.lastIndexOf('STOP')).toBeLessThan(weights.indexOf('Advice'));
  store.close();
});
