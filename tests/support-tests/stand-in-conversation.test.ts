import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Person } from '../support/stand-in/person.ts';
import { type StandIn, startStandIn } from '../support/stand-in/stand-in.ts';
import { photo } from '../support/stand-in/uploads.ts';
import { listenForWarnings } from '../support/stand-in/warnings.ts';
import { type EchoBot, startEchoBot } from './echo-bot.ts';

const warnings = listenForWarnings();
let standIn: StandIn;
let bot: EchoBot;
let ann: Person;

beforeAll(async () => {
  standIn = await startStandIn({ guilds: [{ name: 'Crew', channels: ['general', 'jobs'], roles: ['Lead'] }] });
  bot = await startEchoBot(standIn);
});
beforeEach(() => {
  ann = standIn.user({ name: 'Ann' });
});
afterAll(async () => {
  await bot.stop();
  await standIn.close();
  warnings.stop();
  expect(standIn.violations).toEqual([]);
  expect(bot.errors).toEqual([]);
  expect(warnings.said).toEqual([]);
});

describe('a command', () => {
  it('is answered with a message the person can read', async () => {
    const answer = await ann.slash('say', { words: 'Hello' });
    expect(answer).toMatchObject({ content: 'Hello', text: 'Hello', ephemeral: false, thinking: false });
    expect(answer.buttons.map(({ label }) => label)).toEqual(['Again', 'Measure', 'Off']);
    expect(answer.menus[0]).toMatchObject({ placeholder: 'Which size', customId: 'size' });
  });

  it('may be a subcommand with options of its own', async () => {
    expect((await ann.slash('job open', { rooms: 2 })).content).toBe('Opened with 2 rooms');
    expect((await ann.slash('job open')).content).toBe('Opened with 1 rooms');
  });

  it('is refused before it is sent where the platform would not let a person send it', async () => {
    await expect(ann.slash('shout')).rejects.toThrow('There is no /shout. There are: /say /part /job /measure /boss.');
    await expect(ann.slash('say')).rejects.toThrow('/say needs words');
    await expect(ann.slash('say', { words: 'x', loud: true })).rejects.toThrow('/say has no loud');
    await expect(ann.slash('say', { words: 'x', how: 'loudly' })).rejects.toThrow('it is one of alone');
    await expect(ann.slash('job open', { rooms: 10 })).rejects.toThrow('out of range');
    await expect(ann.slash('job close')).rejects.toThrow('It has: open, photo, thread.');
    await expect(ann.slash('boss')).rejects.toThrow('Ann does not see /boss');
  });

  it('for leads is there for somebody with the permission', async () => {
    const lead = standIn.user({ name: 'Lee', roles: ['Lead'], permissions: ['ManageGuild'] });
    expect((await lead.slash('boss')).content).toBe('/boss');
  });

  it('carries a file the bot can fetch', async () => {
    const file = photo('carton.png');
    const answer = await ann.slash('job photo', { file });
    expect(answer.content).toBe(`carton.png: ${file.bytes.length} of ${file.bytes.length} bytes, image/png`);
  });

  it('offers suggestions while it is typed', async () => {
    const offered = await ann.autocomplete('part', 'name', 'elb');
    expect(offered.map(({ value }) => value)).toEqual(['elbow 45', 'elbow 90']);
  });
});

describe('an answer', () => {
  it('for one pair of eyes is seen by that person only', async () => {
    const ben = standIn.user({ name: 'Ben' });
    const answer = await ann.slash('say', { words: 'Psst', how: 'alone' });
    expect(answer.ephemeral).toBe(true);
    expect(ann.look(answer)?.content).toBe('Psst');
    expect(ben.look(answer)).toBeUndefined();
    expect(ben.messages().map(({ content }) => content)).not.toContain('Psst');
    expect(standIn.messages().map(({ content }) => content)).not.toContain('Psst');
    await expect(ben.press(answer, 'Again')).rejects.toThrow('Ben cannot see this message');
  });

  it('may be promised, given and followed up', async () => {
    const first = await ann.slash('say', { words: 'Done', how: 'later' });
    const last = await ann.until(first, ({ content }) => content === 'Done');
    expect(last.earlier.map(({ content }) => content)).toEqual(['Nearly: Done']);
    expect(await ann.followUp(first)).toMatchObject({ content: 'And one more thing', ephemeral: true });
  });

  it('may bring a picture with words for those who cannot see it', async () => {
    const answer = await ann.slash('say', { words: 'Curves', how: 'file' });
    const [file] = answer.files;
    expect(file).toMatchObject({ name: 'chart.png', description: 'Two curves' });
    expect(answer.embeds[0]?.image?.url).toBe(file?.url);
    expect(await (await fetch(file?.url ?? '')).text()).toBe('not really a chart');
  });
});

