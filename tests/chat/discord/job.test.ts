import { describe, expect, it } from 'vitest';
import type { Channel } from '../../support/stand-in/fixtures.ts';
import { answer, question, stage } from './stage.ts';

const play = stage();

const title = (message: { readonly embeds: readonly { readonly title?: string }[] }) => message.embeds[0]?.title;

describe('/job', () => {
  it('opens, shows, takes back, lists and closes', async () => {
    const { ann } = play.crew();
    expect(title(await ann.slash('job open', { name: '14 Maple St' }))).toBe(
      'Job 1, 14 Maple St is open here. Nothing is on it yet.',
    );
    await ann.slash('size', { 'room-length': '8 ft measured', 'room-width': "don't know" });
    const shown = await ann.slash('job show');
    expect(title(shown)).toBe('Job 1, 14 Maple St: 2 answers.');
    expect(shown.text).toContain(`**Room length** · 8 ft measured · measured · <@${ann.id}>`);
    expect(shown.text).toMatch(new RegExp(`\\*\\*Room width\\*\\* · don.t know · not known · <@${ann.id}>`));
    expect(title(await ann.slash('job undo'))).toContain('It is unanswered again.');
    expect(title(await ann.slash('job close'))).toContain('Job 1, 14 Maple St is closed.');
    expect(title(await ann.slash('job list'))).toContain('/job open starts one.');
    const listed = await ann.slash('job list', { state: 'closed' });
    expect(listed.text).toMatch(/\*\*1\*\* · 14 Maple St · closed · \d{4}-\d\d-\d\d · \d{4}-\d\d-\d\d · 1/);
    expect(title(await ann.slash('job open', { name: '14 maple st' }))).toContain(
      'is open here again, with 1 answer on it.',
    );
  });

  it('starts a clean sheet when no name is given', async () => {
    const { ann } = play.crew();
    await ann.slash('size', { 'room-length': '8 ft' });
    expect(title(await ann.slash('job open'))).toBe('Job 2 (no name yet) is open here. Nothing is on it yet.');
    expect((await ann.slash('size')).content).toContain('-# /size · Job 2, no name yet');
  });

  it('shows an answer nobody could have pinged', async () => {
    const { ann, ben } = play.crew();
    await ann.slash('job open', { name: `<@${ben.id}>` });
    const listed = await ben.slash('job list');
    expect(listed.text).not.toContain(`<@${ben.id}>`);
    expect(listed.text).toContain(ben.id);
  });
});

describe('a thread', () => {
  it('has a job sheet of its own, beside that of the channel it hangs under', async () => {
    const { ann, channel, guild } = play.crew();
    const made: Channel = {
      id: '424242424242424242',
      guildId: guild.id,
      name: 'Maple',
      parentId: channel.id,
      archived: false,
    };
    guild.channels.set(made.id, made);
    const inThread = ann.in(made);
    await inThread.slash('job open', { name: '14 Maple St' });
    await inThread.slash('size', { 'room-length': '9 ft' });
    await ann.slash('size', { 'room-length': '6 ft' });
    const thread = await inThread.slash('duct', { 'fan-curve': '110' });
    expect(thread.channelId).toBe(made.id);
    expect(thread.content).toContain('-# /duct · Job 1, 14 Maple St');
    const above = await ann.slash('duct');
    expect(above.content).toContain('-# /duct · Job 2, no name yet');
    expect(question(above)).toContain('What does the fan’s label say?');
    const further = await answer(ann.in(made), thread, { collar: '5 in' });
    expect(further.content).toContain('Noted. Diameter of the fan’s outlet collar: 5 in (127 mm)');
    const kept = play.bot.store.scoped(guild.id);
    expect(kept.newestFacts(1).get('collar')?.typed).toBe('5 in');
    expect(kept.newestFacts(2).get('collar')).toBeUndefined();
  });
});

describe('suggestions while typing', () => {
  it('complete a run of duct piece by piece', async () => {
    const { ann } = play.crew();
    const from = async (partial: string) =>
      (await ann.autocomplete('duct', 'duct-run', partial)).map(({ value }) => value);
    expect(await from('')).toEqual([
      '5 ft 4 in flex',
      '10 ft 4 in flex',
      '5 ft 4 in smooth',
      '10 ft 4 in smooth',
      "don't know",
    ]);
    expect(await from('12 ft 3 in flex; ')).toEqual(
      expect.arrayContaining([
        '12 ft 3 in flex; 5 ft 3 in flex',
        '12 ft 3 in flex; elbow 90',
        '12 ft 3 in flex; wall cap',
      ]),
    );
  });

  it('never cut an answer short: what is too long to suggest can only be typed', async () => {
    const { ann } = play.crew();
    const long = Array.from({ length: 8 }, () => '5 ft 4 in flex').join('; ');
    const offered = await ann.autocomplete('duct', 'duct-run', long.slice(0, 95));
    for (const { value } of offered) expect(String(value).length).toBeLessThanOrEqual(100);
    expect(offered.map(({ value }) => value)).toEqual([long.slice(0, 95), "don't know"]);
    expect((await ann.autocomplete('duct', 'duct-run', long)).map(({ value }) => value)).toEqual(["don't know"]);
  });

  it('complete the last of several fixtures', async () => {
    const { ann } = play.crew();
    const offered = await ann.autocomplete('size', 'fixtures', 'toilet, s');
    expect(offered.map(({ value }) => value)).toEqual([
      'toilet, s',
      'toilet, shower',
      'toilet, steam-shower',
      "don't know",
    ]);
  });

  it('read back what a measure is taken for', async () => {
    const { ann } = play.crew();
    const offered = await ann.autocomplete('size', 'room-length', '8-6');
    expect(offered).toEqual([
      { name: '8-6 (8 ft 6 in (2.59 m))', value: '8-6' },
      { name: "Don't know", value: "don't know" },
    ]);
  });

  it('name this crew’s jobs, and never another’s', async () => {
    const { ann } = play.crew();
    const { ann: stranger } = play.crew();
    await ann.slash('job open', { name: '14 Maple St' });
    await ann.slash('job open', { name: '2 Oak Ave' });
    await stranger.slash('job open', { name: '9 Maple Ct' });
    const named = async (person: typeof ann, partial: string) =>
      (await person.autocomplete('job open', 'name', partial)).map(({ name, value }) => [name, value]);
    expect(await named(ann, 'map')).toEqual([['Job 1, 14 Maple St', '1']]);
    expect(await named(ann, '')).toHaveLength(2);
    expect(await named(stranger, 'map')).toEqual([['Job 1, 9 Maple Ct', '1']]);
    expect(await named(stranger, '%')).toEqual([]);
    const show = await stranger.slash('job show', { name: '14 Maple St' });
    expect(title(show)).toContain('There is no job “14 Maple St” here.');
  });

  it('are at most 25, of many jobs', async () => {
    const { ann } = play.crew();
    for (let job = 1; job <= 30; job += 1)
      await ann.slash('job open', { name: `Job for Mr ${'X'.repeat(170)} ${job}` });
    const offered = await ann.autocomplete('job open', 'name', '');
    expect(offered).toHaveLength(25);
    const list = await ann.slash('job list');
    expect(list.text).toContain('There is more than fits here. The file holds all of it.');
    const [file] = list.files;
    expect(file?.name).toBe('job.txt');
    const text = Buffer.from(file?.bytes ?? []).toString();
    for (let job = 6; job <= 30; job += 1)
      expect(text).toMatch(new RegExp(`^${job} · Job for Mr X+ ${job} · open`, 'm'));
  });
});
