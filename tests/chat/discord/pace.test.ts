import { describe, expect, it, onTestFinished } from 'vitest';
import { pace } from '#chat/discord/pace.ts';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { startBot } from './bot.ts';
import { question, quickly } from './stage.ts';

/** A clock that is moved by hand, in seconds. */
function watch() {
  let seconds = 0;
  return { now: () => seconds * 1000, wait: (more: number) => (seconds += more) };
}

/** How many of so many are taken. */
const takenOf = (many: number, take: () => { readonly taken: boolean }): number =>
  Array.from({ length: many }, take).filter(({ taken }) => taken).length;

describe('the pace of one person', () => {
  it('is so many in ten seconds, at once or spread out, and comes back as time goes on', () => {
    const { now, wait } = watch();
    const { take } = pace(20, now);
    expect(takenOf(30, () => take('ann'))).toBe(20);
    wait(5);
    expect(takenOf(30, () => take('ann'))).toBe(10);
    wait(60);
    expect(takenOf(30, () => take('ann'))).toBe(20);
    const steady = pace(20, now);
    const spread = takenOf(500, () => {
      wait(0.5);
      return steady.take('ann');
    });
    expect(spread).toBe(500);
  });

  it('is each person’s own', () => {
    const { take } = pace(1, watch().now);
    expect(['ann', 'ben', 'ann', 'ben'].map((who) => take(who).taken)).toEqual([true, true, false, false]);
  });

  it('says how long to wait, and whether that was said before', () => {
    const { now, wait } = watch();
    const { take } = pace(2, now);
    takenOf(2, () => take('ann'));
    expect(take('ann')).toEqual({ taken: false, seconds: 5, saidBefore: false });
    wait(4.5);
    expect(take('ann')).toEqual({ taken: false, seconds: 1, saidBefore: true });
    wait(0.5);
    expect(take('ann')).toEqual({ taken: true });
    expect(take('ann')).toMatchObject({ taken: false, saidBefore: false });
  });

  it('keeps a bounded number of people: those heard of longest ago start afresh', () => {
    const { take } = pace(1, watch().now);
    take('ann');
    for (let nth = 0; nth < 4999; nth += 1) take(`other ${nth}`);
    expect(take('ann').taken).toBe(false);
    for (let nth = 0; nth < 5000; nth += 1) take(`another ${nth}`);
    expect(take('ann').taken).toBe(true);
  });

  it('is not held where there is no limit', () => {
    const { take } = pace(0, watch().now);
    expect(takenOf(1000, () => take('ann'))).toBe(1000);
  });
});

async function hurriedScene() {
  const { now, wait } = watch();
  const standIn = await startStandIn();
  const bot = await startBot(standIn, { draw: quickly, pace: pace(3, now) });
  onTestFinished(async () => {
    await bot.stop();
    await standIn.close();
    expect(standIn.violations).toEqual([]);
    expect(bot.logged).toEqual([]);
  });
  return { standIn, bot, wait };
}

describe('somebody who hurries', () => {
  it('is told so once in a kind sentence, nothing of it is done, and others go on', async () => {
    const { standIn, bot, wait } = await hurriedScene();
    const [ann, ben] = [standIn.user({ name: 'Ann' }), standIn.user({ name: 'Ben' })];
    const asked = await ann.slash('duct', { 'fan-curve': '110', collar: '4 in' });
    const once = await ann.press(asked, '10 ft 4 in flex');
    const twice = await ann.press(once, 'Elbow 90°');
    const told = await ann.press(twice, 'Elbow 90°');
    expect(told.ephemeral).toBe(true);
    expect(told.content).toBe(
      'That was more than 3 in 10 seconds, so the last was not taken. Wait 4 seconds, then do it once more.',
    );
    // The next press of the same hurry is acknowledged, so that it does not look failed, and says nothing.
    const silent = ann.begin.press(twice, 'Elbow 90°');
    await silent.acknowledgement();
    expect(ann.messages().filter(({ ephemeral }) => ephemeral)).toHaveLength(1);
    // A command always has to be answered with something.
    expect((await ann.slash('help')).content).toContain('That was more than 3 in 10 seconds');
    expect(question(ann.look(asked) ?? asked)).toContain('So far: 10 ft 4 in flex; elbow 90.');
    expect((await ben.slash('help')).text).toContain('Commands');
    expect(bot.store.scoped(standIn.guild().id).factHistory(1)).toHaveLength(2);

    wait(4);
    const on = await ann.press(twice, 'Wall cap (end)');
    expect(on.content).toContain('10 ft 4 in flex; elbow 90; wall cap');
  });

  it('has no suggestions while typing too fast, and may still send', async () => {
    const { standIn } = await hurriedScene();
    const ann = standIn.user({ name: 'Ann' });
    for (let nth = 0; nth < 3; nth += 1) {
      expect(await ann.autocomplete('size', 'room-length', '8')).not.toEqual([]);
    }
    expect(await ann.autocomplete('size', 'room-length', '8 f')).toEqual([]);
    expect((await ann.slash('size', { 'room-length': '8 ft' })).content).toContain('How wide');
  });
});