describe('a press', () => {
  it('changes the message it is on, and keeps what was there', async () => {
    const asked = await ann.slash('say', { words: 'Hello' });
    const once = await ann.press(asked, 'Again');
    const twice = await ann.press(once, 'Again');
    expect(twice).toMatchObject({ id: asked.id, content: 'Hello again again' });
    expect(twice.earlier.map(({ content }) => content)).toEqual(['Hello', 'Hello again']);
  });

  it('needs a button that is there and can be pressed', async () => {
    const asked = await ann.slash('say', { words: 'Hello' });
    await expect(ann.press(asked, 'Stop')).rejects.toThrow('There are: [Again] [Measure] [Off]');
    await expect(ann.press(asked, 'Off')).rejects.toThrow('greyed out');
  });

  it('may be forged with any id', async () => {
    const asked = await ann.slash('say', { words: 'Hello' });
    expect((await ann.pressRaw('made-up', asked)).content).toBe('Hello made-up');
  });

  it('in a menu chooses by what is written there', async () => {
    const asked = await ann.slash('say', { words: 'Hello' });
    const chosen = await ann.pick(asked, 'Which size', ['4 in']);
    expect(chosen).toMatchObject({ content: 'Chose 4', components: [] });
    await expect(ann.pick(asked, 'Which size', ['9 in'])).rejects.toThrow('There is no menu');
  });
});

describe('a form', () => {
  it('is filled in by label or id and changes the message it came from', async () => {
    const asked = await ann.slash('say', { words: 'Hello' });
    const form = await ann.pressExpectingForm(asked, 'Measure');
    expect(form.title).toBe('The room');
    expect(form.fields.map(({ label, kind, required }) => [label, kind, required])).toEqual([
      ['Length', 'text', true],
      ['Collar', 'menu', true],
      ['Photo', 'file', false],
    ]);
    const answer = await ann.submit(form, { Length: '8 ft 6 in', size: '5 in', Photo: photo('wall.png') });
    expect(answer).toMatchObject({ id: asked.id, content: 'Measured 8 ft 6 in, 5, wall.png' });
  });

  it('is not sent while something is missing', async () => {
    const form = await ann.pressExpectingForm(await ann.slash('say', { words: 'Hello' }), 'Measure');
    await expect(ann.submit(form, { size: '4' })).rejects.toThrow('The field length must be filled in.');
    await expect(ann.submit(form, { width: '4' })).rejects.toThrow('It has: length, size, photo.');
  });
});

describe('a place', () => {
  it('may be a thread the bot opened', async () => {
    await ann.slash('job thread');
    const thread = await standIn.until(() => [...standIn.guild().channels.values()].find((it) => it.parentId));
    const first = await standIn.message(({ content }) => content.startsWith('Talk'), thread);
    expect(first.channelId).toBe(thread.id);
    const inThread = await ann.in(thread).slash('say', { words: 'In here' });
    expect(inThread.channelId).toBe(thread.id);
    standIn.removeMessage(inThread);
    expect(ann.look(inThread)).toBeUndefined();
    expect(standIn.messages(thread)).toHaveLength(1);
    standIn.removeChannel(thread);
    await expect.poll(() => bot.client.channels.cache.has(thread.id)).toBe(false);
  });

  it('may be another server, which the bot hears of when it is invited and when it is thrown out', async () => {
    const guild = standIn.addGuild({ name: 'Other crew' });
    const stranger = standIn.user({ name: 'Zoe', guild });
    expect((await stranger.slash('say', { words: 'Hello' })).content).toBe('Hello');
    expect(bot.client.guilds.cache.has(guild.id)).toBe(true);
    standIn.removeGuild(guild, { unavailable: true });
    await expect.poll(() => bot.client.guilds.cache.get(guild.id)?.available).toBe(false);
    standIn.returnGuild(guild);
    await expect.poll(() => bot.client.guilds.cache.get(guild.id)?.available).toBe(true);
    const left = new Promise((resolve) => bot.client.once('guildDelete', resolve));
    standIn.removeGuild(guild);
    await left;
    expect(bot.client.guilds.cache.has(guild.id)).toBe(false);
  });
});

it('says what it saw when nothing comes', async () => {
  const waiting = ann.begin.slash('say', { words: 'Hello' }, { patience: 60 }).form();
  await expect(waiting).rejects.toThrow(
    /The bot showed no form\.\n.*"\/say" of Ann\.\nFirst answer: type 4, after \d+ ms/,
  );
  bot.client.removeAllListeners('interactionCreate');
  const silence = ann.slash('say', { words: 'Hello' }, { patience: 60 });
  await expect(silence).rejects.toThrow(
    /Nothing came within 60 ms\..*First answer: none, not yet\..*The last of \d+ requests/s,
  );
});
