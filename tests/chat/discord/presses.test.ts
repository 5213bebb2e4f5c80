import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { startBot } from './bot.ts';
import { answer, labels, question, quickly, stage } from './stage.ts';

const play = stage();

const room = { 'room-length': '8 ft', 'room-width': '5 ft' };
const wholeRoom = { ...room, 'ceiling-height': '8 ft', fixtures: 'none', running: 'on-demand' };

describe('somebody else’s question', () => {
  it('is explained to whoever presses, and left as it is', async () => {
    const { ann, ben } = play.crew();
    const asked = await ann.slash('size', room);
    for (const label of labels(asked)) {
      const said = await ben.press(asked, label);
      expect(said.ephemeral).toBe(true);
      expect(said.content).toBe(
        `This is <@${ann.id}>’s to answer. Use /size for one of your own; the answers so far carry over.`,
      );
    }
    expect(ann.look(asked)?.content).toBe(asked.content);
    const own = await ben.slash('size');
    expect(question(own)).toBe(question(asked));
  });

  it('cannot be changed afterwards by them either', async () => {
    const { ann, ben } = play.crew();
    const reply = await ann.slash('size', wholeRoom);
    const said = await ben.pick(reply, 'Change an answer', ['Room length']);
    expect(said.ephemeral).toBe(true);
    expect(ann.look(reply)?.text).toBe(reply.text);
  });
});

describe('a stale button', () => {
  it('says so and shows where things stand, pressed twice or late', async () => {
    const { ann } = play.crew();
    const run = await ann.slash('duct', { 'fan-curve': '110', collar: '4 in' });
    const once = ann.begin.press(run, '10 ft 4 in flex');
    const twice = ann.begin.press(run, '10 ft 4 in flex');
    await once.answer();
    const now = await twice.answer();
    expect(now.content).toContain('That was an earlier step. Here is where it stands.');
    expect(question(now)).toContain('So far: 10 ft 4 in flex. What comes next?');
    expect(now.id).toBe(run.id);
  });

  it('is a form sent late, too: nothing of it is noted', async () => {
    const { ann, guild } = play.crew();
    const first = await ann.slash('size');
    const form = await ann.pressExpectingForm(first, 'Answer');
    await ann.press(first, "Don't know");
    const late = await ann.submit(form, room);
    expect(late.content).toContain('That was an earlier step.');
    expect(play.bot.store.scoped(guild.id).newestFacts(1).get('room-width')).toBeUndefined();
  });

  it('of a job that was closed meanwhile says so', async () => {
    const { ann } = play.crew();
    const asked = await ann.slash('size', room);
    await ann.slash('job close');
    const said = await answer(ann, asked, { 'ceiling-height': '8 ft' });
    expect(said.content).toContain('Job 1 is closed, so nothing was noted.');
    const reply = await ann.slash('size', wholeRoom);
    await ann.slash('job close');
    const next = await ann.press(reply, 'What will the fan deliver?');
    expect(next).toMatchObject({ ephemeral: true, content: 'Job 2 is closed. /job open 2 opens it again.' });
  });
});

