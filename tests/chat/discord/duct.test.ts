import { describe, expect, it } from 'vitest';
import { drawnChart } from '#chat/discord/chart-pictures.ts';
import type { Person } from '../../support/stand-in/person.ts';
import type { Seen } from '../../support/stand-in/seen.ts';
import { answer, labels, question, stage } from './stage.ts';

const play = stage({ bot: { draw: drawnChart } });

const demoFan = '96@0 84@0.1 66@0.25 0@0.5';
const demo = { 'fan-curve': demoFan, collar: '4 in', 'duct-run': '14 ft 4 in flex; 2 x elbow 90; wall cap' };
const whole = { ...demo, 'airflow-needed': '50 cfm', 'fan-settings': 'none', 'rated-sones': '1.5' };

const isPng = (bytes: Uint8Array | undefined): boolean =>
  Buffer.from(bytes ?? [])
    .subarray(1, 4)
    .toString('latin1') === 'PNG';

/** With its chart, which on a busy machine comes a moment after the answer. */
const withChart = (person: Person, reply: Seen): Promise<Seen> => person.until(reply, ({ files }) => files.length > 0);

describe('/duct', () => {
  it('is answered at once with its chart when all is given, the chart’s words for who cannot see it', async () => {
    const { ann } = play.crew();
    const reply = await withChart(ann, await ann.slash('duct', whole));
    const [embed] = reply.embeds;
    expect(embed?.title).toMatch(/^About \d+ cfm \(\d+(\.\d)? L\/s\) will come out of this duct/);
    const [file] = reply.files;
    expect(file?.name).toBe('duct.png');
    expect(isPng(file?.bytes)).toBe(true);
    expect(file?.description).toMatch(
      /^Chart of static pressure against airflow\..* cross at \d+ cfm and 0\.\d+ in\. w\.g\./,
    );
    expect(embed?.image?.url).toBe(file?.url);
    expect(reply.text).toContain('**Where the pressure goes**');
    expect(reply.text).toContain('**What would help, best first for the trouble**');
  });

  it('is built part by part with buttons, typed parts between, and a step back takes one part away', async () => {
    const { ann, channel } = play.crew();
    const fan = await ann.slash('duct');
    const collar = await answer(ann, fan, { 'fan-curve': demoFan });
    const run = await answer(ann, collar, { collar: '4 in' });
    expect(question(run)).toContain('What is the duct, from the fan to outdoors?');
    expect(labels(run)).toEqual([
      '5 ft 4 in flex',
      '10 ft 4 in flex',
      '5 ft 4 in smooth',
      '10 ft 4 in smooth',
      'Type it',
      "Don't know",
      'Why',
      'Back',
    ]);
    const one = await ann.press(run, '10 ft 4 in flex');
    const two = await ann.press(one, 'Elbow 90°');
    expect(question(two)).toContain('So far: 10 ft 4 in flex; elbow 90.');
    const shorter = await ann.press(two, 'Back');
    expect(question(shorter)).toContain('So far: 10 ft 4 in flex.');
    const typed = await answer(ann, shorter, { 'duct-run': 'reducer 4 to 3 in' });
    const longer = await answer(ann, typed, { 'duct-run': '6 ft smooth' });
    expect(question(longer)).toContain('So far: 10 ft 4 in flex; reducer 4 to 3 in; 6 ft smooth.');
    const needed = await ann.press(longer, 'Wall cap (end)');
    expect(needed.content).toContain('10 ft 4 in flex; reducer 4 in to 3 in; 6 ft smooth; wall cap');
    expect(question(needed)).toContain('How much air must it move?');
    const settings = await answer(ann, needed, { 'airflow-needed': '80 cfm' });
    const sones = await answer(ann, settings, { 'fan-settings': 'none' });
    const reply = await answer(ann, sones, { 'rated-sones': '1.5' });
    expect(reply.embeds[0]?.title).toContain('will come out of this duct');
    expect(reply.id).toBe(fan.id);
    expect(play.standIn.messages(channel)).toHaveLength(1);
  });

  it('can be answered by not knowing throughout', async () => {
    const { ann } = play.crew();
    let message = await ann.slash('duct');
    for (let steps = 0; labels(message).includes("Don't know"); steps += 1) {
      expect(steps).toBeLessThan(10);
      message = await ann.press(message, "Don't know");
    }
    expect(message.embeds[0]?.title).toContain('will come out of this duct');
    expect(message.text).toContain('**Taken for granted**');
  });

  it('takes a whole run typed at once, and again when it is changed, filled in beforehand', async () => {
    const { ann } = play.crew();
    const reply = await ann.slash('duct', whole);
    const reopened = await ann.pick(reply, 'Change an answer', ['Duct from fan to outdoors, part by part']);
    expect(reopened.files).toEqual([]);
    expect(reopened.embeds).toEqual([]);
    const form = await ann.pressExpectingForm(reopened, 'Type it');
    expect(form.fields[0]).toMatchObject({ kind: 'long text', value: demo['duct-run'] });
    const again = await withChart(ann, await ann.submit(form, { 'duct-run': '6 ft 4 in smooth; wall cap' }));
    expect(again.embeds[0]?.title).not.toBe(reply.embeds[0]?.title);
    expect(again.files).toHaveLength(1);
  });
});

