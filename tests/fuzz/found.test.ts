import { describe, expect, it, onTestFinished } from 'vitest';
import { terminalSession } from '#chat/terminal/session.ts';
import { commands } from '#commands/index.ts';
import { openStore } from '#store/store.ts';
import { stage } from '../chat/discord/stage.ts';
import { photo } from '../support/stand-in/uploads.ts';

/** What walking at random has found: each slip stays here by name. */

function keyboard(): (line: string) => Promise<string> {
  const store = openStore(':memory:');
  onTestFinished(() => store.close());
  const session = terminalSession({
    store: store.scoped('terminal'),
    commands,
    who: 'van',
    paper: { width: 87, colour: false },
    drawn: async () => undefined,
  });
  return async (line) => (await session.say(line)).replace(/\s+/g, ' ');
}

describe('words that every object knows', () => {
  it.each(['constructor', 'toString', 'valueOf', '__proto__', 'hasOwnProperty'])('%s is a word', async (word) => {
    const say = keyboard();
    expect(await say(`ask ${word}`)).toContain('That could not be read as a question about a bath fan.');
    expect(await say(`the ${word} hums`)).toMatch(/Type one of|could not be read|Read as|Did you mean/);
    expect(await say(`lookup ${word} duct`)).toMatch(/duct/i);
    expect(await say(`callback complaint="${word} hums"`)).toContain('I understood:');
  });
});

describe('a refusal says how to go on', () => {
  it.each(['stop', 'cancel', 'back', 'why', 'go on', 'working', 'change 3'])(
    'after “%s” where nothing is asked',
    async (line) => {
      const said = await keyboard()(line);
      expect(said).toMatch(/\b(Type|Ask)\b/);
      expect(said).not.toContain('Did you mean');
    },
  );

  it('where nothing is there or somebody else is waited for', async () => {
    const say = keyboard();
    expect(await say('fan demo what=take')).toContain('/fan demo puts some there.');
    await say('swap start list=callback-visit');
    expect(await say('swap next')).toContain('/swap status shows where the job stands.');
    expect(await say('crew forget person=Nobody')).toContain('Give the name as /crew show has it.');
  });

  it('where a file in the terminal is not there', async () => {
    const say = keyboard();
    expect(await say('fan import file=nowhere.csv')).toContain('There is no file “nowhere.csv”. Give its path.');
    expect(await say('job import json="[1"')).toContain('Use the file as /job export wrote it.');
  });
});

describe('in Discord', () => {
  const play = stage();
  const room = { 'room-length': '8 ft', 'room-width': '5 ft', 'ceiling-height': '8 ft', fixtures: 'none' };

  it('what is refused and told twice is refused once', async () => {
    const { ann } = play.crew();
    const reply = await ann.slash('size', { ...room, running: 'on-demand' });
    await ann.slash('job close');
    const refused = await ann.press(reply, 'What will the fan deliver?', { twice: true });
    expect(refused.content).toBe('Job 1 is closed. /job open 1 opens it again.');
    // What comes after it is answered after it.
    await ann.slash('help');
    expect(ann.messages().filter(({ ephemeral }) => ephemeral)).toHaveLength(1);
  });

  it('the working that waits for an answer says so, and what to press', async () => {
    const { ann } = play.crew();
    const reply = await ann.slash('size', { ...room, running: 'on-demand' });
    const working = reply.buttons.find(({ label }) => label === 'Show the working')?.customId ?? '';
    const changing = await ann.pick(reply, 'Change an answer', ['Room length']);
    expect((await ann.pressRaw(working, changing)).content).toContain('Answer the question, or press Back.');
  });

  it('what is no job is named so, and where to get one', async () => {
    const { ann } = play.crew();
    const said = await ann.slash('job import', { json: '[1' });
    expect(said).toMatchObject({ ephemeral: true, content: expect.stringContaining('/job export') });
    const file = { ...photo('job.json'), contentType: 'application/json' };
    expect((await ann.slash('job import', { file })).content).toContain('Save it as text or CSV UTF-8');
  });
});