describe('a press that was made up', () => {
  const outOfDate = 'This button is out of date. Start again with a command such as /duct.';
  const gone = 'This question is no longer open. Start again with a command such as /duct.';
  const idOf = (customId: string | undefined) => customId?.split(':')[2] ?? '';

  it.each([
    'made-up',
    '',
    'v0:answer:0123456789:0',
    'v1:delete:0123456789:0',
    'v1:answer:../../etc:0',
    'v1:answer:0123456789:-1',
    "v1:answer:0123456789:0:0' OR 1=1",
    'v1:answer:0123456789:0:0:0',
    `v1:answer:0123456789:${'9'.repeat(60)}`,
    'v1:start:duct',
    '{"act":"answer"}',
  ])('%j is out of date', async (customId) => {
    const { ann } = play.crew();
    const asked = await ann.slash('size', room);
    expect((await ann.pressRaw(customId, asked)).content).toBe(outOfDate);
    expect((await ann.pressRaw(customId, asked, ['x'])).content).toBe(outOfDate);
  });

  it('names a talk that is not there', async () => {
    const { ann } = play.crew();
    const asked = await ann.slash('size', room);
    for (const act of ['answer', 'back', 'why', 'not-known', 'working', 'everything', 'start', 'form']) {
      expect((await ann.pressRaw(`v1:${act}:0123456789:0:0`, asked)).content).toBe(gone);
    }
  });

  it('is a choice, an answer or a command that is not offered', async () => {
    const { ann } = play.crew();
    const asked = await ann.slash('duct', { 'fan-curve': '110', collar: '4 in' });
    const talk = idOf(asked.buttons[0]?.customId);
    for (const choice of ['99', 'a', '1e3']) {
      const now = await ann.pressRaw(`v1:answer:${talk}:0:${choice}`, asked);
      expect(now.content).toContain('That choice is not among the ones offered now.');
      expect(question(now)).toBe(question(asked));
    }
    const changed = await ann.pressRaw(`v1:change:${talk}:0`, asked, ['constructor']);
    expect(changed.content).toContain('There is no such answer here.');
    const started = await ann.pressRaw(`v1:start:${talk}:0:constructor`, asked);
    expect(started).toMatchObject({ ephemeral: true });
    expect(started.content).toContain('This command is no longer here.');
    const picked = await ann.pressRaw(`v1:answer:${talk}:0:0`, asked, ['x']);
    expect(picked.content).toBe(outOfDate);
  });

  it('picks what no menu offers: it is read like anything typed', async () => {
    const { ann } = play.crew();
    const asked = await ann.slash('size', { ...room, 'ceiling-height': '8 ft' });
    const talk = idOf(asked.buttons[0]?.customId);
    const now = await ann.pressRaw(`v1:pick:${talk}:0`, asked, ['__proto__', 'sofa']);
    expect(now.content).toContain('did not fit. Name any of');
  });

  it('comes from another server: there is nothing of that name there', async () => {
    const { ann } = play.crew();
    const { ann: stranger } = play.crew();
    const asked = await ann.slash('size', room);
    const theirs = await stranger.slash('size');
    for (const customId of asked.buttons.map((button) => button.customId ?? '')) {
      expect((await stranger.pressRaw(customId, theirs)).content).toBe(gone);
    }
    const reply = await ann.slash('size', wholeRoom);
    for (const customId of reply.buttons.map((button) => button.customId ?? '')) {
      expect((await stranger.pressRaw(customId, theirs)).content).toBe(gone);
    }
    expect((await stranger.pressRaw(reply.menus[0]?.customId ?? '', theirs, ['room-length'])).content).toBe(gone);
    expect(ann.look(asked)?.content).toBe(asked.content);
  });
});

describe('what the platform tells twice', () => {
  it('is done once', async () => {
    const { ann, guild, channel } = play.crew();
    const asked = await ann.slash('size', room, { twice: true });
    const next = await ann.press(asked, "Don't know", { twice: true });
    expect(question(next)).toContain('What stands in the room?');
    await ann.slash('job list');
    expect(play.standIn.messages(channel)).toHaveLength(2);
    expect(ann.look(asked)?.content).not.toContain('That was an earlier step');
    const kept = play.bot.store.scoped(guild.id);
    expect(kept.factHistory(1).map(({ fact }) => fact)).toEqual(['room-length', 'room-width', 'ceiling-height']);
  });
});

describe('a restart in the middle', () => {
  it('loses nothing: the old message’s buttons, menus and forms go on', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    const file = join(folder, 'records.sqlite');
    const standIn = await startStandIn();
    onTestFinished(() => standIn.close());
    const ann = standIn.user();
    const first = await startBot(standIn, { file, draw: quickly });
    const run = await ann.slash('duct', { 'fan-curve': '110', collar: '4 in' });
    const begun = await ann.press(run, '10 ft 4 in flex');
    const form = await ann.pressExpectingForm(begun, 'Type it');
    const size = await ann.slash('size', room);
    await first.stop();

    const second = await startBot(standIn, { file, draw: quickly });
    onTestFinished(() => second.stop());
    const elbows = await ann.submit(form, { 'duct-run': '2 x elbow 90' });
    expect(question(elbows)).toContain('So far: 10 ft 4 in flex; 2 x elbow 90.');
    const needed = await ann.press(elbows, 'Wall cap (end)');
    expect(needed.content).toContain(
      'Noted. Duct from fan to outdoors, part by part: 10 ft 4 in flex; 2 x elbow 90; wall cap',
    );
    const undone = await ann.press(needed, 'Back');
    expect(undone.content).toContain('Took back: Duct from fan to outdoors, part by part.');
    const fixtures = await answer(ann, size, { 'ceiling-height': '8 ft' });
    const running = await ann.pick(fixtures, 'Fixtures in the room: pick all that fit', ['None of these']);
    const reply = await ann.press(running, 'When the room is used');
    expect(reply.embeds[0]?.title).toBe('This room needs 50 cfm (23.6 L/s).');
    expect(standIn.violations).toEqual([]);
    expect([...first.logged, ...second.logged]).toEqual([]);
  });
});
