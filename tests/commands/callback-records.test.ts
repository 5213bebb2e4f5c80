import { describe, expect, it } from 'vitest';
import { recallFor } from '#chat/answers.ts';
import { oneShot } from '#chat/one-shot.ts';
import { terminalSession } from '#chat/terminal/session.ts';
import callback from '#commands/callback.ts';
import { airflow } from '#quantity/kinds.ts';
import { answer } from '../store/workbench.ts';
import { walkedHouse } from './walked-house.ts';

const day = 24 * 60;
type House = ReturnType<typeof walkedHouse>;

const asked = ({ store }: House, ...words: string[]) =>
  oneShot(callback, words, { units: 'inch-pound', recall: recallFor(store, 1, callback) }).reply;
const told = (house: House, id: string, ...words: string[]) =>
  asked(house, ...words)?.findings.find((finding) => finding.id === id);
const checks = (house: House, ...words: string[]) =>
  asked(house, ...words)?.findings.flatMap(({ check }) => check ?? []) ?? [];

describe('a callback on a job whose swap was walked', () => {
  it('starts from what was recorded then, and says so', () => {
    const house = walkedHouse();
    house.later(60 * day);
    const then = told(house, 'at-the-swap', 'seen=weak');
    expect(then?.says).toMatch(/^At the swap, March 1, 2027: \d+ cfm measured at the grille/);
    expect(then?.value?.number).toBeGreaterThan(0);
  });

  it('is a fresh swap for 30 days and an old one after', () => {
    const house = walkedHouse();
    const job = () => asked(house, 'seen=weak')?.tables?.[0]?.rows.find(([what]) => what === 'job')?.[1];
    house.later(day);
    expect(job()).toMatch(/last 30 days/);
    house.later(40 * day);
    expect(job()).toBeUndefined();
  });

  it('holds the airflow now against the airflow then', () => {
    const house = walkedHouse();
    house.later(90 * day);
    const then = told(house, 'at-the-swap', 'seen=weak')?.value?.number ?? 0;
    const now = (share: number) =>
      `measured-airflow=${airflow.showShort((then * share) as Parameters<typeof airflow.showShort>[0], 'inch-pound')}`;
    expect(checks(house, 'seen=weak', now(0.4))).toContain('flow-fell');
    expect(asked(house, 'seen=weak', now(0.4))?.findings.find(({ check }) => check === 'flow-fell')?.says).toMatch(
      /cfm measured at the grille, .* measured at the swap/,
    );
  });

  it('takes what was measured before the swap for then, and what was measured after for now', () => {
    const house = walkedHouse();
    const { store } = house;
    store.addFact(1, {
      ...answer('measured-airflow', '20 cfm', { who: 'lead' }),
      at: new Date('2027-02-20T12:00:00Z'),
    });
    house.later(90 * day);
    expect(checks(house, 'seen=weak')).not.toContain('flow-low');
    store.addFact(1, answer('measured-airflow', '20 cfm', { who: 'lead' }));
    expect(checks(house, 'seen=weak')).toContain('flow-low');
  });

  it('says nothing of a swap where none was walked as far as the tests', () => {
    const house = walkedHouse({ until: 'power-on' });
    expect(told(house, 'at-the-swap', 'seen=weak')).toBeUndefined();
  });
});

describe('one callback after another on the same job', () => {
  const session = ({ store }: House) =>
    terminalSession({
      store,
      commands: [callback],
      who: 'office',
      paper: { width: 100, colour: false },
      drawn: async () => undefined,
    });

  it('a closed one is told as closed, and says nothing of the next', async () => {
    const house = walkedHouse();
    house.later(40 * day);
    const talk = session(house);
    await talk.say('callback complaint="it rattles"');
    const closed = await talk.say('/callback confirmed-cause=grille what-fixed-it="spring seated"');
    expect(closed).toMatch(/Closed: Grille loose, or its spring not seated\./);
    expect(closed).toMatch(/What fixed it: spring seated\./);
    expect(talk.asking()).toBe(false);
    house.later(90 * day);
    const again = await talk.say('/callback complaint="water drips when it rains"');
    expect(again).toMatch(/I understood: dripping that follows rain or thaw\./);
    expect(again).not.toMatch(/rattle|Closed/);
  });

  it('a proof that the box is dead does not keep', () => {
    const house = walkedHouse();
    house.later(10 * day);
    const { store } = house;
    const proven = () => recallFor(store, 1, callback)(callback.takes.find(({ id }) => id === 'dead-proven') as never);
    store.addFact(1, answer('dead-proven', 'yes', { who: 'lead' }));
    expect(proven()?.value).toBe('yes');
    house.later(day);
    expect(proven()).toBeUndefined();
  });
});

it('skipping everything ends with what to do while the dangers among it are not known', async () => {
  const house = walkedHouse({ until: 'power-on' });
  const talk = terminalSession({
    store: house.store,
    commands: [callback],
    who: 'office',
    paper: { width: 100, colour: false },
    drawn: async () => undefined,
  });
  let said = await talk.say('callback');
  for (let turn = 0; turn < 60 && talk.asking(); turn += 1) said = await talk.say("don't know");
  expect(talk.asking()).toBe(false);
  expect(said).toMatch(/Stop\. Find out first: a hot or burning smell;[\s\S]*something\s+tripping/);
  expect(said).toMatch(/water dripping from the fan: could not be checked/);
});
