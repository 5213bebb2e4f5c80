import { describe, expect, it } from 'vitest';
import { answer, labels, question, stage } from './stage.ts';

const play = stage();

const measured = { 'room-length': '8 ft 6 in', 'room-width': '5 ft' };

describe('/size asks for the room', () => {
  it('both measures in one form, then a screen at a time, all in the message it began with', async () => {
    const { ann, channel } = play.crew();
    const first = await ann.slash('size');
    expect(first.content).toBe(
      '-# /size · Job 1, no name yet\n**How long is the room, wall to wall?**\n**How wide is it?**',
    );
    expect(labels(first)).toEqual(['Answer', "Don't know", 'Why']);

    const form = await ann.pressExpectingForm(first, 'Answer');
    expect(form.title).toBe('Answer for /size');
    expect(form.fields.map(({ id, label, kind, required }) => [id, label, kind, required])).toEqual([
      ['room-length', 'Room length', 'text', false],
      ['room-width', 'Room width', 'text', false],
    ]);
    const ceiling = await ann.submit(form, measured);
    expect(question(ceiling)).toBe('**How high is the ceiling? For a sloped one, the average.**');
    expect(ceiling.content).toContain('Noted. Room length: 8 ft 6 in (2.59 m)');
    expect(labels(ceiling)).toEqual(['Answer', "Don't know", 'Why', 'Back']);

    const fixtures = await answer(ann, ceiling, { 'ceiling-height': '8 ft' });
    expect(fixtures.menus.map(({ placeholder, options }) => [placeholder, options.map(({ label }) => label)])).toEqual([
      [
        'Fixtures in the room: pick all that fit',
        ['Toilet', 'Shower', 'Tub', 'Jetted tub', 'Steam shower', 'None of these'],
      ],
    ]);
    const door = await ann.pick(fixtures, 'Fixtures in the room: pick all that fit', ['Toilet', 'Tub']);
    expect(labels(door)).toEqual(['Yes', 'No', "Don't know", 'Why', 'Back']);
    const running = await ann.press(door, 'No');
    const reply = await ann.press(running, 'When the room is used');

    expect(reply.id).toBe(first.id);
    expect(play.standIn.messages(channel)).toHaveLength(1);
    // 8.5 × 5 ft is 42.5 sq ft, 43 cfm at 1 cfm a square foot; the 50 cfm of IRC table M1505.4.4 is more.
    expect(reply.embeds[0]?.title).toBe('This room needs 50 cfm (23.6 L/s).');
    expect(reply.embeds.at(-1)?.footer?.text).toBe('Job 1, no name yet');
    expect(labels(reply)).toEqual(['Show the working', 'What will the fan deliver?']);
    expect(reply.menus.map(({ placeholder }) => placeholder)).toEqual(['Change an answer']);
  });

  it('nothing at all when every option was given', async () => {
    const { ann } = play.crew();
    const reply = await ann.slash('size', {
      ...measured,
      'ceiling-height': '8 ft',
      fixtures: 'toilet, tub',
      'toilet-compartment': 'no',
      running: 'on-demand',
    });
    expect(reply.embeds[0]?.title).toBe('This room needs 50 cfm (23.6 L/s).');
  });

  it('again only what was not understood among the options, each named', async () => {
    const { ann } = play.crew();
    const asked = await ann.slash('size', { ...measured, 'ceiling-height': '8 kg', fixtures: 'sofa' });
    expect(asked.content).toContain('Ceiling height: I do not know the unit “kg”');
    expect(asked.content).toContain('Fixtures in the room: “sofa” did not fit.');
    expect(question(asked)).toBe('**How high is the ceiling? For a sloped one, the average.**');
  });

  it('nothing that this job’s sheet holds already, and says so', async () => {
    const { ann, ben } = play.crew();
    await ann.slash('size', { ...measured, 'ceiling-height': '8 ft', fixtures: 'none', running: 'on-demand' });
    const reply = await ben.slash('size');
    expect(reply.embeds[0]?.title).toBe('This room needs 50 cfm (23.6 L/s).');
    expect(reply.content).toBe(
      'Answered from what this job’s sheet holds already. Change an answer below, or use /job open for a clean sheet.',
    );
  });
});