describe('the working', () => {
  const marksIn = (text: string) => new Set([...text.matchAll(/\\\[(\d+)\\\]/g)].map(([, number]) => number));
  const listedIn = (text: string) => [...text.matchAll(/^-# \\\[(\d+)\\\] \S/gm)].map(([, number]) => number);
  /** The sources stand at the end, one for each mark. */
  const isWhole = (text: string) => listedIn(text).length > 0 && listedIn(text).length === marksIn(text).size;

  const workingOf = async (message: Seen, person: Person): Promise<string> => {
    const first = await person.press(message, 'Show the working');
    expect(first.ephemeral).toBe(true);
    const texts = [first.content];
    for (let nth = 0; !isWhole(texts.join('\n')); nth += 1) {
      const more = await person.followUp(first, nth);
      expect(more.ephemeral).toBe(true);
      texts.push(more.content);
    }
    return texts.join('\n');
  };

  it('is whole, however many messages it takes, and for the one who asked', async () => {
    const { ann, channel } = play.crew();
    const reply = await ann.slash('duct', whole);
    const text = await workingOf(reply, ann);
    for (const heading of [
      'Delivered airflow',
      'Pressure shares',
      'Duct velocity',
      'Code duct length',
      'Sound',
      'Remedies',
    ]) {
      expect(text).toContain(`**${heading}**`);
    }
    // Every mark in the working has its source at the end.
    expect([...marksIn(text)].toSorted()).toEqual(listedIn(text).toSorted());
    expect(play.standIn.messages(channel)).toHaveLength(1);
    expect(ann.look(reply)?.buttons).toEqual(reply.buttons);
  });

  it('may be looked at by anybody of the crew', async () => {
    const { ann, ben } = play.crew();
    const reply = await ann.slash('duct', whole);
    expect((await ben.press(reply, 'Show the working')).content).toContain('**Delivered airflow**');
  });

  it('waits while an answer is being changed', async () => {
    const { ann } = play.crew();
    const reply = await ann.slash('duct', whole);
    await ann.pick(reply, 'Change an answer', ['Sones on the label']);
    const said = await ann.pressRaw(reply.buttons[0]?.customId ?? '', reply);
    expect(said).toMatchObject({ ephemeral: true });
    expect(said.content).toBe(
      'An answer is being changed, so there is nothing to show yet. Answer the question, or press Back.',
    );
  });
});

describe('the next step', () => {
  it('is one press away, on the same job, in a message of its own', async () => {
    const { ann, ben, channel } = play.crew();
    const room = { 'room-length': '8 ft', 'room-width': '5 ft', 'ceiling-height': '8 ft', fixtures: 'none' };
    const size = await ann.slash('size', { ...room, running: 'on-demand' });
    const duct = await ben.press(size, 'What will the fan deliver?');
    expect(duct.id).not.toBe(size.id);
    expect(duct.content).toContain('-# /duct · Job 1');
    expect(question(duct)).toContain('What does the fan’s label say?');
    expect(play.standIn.messages(channel)).toHaveLength(2);
    expect(ann.look(size)?.embeds).toEqual(size.embeds);
  });

  it('is about the job of the answer it stands under, even when another lies open by then', async () => {
    const { ann, guild } = play.crew();
    await ann.slash('job open', { name: '14 Maple St' });
    const size = await ann.slash('size', {
      'room-length': '8 ft',
      'room-width': '5 ft',
      'ceiling-height': '8 ft',
      fixtures: 'none',
      running: 'on-demand',
    });
    await ann.slash('job open', { name: '2 Oak Ave' });
    const duct = await ann.press(size, 'What will the fan deliver?');
    expect(duct.content).toContain('Job 1, 14 Maple St');
    await answer(ann, duct, { 'fan-curve': '110' });
    const kept = play.bot.store.scoped(guild.id);
    expect(kept.newestFacts(1).get('fan-curve')?.typed).toBe('110');
    expect(kept.newestFacts(2).size).toBe(0);
  });
});
