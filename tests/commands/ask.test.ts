import { Writable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import type { Start } from '#chat/command.ts';
import { deskFor } from '#chat/desk.ts';
import { answerOnce } from '#chat/terminal/once.ts';
import { terminalSession } from '#chat/terminal/session.ts';
import ask from '#commands/ask.ts';
import { commands } from '#commands/index.ts';
import type { Reply } from '#findings/reply.ts';
import { openStore } from '#store/store.ts';

const [action] = ask.actions;
if (!action) throw new Error('ask does nothing');

/** What the desk makes of a line. Plain words need no records, so there are none. */
const asked = (text: string, as?: string): Reply | Start =>
  action.act(
    deskFor({
      store: () => {
        throw new Error('the records were opened');
      },
      speaker: { channel: 'terminal', who: 'ann' },
      commands,
      mayManage: true,
    }),
    { text, ...(as === undefined ? {} : { as }) },
  );

function session() {
  const store = openStore(':memory:');
  return terminalSession({
    store: store.scoped('test'),
    commands,
    who: 'apprentice',
    paper: { width: 100, colour: false },
    drawn: async () => undefined,
  });
}

/** One line after the program's name, and what it prints. */
async function once(...words: readonly string[]): Promise<{ code: number; text: string }> {
  let text = '';
  const output = new Writable({
    write(chunk, _, done) {
      text += String(chunk);
      done();
    },
  });
  const settings = { FANWRIGHT_DB: ':memory:' };
  const code = await answerOnce(words, { commands, settings, who: 'ann', environment: {}, output });
  return { code, text };
}

const duct = '110 fan 4in flex 20 ft 3 elbows roof jack what do I get';

describe('a question in plain words', () => {
  it('begins the command it means, and says what was understood', () => {
    expect(asked(duct)).toMatchObject({
      start: 'duct',
      given: { 'fan-curve': '110 cfm', 'duct-run': '20 ft 4 in flex; 3 x elbow 90; roof cap' },
      notes: ['Read as duct: fan 110 cfm; duct 20 ft 4 in flex, 3 x elbow 90, roof cap.'],
    });
  });

  it('takes bare numbers in the crew’s units where the records are open', () => {
    const store = openStore(':memory:').scoped('test');
    const desk = { store: () => store, speaker: { channel: 'terminal', who: 'ann' }, commands, mayManage: true };
    const told = () =>
      action.act(deskFor({ ...desk, recordsOpen: () => true }), { text: 'size 4 x 3, ceiling 2.4, toilet' });
    expect(told()).toMatchObject({ given: { 'room-length': '4 ft', 'room-width': '3 ft' } });
    store.saveSetting('units', { value: 'metric', who: 'ann' });
    expect(told()).toMatchObject({ given: { 'room-length': '4 m', 'room-width': '3 m', 'ceiling-height': '2.4 m' } });
    const cold = action.act(deskFor({ ...desk, recordsOpen: () => true }), {
      text: 'will it sweat, attic -5 degrees, 20 ft duct?',
    });
    expect(cold).toMatchObject({ start: 'sweat', given: { 'attic-temperature': '-5 F' } });
  });

  it('names the numbers it could not place', () => {
    expect(asked(`lot 7: ${duct}`)).toMatchObject({
      notes: [expect.stringMatching(/^Read as duct/), 'I could not place 7. Nothing was made of it.'],
    });
  });

  it('names a number that was understood but that its question refuses', () => {
    const told = asked('8x10 bath 900 ft ceiling shower and toilet what cfm');
    expect(told).toMatchObject({ start: 'size', given: { 'room-length': '8 ft' } });
    expect('start' in told && told.given).not.toHaveProperty('ceiling-height');
    expect('start' in told && told.notes.join(' ')).toContain('I could not place 900.');
  });

  it('offers the two nearest readings where both would fit', () => {
    const told = asked('mirror fogs how long to run it');
    expect(told).toMatchObject({
      headline: expect.stringMatching(/^This can be read as \w+ or as \w+\. Say which/),
      presses: [{ command: 'ask' }, { command: 'ask' }],
    });
  });

  it('is read as what was named, where somebody names it', () => {
    expect(asked('mirror fogs how long to run it', 'callback')).toMatchObject({ start: 'callback' });
  });

  it.each([
    'what time does the supply house close on saturday',
    'can you text the homeowner I’m running 20 minutes late',
    'my truck won’t start',
    'the radio is too loud',
    'what is 17 times 4',
    'invoice 4471 is overdue by 30 days',
  ])('begins nothing with what is not about a bath fan: %s', (text) => {
    expect(asked(text)).not.toHaveProperty('start');
  });

  it('says so where nothing is understood', () => {
    expect(asked('good morning')).toMatchObject({
      refused: true,
      headline: expect.stringContaining('could not be read'),
    });
  });
});

describe('in a terminal', () => {
  it('a line that is no command is read, and only what is missing is asked for', async () => {
    const talk = session();
    const said = await talk.say(duct);
    expect(said).toContain('Read as duct: fan 110 cfm; duct 20 ft 4 in flex, 3 x elbow 90, roof cap.');
    expect(said).toContain('outlet collar?');
    let answer = '';
    for (const line of ['4 in', 'don’t know', 'don’t know', 'don’t know', 'don’t know', 'don’t know']) {
      if (talk.asking()) answer = await talk.say(line);
    }
    expect(talk.asking()).toBe(false);
    expect(answer).toMatch(/About \d+ cfm/);
  });

  it('a slip in the name of a command is still told as one', async () => {
    expect(await session().say('dcut')).toBe('There is no “dcut” command. Did you mean duct?');
    expect(await session().say('dcut fan-curve=110')).toBe('There is no “dcut” command. Did you mean duct?');
  });

  it('an answer stays an answer while a question stands', async () => {
    const talk = session();
    await talk.say('duct fan-curve=110 collar="4 in"');
    expect(await talk.say('20 ft 4 in flex; 3 x elbow 90; roof cap')).not.toContain('Read as');
  });

  it('the nearest readings can be picked by number', async () => {
    const talk = session();
    await talk.say('/ask mirror fogs how long to run it');
    expect(await talk.say('1')).toContain('Read as ');
  });
});

describe('in one line', () => {
  it('is answered at once, and says what it took for the collar nobody told of', async () => {
    const { code, text } = await once('ask', duct);
    const named = await once(
      'duct',
      'fan-curve=110',
      'collar=4 in',
      'duct-run=20 ft 4 in flex; 3 x elbow 90; roof cap',
    );
    expect(code).toBe(named.code);
    expect(text).toContain('Nobody said the fan’s collar: taken as 4 in');
    expect(text).toContain(named.text.trim().split('\n')[0] ?? '?');
  });

  it('gives the machine the status of the command that was read', async () => {
    const { code, text } = await once('ask', duct, '--json');
    expect([0, 3]).toContain(code);
    expect(JSON.parse(text)).toMatchObject({
      command: 'duct',
      status: code === 0 ? 'answered' : 'stopped',
      notes: [expect.stringMatching(/^Read as duct/), expect.stringMatching(/collar/)],
    });
  });

  it('is no answer while it may mean two things', async () => {
    expect(await once('ask', 'mirror fogs how long to run it')).toMatchObject({ code: 2 });
    expect(await once('ask', 'good morning')).toMatchObject({ code: 2 });
  });
});
