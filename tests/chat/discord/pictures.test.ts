import { setTimeout as delay } from 'node:timers/promises';
import { describe, expect, it, onTestFinished } from 'vitest';
import { chartPictures } from '#chat/discord/chart-pictures.ts';
import type { Chart } from '#findings/reply.ts';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { photo } from '../../support/stand-in/uploads.ts';
import { type BotOptions, startBot } from './bot.ts';
import { answer, question } from './stage.ts';

const chart = (title: string): Chart => ({
  title,
  alt: title,
  x: { label: 'x', min: 0, max: 1 },
  y: { label: 'y', min: 0, max: 1 },
  lines: [],
  bands: [],
  marks: [],
  levels: [],
});

/** A draughtsman who draws when told to, and is watched. */
function draughtsman() {
  const asked: {
    readonly title: string;
    readonly finish: (bytes: Uint8Array) => void;
    readonly fail: (error: Error) => void;
  }[] = [];
  return {
    asked,
    draw: ({ title }: Chart) =>
      new Promise<Uint8Array>((finish, fail) => {
        asked.push({ title, finish, fail });
      }),
  };
}

const picture = photo().bytes;

describe('charts', () => {
  it('alike are drawn once, at the same time or later', async () => {
    const { asked, draw } = draughtsman();
    const pictures = chartPictures(draw);
    const both = [pictures.of(chart('a')), pictures.of(chart('a'))].map((each) => each?.bytes);
    await expect.poll(() => asked.length).toBe(1);
    asked[0]?.finish(picture);
    expect(await Promise.all(both)).toEqual([picture, picture]);
    expect(await pictures.of(chart('a'))?.bytes).toBe(picture);
    expect(asked).toHaveLength(1);
  });

  it('are drawn one after another, in the order asked', async () => {
    const { asked, draw } = draughtsman();
    const pictures = chartPictures(draw);
    const drawings = ['a', 'b', 'c'].map((title) => pictures.of(chart(title)));
    expect(drawings.map((each) => each?.ahead)).toEqual([0, 1, 2]);
    for (const title of ['a', 'b', 'c']) {
      await expect.poll(() => asked.at(-1)?.title).toBe(title);
      asked.at(-1)?.finish(picture);
    }
    await Promise.all(drawings.map((each) => each?.bytes));
  });

  it('that cannot be drawn hold nobody up and may be tried again', async () => {
    const { asked, draw } = draughtsman();
    const pictures = chartPictures(draw);
    const first = pictures.of(chart('a'))?.bytes;
    const other = pictures.of(chart('b'))?.bytes;
    await expect.poll(() => asked.length).toBe(1);
    asked[0]?.fail(new Error('no ink'));
    await expect(first).rejects.toThrow('no ink');
    await expect.poll(() => asked.length).toBe(2);
    asked[1]?.finish(picture);
    await other;
    pictures.of(chart('a'));
    await expect.poll(() => asked.length).toBe(3);
  });

  it('are refused when too many wait, and only the latest are kept', async () => {
    const { asked, draw } = draughtsman();
    const pictures = chartPictures(draw, { waiting: 1, kept: 2 });
    const a = pictures.of(chart('a'))?.bytes;
    await expect.poll(() => asked.length).toBe(1);
    const b = pictures.of(chart('b'))?.bytes;
    expect(pictures.of(chart('c'))).toBeUndefined();
    expect(pictures.of(chart('a'))?.bytes).toBe(a);
    asked[0]?.finish(picture);
    await expect.poll(() => asked.length).toBe(2);
    asked[1]?.finish(picture);
    await b;
    const c = pictures.of(chart('c'))?.bytes;
    await expect.poll(() => asked.length).toBe(3);
    asked[2]?.finish(picture);
    await c;
    pictures.of(chart('b'));
    await expect.poll(() => asked.length).toBe(4);
    asked[3]?.finish(picture);
  });
});

const options = {
  'fan-curve': '96@0 84@0.1 66@0.25 0@0.5',
  collar: '4 in',
  'duct-run': '14 ft 4 in flex; wall cap',
  'airflow-needed': '50 cfm',
  'fan-settings': 'none',
  'rated-sones': '1.5',
};

