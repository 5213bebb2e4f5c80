import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { terminalSession } from '#chat/terminal/session.ts';
import crew from '#commands/crew.ts';
import job from '#commands/job.ts';
import swap from '#commands/swap.ts';
import { openStore, type ScopedStore } from '#store/store.ts';
import { jpeg } from '../support/photographs.ts';
import { done, wordsOfReply } from './at-a-desk.ts';

const commands = [swap, crew, job];

function sessionOn(store: ScopedStore) {
  const session = terminalSession({
    store,
    commands,
    who: 'van',
    paper: { width: 96, colour: false },
    drawn: async () => undefined,
  });
  return async (...lines: readonly string[]): Promise<string> => {
    let said = '';
    for (const line of lines) said = await session.say(line);
    return said;
  };
}

const hired = [
  'crew add Ana as=lead',
  'crew qualify Ana what=electrically-qualified number=EQ-1 expires=2099-01-01',
  'crew add Ben as=apprentice',
  'crew add Gus as=office',
];

function records() {
  const store = openStore(':memory:');
  onTestFinished(() => store.close());
  return store.scoped('test');
}

/** The path of a photo. */
function aPhoto(): string {
  const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const path = join(folder, 'room.jpg');
  writeFileSync(path, jpeg());
  return path;
}

/** A shop list with everything but the lead's look at it done by the apprentice. */
const loaded = ['swap done step=B01 value=same --as Ben', 'swap done step=B02 value=yes --as Ben'];