describe('a person answering /size', () => {
  it('may leave fields empty: those are asked again', async () => {
    const { ann } = play.crew();
    const first = await ann.slash('size');
    const form = await ann.pressExpectingForm(first, 'Answer');
    const none = await ann.submit(form, {});
    expect(none.content).toContain('Nothing was filled in.');
    const width = await answer(ann, none, { 'room-length': '8-6' });
    expect(width.content).toContain('Noted. Room length: 8 ft 6 in (2.59 m)');
    expect(question(width)).toBe('**How wide is it?**');
  });

  it('may not know, and is told what is taken instead', async () => {
    const { ann } = play.crew();
    const ceiling = await ann.slash('size', measured);
    const next = await ann.press(ceiling, "Don't know");
    expect(next.content).toContain('Most houses have 8 ft ceilings; from common practice.');
    expect(next.content).toContain(
      '-# So far: Room length: 8 ft 6 in (2.59 m) · Room width: 5 ft (1.52 m) · 1 not known',
    );
    expect(question(next)).toContain('What stands in the room?');
  });

  it('may ask why, and is still asked', async () => {
    const { ann } = play.crew();
    const ceiling = await ann.slash('size', measured);
    const why = await ann.press(ceiling, 'Why');
    expect(why.content).toContain('Above 8 ft the room holds more air than its floor tells');
    expect(question(why)).toBe(question(ceiling));
  });

  it('may go back a step, as far as the first question', async () => {
    const { ann } = play.crew();
    const first = await ann.slash('size', { 'room-length': '8 ft' });
    const ceiling = await answer(ann, first, { 'room-width': '5 ft' });
    const width = await ann.press(ceiling, 'Back');
    expect(width.content).toContain('Took back: Room width.');
    const both = await ann.press(width, 'Back');
    expect(question(both)).toBe('**How long is the room, wall to wall?**\n**How wide is it?**');
    expect(labels(both)).not.toContain('Back');
  });

  it('may change an answer afterwards, with the one that stands filled in beforehand', async () => {
    const { ann } = play.crew();
    const reply = await ann.slash('size', {
      ...measured,
      'ceiling-height': '8 ft',
      fixtures: 'toilet',
      'toilet-compartment': 'no',
      running: 'on-demand',
    });
    const [menu] = reply.menus;
    expect(menu?.options.find(({ label }) => label === 'Room length')?.description).toBe('8 ft 6 in (2.59 m)');
    const reopened = await ann.pick(reply, 'Change an answer', ['Room length']);
    expect(reopened.content).toContain('Now: 8 ft 6 in (2.59 m)');
    const form = await ann.pressExpectingForm(reopened, 'Answer');
    expect(form.fields[0]?.value).toBe('8 ft 6 in');
    const again = await ann.submit(form, { 'room-length': '14 ft' });
    // 14 × 5 ft at 1 cfm a square foot.
    expect(again.embeds[0]?.title).toBe('This room needs 70 cfm (33 L/s).');

    const once = await ann.pick(again, 'Change an answer', ['Room length']);
    const unchanged = await ann.press(once, 'Back');
    expect(unchanged.embeds[0]?.title).toBe('This room needs 70 cfm (33 L/s).');
  });

  it('may pick none of what a menu lists', async () => {
    const { ann } = play.crew();
    const fixtures = await ann.slash('size', { ...measured, 'ceiling-height': '8 ft' });
    const running = await ann.pick(fixtures, 'Fixtures in the room: pick all that fit', ['None of these']);
    expect(running.content).toContain('Noted. Fixtures in the room: none');
    expect(question(running)).toBe('**How will the fan run?**');
  });
});