async function scene(bot: BotOptions) {
  const standIn = await startStandIn();
  const ours = await startBot(standIn, bot);
  onTestFinished(async () => {
    await ours.stop();
    await standIn.close();
    expect(standIn.violations).toEqual([]);
  });
  return { standIn, bot: ours, ann: standIn.user(), ben: standIn.user({ name: 'Ben' }) };
}

describe('an answer with a chart', () => {
  it('that takes long is given without it, and the chart is put in when it is there', async () => {
    const { asked, draw } = draughtsman();
    const { ann, bot } = await scene({ draw, patience: 60 });
    const reply = await ann.slash('duct', options);
    expect(reply.content).toContain('The chart follows.');
    expect(reply.files).toEqual([]);
    expect(reply.embeds[0]?.title).toContain('will come out of this duct');
    asked[0]?.finish(picture);
    const whole = await ann.until(reply, ({ files }) => files.length === 1);
    expect(whole.content).not.toContain('The chart follows.');
    expect(whole.embeds[0]?.image?.url).toBe(whole.files[0]?.url);
    expect(whole.embeds[0]?.title).toBe(reply.embeds[0]?.title);
    expect(whole.buttons).toEqual(reply.buttons);
    expect(bot.logged).toEqual([]);
  });

  it('keeps the question that came up meanwhile: a late chart is not put over it', async () => {
    const { asked, draw } = draughtsman();
    const { ann } = await scene({ draw, patience: 30 });
    const reply = await ann.slash('duct', options);
    const reopened = await ann.pick(reply, 'Change an answer', ['Sones on the label']);
    asked[0]?.finish(picture);
    await delay(50);
    expect(ann.look(reply)?.content).toBe(reopened.content);
    expect(ann.look(reply)?.files).toEqual([]);
    const again = await ann.press(reopened, 'Back');
    expect(question(again)).toBe('');
    expect(again.files).toHaveLength(1);
  });

  it('is put into the message a form changed, too', async () => {
    const { asked, draw } = draughtsman();
    const { ann } = await scene({ draw, patience: 30 });
    const { 'rated-sones': _, ...rest } = options;
    const sones = await ann.slash('duct', rest);
    const reply = await answer(ann, sones, { 'rated-sones': '1.5' });
    expect(reply.id).toBe(sones.id);
    asked[0]?.finish(picture);
    const whole = await ann.until(reply, ({ files }) => files.length === 1);
    expect(whole.id).toBe(sones.id);
  });

  it('that cannot be drawn is still an answer, and the log says why', async () => {
    const { ann, bot } = await scene({ draw: () => Promise.reject(new Error('no ink')) });
    const reply = await ann.slash('duct', options);
    expect(reply.content).toContain('The chart is left out: it could not be drawn.');
    expect(reply.embeds[0]?.title).toContain('will come out of this duct');
    expect(bot.logged).toMatchObject([{ level: 'error', what: 'a chart could not be drawn', message: 'no ink' }]);
  });

  it('that fails late says so in its place', async () => {
    const { asked, draw } = draughtsman();
    const { ann, bot } = await scene({ draw, patience: 30 });
    const reply = await ann.slash('duct', options);
    asked[0]?.fail(new Error('no ink'));
    const told = await ann.until(reply, ({ content }) => content.includes('could not be drawn'));
    expect(told.embeds[0]?.title).toBe(reply.embeds[0]?.title);
    expect(bot.logged).toMatchObject([{ what: 'a chart could not be put in afterwards' }]);
  });

  it('goes without where files may not be attached, and says what to allow', async () => {
    const { asked, draw } = draughtsman();
    const { ann, standIn, bot } = await scene({ draw });
    standIn.withhold(standIn.channel(), ['AttachFiles']);
    const reply = await ann.slash('duct', options);
    expect(reply.content).toContain('The chart is left out. Allow this bot to attach files in this channel to see it.');
    expect(reply.files).toEqual([]);
    expect(asked).toEqual([]);
    expect(bot.logged).toEqual([]);
  });

  it('does not keep others waiting: they are answered while it is drawn', async () => {
    const { asked, draw } = draughtsman();
    const { ann, ben } = await scene({ draw, patience: 400 });
    const slow = ann.begin.slash('duct', options);
    const quick = ben.begin.slash('size', { 'room-length': '8 ft' });
    await quick.answer();
    expect(await quick.acknowledgement()).toBeLessThan(350);
    expect(await slow.acknowledgement()).toBeGreaterThanOrEqual(390);
    asked[0]?.finish(picture);
  });
});