describe('a list in the terminal, two people at one keyboard', () => {
  it('starts from what nobody knows as the dangerous answer', async () => {
    const say = sessionOn(records());
    const short = await say(...hired, 'swap start list=swap --as Ben');
    expect(short).toMatch(/Fan swap, job 1: \d+ steps, \d+ of them holds/);
    expect(short).toContain('count as the dangerous answer');
    expect(short).toContain('Taken as before 1978.');
    expect(short).toMatch(/one\s+padlock for each person/);
  });

  it('takes a word that lightens the list only from whoever may say it', async () => {
    const store = records();
    const say = sessionOn(store);
    await say(...hired);
    const steps = (text: string) => Number(/of (\d+)/.exec(text)?.[1]);
    await say('swap start --as Ben');
    const before = steps(await say('swap status --as Ben'));
    const reported = await say('swap fact fact=roof-work is=none --as Ben');
    expect(reported).toContain('It counts once a lead confirms it.');
    expect(steps(await say('swap status --as Ben'))).toBe(before);
    await say('swap fact fact=roof-work is=none --as Ana');
    expect(steps(await say('swap status --as Ben'))).toBeLessThan(before);
  });

  it('lets nobody in who is not of the crew, and takes no standing from what is typed', async () => {
    const say = sessionOn(records());
    await say(...hired, 'swap start --as Ben');
    expect(await say('swap next --as Zoe')).toContain('Nobody of that name is in the crew.');
    expect(await say('swap note says="hello" ')).toContain('The crew does not know this person.');
    expect(await say('swap join --as Gus')).toContain('Only people who work on jobs join one.');
  });

  it('records an answer line by line, by the number of a choice', async () => {
    const say = sessionOn(records());
    const asked = await say(...hired, 'swap start --as Ben', '1', '1');
    expect(asked).toContain('Built?');
    const more = await say('3', '1', 'a couple, one with asthma');
    expect(more).toContain('Done: House age (S01).');
    expect(await say('swap next step=S01 --as Ben')).toContain('Built: 1981 or later');
  });

  it('keeps the apprentice from signing, whatever is typed, and keeps everything behind a hold shut', async () => {
    const store = records();
    const say = sessionOn(store);
    await say(...hired, 'swap start list=before-leaving-the-shop --as Ben');
    const refused = await say('swap sign step=B09 confirm=yes --as Ben');
    expect(refused).toContain('An apprentice cannot record this. It takes a lead.');
    expect(await say('swap override step=B09 reason="in a hurry" --as Ben')).toContain('cannot be passed over');
    await say(...loaded);
    expect(await say('swap status --as Ben')).toContain('Truck checked (B09)');
    await say('swap start list=swap --as Ana');
    expect(await say('swap done step=C01 value="a.jpg" --as Ana')).toContain('There is no file “a.jpg”.');
    expect(await say(`swap done step=C01 value="${aPhoto()}" --as Ana`)).toContain('comes first.');
    expect(store.walkEvents(1, 'swap').some(({ step }) => step === 'clean-up')).toBe(false);
  });

  it('shows what is signed before it is signed', async () => {
    const say = sessionOn(records());
    await say(...hired, 'swap start list=swap --as Ana');
    const shown = await say('swap sign step=S09b --as Ana');
    expect(shown).toContain('This is what you sign for.');
    expect(shown).toContain('Bath zone appliance (S09b)');
  });

  it('does the same press once, and says so', () => {
    const store = records();
    const speaking = { store, commands };
    done(crew, 'add', { person: 'Ben', as: 'apprentice' }, speaking);
    const started = done(swap, 'start', { list: 'before-leaving-the-shop', as: 'Ben' }, speaking);
    const first = done(swap, 'next', started.presses?.[0]?.given ?? {}, speaking);
    const press = first.presses?.[0];
    const once = done(swap, press?.action ?? '', press?.given ?? {}, speaking);
    const kept = store.walkEvents(1).length;
    const twice = done(swap, press?.action ?? '', press?.given ?? {}, speaking);
    expect(wordsOfReply(once)).toContain('Done: ');
    expect(wordsOfReply(twice)).toContain('That is recorded already. It counts once.');
    expect(store.walkEvents(1)).toHaveLength(kept);
  });

  it('takes an answer back, and opens the step again', async () => {
    const say = sessionOn(records());
    await say(...hired, 'swap start list=before-leaving-the-shop --as Ben', 'swap done step=B02 value=yes --as Ben');
    expect(await say('swap status --as Ben')).toContain('] 1 of ');
    expect(await say('swap back --as Ben')).toContain('Taken back: Duct on truck (B02)');
    expect(await say('swap status --as Ben')).toContain('] 0 of ');
  });

  it('says in one sentence what a value should have been', async () => {
    const say = sessionOn(records());
    await say(...hired, 'swap start list=before-leaving-the-shop --as Ben');
    expect(await say('swap done step=B03 value="12 bananas" --as Ben')).toMatch(/^.+: .+\.$/s);
    expect(await say('swap done step=B99 value=1 --as Ben')).toContain('That step is not on this list.');
    const low = await say('swap done step=B03 value="12 V" --as Ben');
    expect(low).toContain('Recorded, and the step stays open.');
    expect(low).toMatch(/a live point reads \d+ V to \d+ V/);
  });

  it('takes the time from the clock of the records', async () => {
    let now = new Date('2027-03-01T13:00:00Z');
    const store = openStore(':memory:', { now: () => now });
    onTestFinished(() => store.close());
    const say = sessionOn(store.scoped('test'));
    await say(...hired, 'swap start list=before-leaving-the-shop --as Ben');
    now = new Date('2027-03-01T13:20:00Z');
    await say('swap done step=B02 value=yes --as Ben');
    now = new Date('2027-03-01T16:20:00Z');
    await say('swap note says="back from lunch" --as Ben');
    expect(await say('swap status --as Ben')).toContain('20 min at work, 3 h 0 min away');
    expect(await say('swap done step=B01 value=same at=2027-03-01T16:40Z --as Ben')).toContain(
      'The time given lies ahead.',
    );
  });

  it('lets a lead alone say that somebody else has left, and nobody else is taken off', async () => {
    const say = sessionOn(records());
    await say(...hired, 'crew add Cy as=apprentice', 'swap start --as Ben', 'swap join --as Cy');
    const here = async () => /On the job +(.+)/.exec(await say('swap status --as Ana'))?.[1];
    expect(await say('swap leave Cy --as Ben')).toBe('Only a lead records that somebody else has left.');
    expect(await say('swap leave person=Zoe --as Ana')).toContain('Nobody of that name is in the crew.');
    expect(await say('swap leave Gus --as Ana')).toBe('Nobody of that name is on this job.');
    expect(await here()).toBe('Ben, Cy');
    expect(await say('swap leave Cy --as Ana')).toContain('Cy is off the job.');
    expect(await here()).toBe('Ben');
    expect(await say('swap leave --as Ben')).toContain('Off the job.');
    expect(await here()).toBe('nobody has joined');
  });

  it('asks the few things that decide the list, and counts what lightens it only from a lead', async () => {
    const say = sessionOn(records());
    await say(...hired, 'swap start --as Ben');
    const steps = async () => Number(/of (\d+)/.exec(await say('swap status --as Ana'))?.[1]);
    const before = await steps();
    const asked = await say('swap known --as Ben');
    expect(asked).toContain('How can the fan be reached?');
    const told = await say('1', '3', '-', '1', '-');
    expect(told).toMatch(
      /Reported, and counts once a lead confirms it: How can the fan be reached\? From\s+the\s+attic/,
    );
    expect(told).toMatch(/Reported, and counts once a lead confirms it: When was the house built\? 1981 or\s+later/);
    expect(await steps()).toBe(before);
    expect(await say('swap status --as Ben')).toMatch(/Ben reported: When was the house built\? 1981 or later\./);
    expect(await say('swap known --as Ana', '-', '3', '-', '-', '-')).toContain(
      'Recorded: When was the house built? 1981 or later',
    );
    expect(await steps()).toBeLessThan(before);
  });

  it('notes where somebody is stuck, and says who can help', async () => {
    const say = sessionOn(records());
    await say(...hired, 'swap start --as Ben');
    expect(await say('swap stuck step=S06 --as Ben')).toContain('What keeps you at Old airflow (S06)?');
    const helped = await say('the meter is in the other van');
    expect(helped).toMatch(/Ask a lead: Ana\. A lead may pass it over\s+with a reason/);
    expect(await say('swap stuck says="no key" step=S11 --as Ben')).toMatch(
      /It takes a lead\. It cannot be\s+passed over/,
    );
    const status = await say('swap status --as Ana');
    expect(status).toContain('Old airflow (S06): Stuck: the meter is in the other van (Ben)');
  });

  it('shows each what the other did last, and a lead the open holds of every job', async () => {
    const say = sessionOn(records());
    await say(...hired, 'swap start list=before-leaving-the-shop --as Ben', ...loaded);
    const first = await say('swap status --as Ana');
    expect(first).toMatch(/Done last[\s\S]+Duct on truck \(B02\) +Ben[\s\S]+Unit on truck \(B01\) +Ben/);
    await say('job open "12 Oak St"', 'swap start --as Ben');
    const both = await say('swap status --as Ana');
    expect(both).toMatch(/Open holds of all jobs[\s\S]+1 +Before leaving the shop +Truck checked \(B09\) +not reached/);
    expect(both).toMatch(/2, 12 Oak St +Fan swap +Bath zone appliance \(S09b\) +can be signed/);
    expect(await say('swap status --as Ben')).not.toContain('Open holds of all jobs');
  });

  it('lets a lead take a step passed over back again', async () => {
    const say = sessionOn(records());
    await say(...hired, 'swap start --as Ben', 'swap override step=S02 reason="no hatch seen" --as Ana');
    expect(await say('swap status --as Ana')).toContain('Way in (S02), passed over');
    expect(await say('swap back --as Ana')).toContain('Taken back: Way in (S02).');
  });

  it('tells an apprentice at once that a hold is not theirs', async () => {
    const say = sessionOn(records());
    await say(...hired, 'swap start --as Ben');
    const shown = await say('swap sign step=S09b --as Ben');
    expect(shown).toContain('You cannot sign this: it takes a lead.');
    expect(shown).not.toContain('This is what you sign for.');
  });

  it('says what to load, or what the sheet lacks for it', async () => {
    const say = sessionOn(records());
    const start = await say(...hired, 'swap start --as Ben');
    expect(start).toMatch(/Parts not listed: the sheet lacks duct.*\/parts\s+asks\s+for it/s);
  });

  it('pauses, and goes on', async () => {
    const say = sessionOn(records());
    await say(...hired, 'swap start list=before-leaving-the-shop --as Ben', 'swap pause --as Ben');
    expect(await say('swap done step=B02 value=yes --as Ben')).toContain('The job is paused by Ben. Resume it first.');
    expect(await say('swap resume --as Ben', 'swap done step=B02 value=yes --as Ben')).toContain('Done: Duct on truck');
  });

  it('names each box to be opened, and asks a dead test of each', async () => {
    const say = sessionOn(records());
    await say(...hired, 'swap start --as Ana', 'swap box name="switch by the door" kind=switch-box --as Ana');
    expect(await say('swap next step="E06 switch by the door" --as Ana')).toContain(
      'Sign dead (E06), switch by the door',
    );
  });

  it('gives a sheet for the attic that counts nothing by itself', () => {
    const store = records();
    const speaking = { store, commands };
    done(crew, 'add', { person: 'Ben', as: 'apprentice' }, speaking);
    done(swap, 'start', { as: 'Ben' }, speaking);
    const sheet = done(swap, 'carry', { stage: 'duct', as: 'Ben' }, speaking);
    expect(sheet.headline).toMatch(/^Carry sheet: \d+ steps left\.$/);
    expect(sheet.papers?.[0]?.name).toBe('carry-job-1.pdf');
    expect(wordsOfReply(sheet)).toContain('Nothing on paper counts until it is entered');
  });

  it('loses nothing in a restart', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    const file = join(folder, 'records.sqlite');
    const first = openStore(file);
    const before = await sessionOn(first.scoped('test'))(
      ...hired,
      'swap start list=before-leaving-the-shop --as Ben',
      ...loaded,
      'swap status --as Ben',
    );
    first.close();
    const second = openStore(file);
    onTestFinished(() => second.close());
    const after = await sessionOn(second.scoped('test'))('swap status --as Ben');
    expect(before).toContain('] 2 of ');
    expect(after).toBe(before);
  });
});
