import { describe, expect, it } from 'vitest';
import type { Command } from '#chat/command.ts';
import { pieces, plainReply, replyText } from '#chat/discord/text.ts';
import { commands } from '#commands/index.ts';
import type { Finding } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import { oneOf, severalOf, yesNo } from '#interview/choices.ts';
import { offer, take, together } from '#interview/interview.ts';
import type { AnyQuestion, Choice } from '#interview/question.ts';
import { labels, question, stage } from './stage.ts';

const wordy = (count: number) => Array.from({ length: count }, (_, index) => `word${index}`).join(' ');

const finding = (id: number): Finding => ({
  id: `finding-${id}`,
  weight: id === 3 ? 'stop' : 'advice',
  says: `Number ${id}: ${wordy(40)}.`,
  working: Array.from({ length: 6 }, (_, step) => ({
    what: `Step ${id}-${step}`,
    how: wordy(12),
    value: `${step} cfm`,
  })),
  sources: [{ source: 'own-working', where: `place ${id}`, verified: false }],
  table: {
    title: `Table ${id}`,
    columns: ['one', 'two', 'three'],
    rows: Array.from({ length: 20 }, (_, row) => [`row ${id}-${row}`, wordy(3), '']),
  },
});

/** More than any honest answer: nothing of it may be lost. */
const long: Reply = {
  headline: wordy(60),
  findings: Array.from({ length: 12 }, (_, id) => finding(id)),
  assumed: Array.from({ length: 10 }, (_, id) => `Assumed ${id}: ${wordy(10)}`),
  suggestions: Array.from({ length: 9 }, (_, id) => ({ label: `${id} ${wordy(30)}`, command: 'duct' })),
};

const choices = (count: number): (Choice & { id: string })[] =>
  Array.from({ length: count }, (_, index) => ({
    id: `choice-${index}`,
    label: `${index} ${wordy(20)}`,
    hint: wordy(30),
  }));

const words = (id: string) => ({
  id,
  prompt: `Which ${id}? ${wordy(30)}`,
  why: wordy(30),
  brief: `${id} ${wordy(40)}`,
});
const one = (id: string, count: number): AnyQuestion =>
  oneOf({ ...words(id), choices: choices(count), whenUnknown: { value: 'choice-0', because: 'Chosen.' } });
const several = (id: string, count: number): AnyQuestion =>
  severalOf({ ...words(id), choices: choices(count), whenUnknown: { value: [], because: 'None.' } });

/** A command whose questions and answer are as long as they come. */
const asking = (name: string, questions: readonly AnyQuestion[], reply: Reply): Command => ({
  kind: 'answer',
  name,
  summary: wordy(30),
  example: '',
  takes: questions,
  *interview() {
    for (const each of questions) yield* offer(each);
    return undefined;
  },
  answer: () => reply,
});

const five = ['a', 'b', 'c', 'd', 'e'].map((id) => (id === 'c' ? several(id, 12) : one(id, 12)));
const form: Command = {
  ...(asking('form', five, long) as Extract<Command, { kind: 'answer' }>),
  *interview() {
    return yield* together('offer', ...five);
  },
};

const lots = Array.from({ length: 60 }, (_, index) =>
  yesNo({ ...words(`lot-${index}`), whenUnknown: { value: 'no', because: 'No.' } }),
);
const many: Command = {
  ...(asking('lots', lots, long) as Extract<Command, { kind: 'answer' }>),
  *interview() {
    for (const each of lots) yield* take(each);
    return undefined;
  },
};

const guarded: Command = {
  kind: 'desk',
  name: 'guarded',
  summary: 'Guarded.',
  example: '',
  actions: [
    {
      name: '',
      summary: 'Guarded.',
      options: [],
      managersOnly: true,
      act: () => ({ headline: 'Done.', findings: [] }),
    },
  ],
};

const desk: Command = {
  kind: 'desk',
  name: 'desk',
  summary: 'Long.',
  example: '',
  actions: [{ name: '', summary: 'Long.', options: [], act: () => long }],
};

const play = stage({
  bot: {
    commands: [
      ...commands,
      asking('wide', [one('few', 3), one('ten', 10), one('many', 25), one('more', 40), several('some', 40)], long),
      form,
      many,
      desk,
      guarded,
    ],
  },
});

/** Every part of the long reply, to be found somewhere. */
const everyPart = [
  ...Array.from({ length: 12 }, (_, id) => `Number ${id}:`),
  ...Array.from({ length: 12 }, (_, id) => `row ${id}-19`),
  ...Array.from({ length: 10 }, (_, id) => `Assumed ${id}:`),
  'word59',
];

const lostIn = (text: string): readonly string[] => everyPart.filter((part) => !text.includes(part));

describe('an answer longer than a message', () => {
  it('shows its beginning, stops first, and everything at a press', async () => {
    const { ann } = play.crew();
    let message = await ann.slash('form');
    while (labels(message).includes("Don't know")) message = await ann.press(message, "Don't know");
    expect(message.embeds[0]?.description).toMatch(/^\*\*word0/);
    expect(message.embeds[0]?.description?.split('\n')[1]).toMatch(/^- \*\*STOP:\*\* Number 3:/);
    expect(message.text).toContain('There is more than fits here. Press Show everything for the rest.');
    const everything = await ann.press(message, 'Show everything');
    expect(everything.ephemeral).toBe(true);
    expect(everything.files.map(({ name }) => name)).toEqual(['form.txt']);
    const text = Buffer.from(everything.files[0]?.bytes ?? []).toString();
    expect(lostIn(text)).toEqual([]);
    for (let id = 0; id < 12; id += 1) expect(text).toContain(`Step ${id}-5`);
  });

  it('has its whole working in a file when it would be a wall of messages', async () => {
    const { ann } = play.crew();
    let message = await ann.slash('form');
    while (labels(message).includes("Don't know")) message = await ann.press(message, "Don't know");
    const working = await ann.press(message, 'Show the working');
    expect(working).toMatchObject({ ephemeral: true, content: 'The whole answer with its working is in the file.' });
    expect(Buffer.from(working.files[0]?.bytes ?? []).toString()).toContain('Step 11-5');
  });

  it('comes in messages where files may not be attached, and nothing is lost', async () => {
    const { ann, channel } = play.crew();
    play.standIn.withhold(channel, ['AttachFiles']);
    let message = await ann.slash('form');
    while (labels(message).includes("Don't know")) message = await ann.press(message, "Don't know");
    const first = await ann.press(message, 'Show everything');
    const texts = [first.content];
    for (let nth = 0; !texts.at(-1)?.includes('place 11'); nth += 1)
      texts.push((await ann.followUp(first, nth)).content);
    expect(lostIn(texts.join('\n'))).toEqual([]);
    const shown = await ann.slash('desk');
    expect(shown.text).toContain('There is more than fits here. All of it follows.');
    const follows = [];
    for (let nth = 0; !follows.at(-1)?.includes('place 11'); nth += 1)
      follows.push((await ann.followUp(shown, nth)).content);
    expect(lostIn(follows.join('\n'))).toEqual([]);
  });

  it('comes with a file where there are no buttons to press', async () => {
    const { ann } = play.crew();
    const shown = await ann.slash('desk');
    expect(shown.text).toContain('There is more than fits here. The file holds all of it.');
    expect(lostIn(Buffer.from(shown.files[0]?.bytes ?? []).toString())).toEqual([]);
  });
});

describe('questions with many choices', () => {
  it('stand as buttons up to ten, as a menu up to 25, and beyond that can be typed', async () => {
    const { ann } = play.crew();
    const few = await ann.slash('wide');
    expect(labels(few)).toHaveLength(3 + 2);
    const ten = await ann.press(few, labels(few)[0] ?? '');
    expect(labels(ten)).toHaveLength(10 + 3);
    const many = await ann.press(ten, labels(ten)[9] ?? '');
    expect(many.menus[0]?.options).toHaveLength(25);
    const more = await ann.pick(many, many.menus[0]?.placeholder ?? '', ['choice-24']);
    expect(more.menus[0]?.options).toHaveLength(25);
    const typed = await ann.submit(await ann.pressExpectingForm(more, 'Type it'), { more: 'choice-39' });
    expect(question(typed)).toContain('Which some?');
    expect(typed.menus[0]?.options).toHaveLength(25);
    const last = await ann.submit(await ann.pressExpectingForm(typed, 'Type it'), { some: 'choice-38, choice-39' });
    expect(last.embeds.length).toBeGreaterThan(0);
  });

  it('asked together are one form of menus, each of which may be left or not known', async () => {
    const { ann, guild } = play.crew();
    const asked = await ann.slash('form');
    const opened = await ann.pressExpectingForm(asked, 'Answer');
    expect(opened.fields.map(({ kind, required }) => [kind, required])).toEqual(five.map(() => ['menu', false]));
    const next = await ann.submit(opened, {
      a: 'choice-3',
      b: "don't know",
      c: ['choice-1', 'choice-2'],
      d: 'choice-4',
    });
    expect(question(next)).toContain('Which e?');
    const kept = play.bot.store.scoped(guild.id).newestFacts(1);
    expect([...kept.values()].map(({ fact, typed }) => [fact, typed])).toEqual([
      ['a', 'choice-3'],
      ['b', "don't know"],
      ['c', 'choice-1, choice-2'],
      ['d', 'choice-4'],
    ]);
  });
});

it('of many answers each can be changed, from as many menus as it takes', async () => {
  const { ann, guild, channel } = play.crew();
  const kept = play.bot.store.scoped(guild.id);
  const who = `<@${ann.id}>`;
  const sheet = kept.currentSheet({ channel: channel.id, who });
  const fact = { typed: 'yes', units: 'inch-pound', value: 'yes', how: 'told', who } as const;
  kept.addFacts(
    sheet.number,
    lots.map(({ id }) => ({ ...fact, fact: id })),
  );
  const reply = await ann.slash('lots');
  expect(reply.menus.map(({ options }) => options.length)).toEqual([25, 25, 10]);
  expect(reply.menus.map(({ placeholder }) => placeholder.slice(0, 31))).toEqual([
    'Change an answer, from: lot-0 w',
    'Change an answer, from: lot-25 ',
    'Change an answer, from: lot-50 ',
  ]);
  // The buttons leave room for the menus: the two standing ones, then the first next steps.
  expect(labels(reply)).toHaveLength(3);
  const reopened = await ann.pick(reply, reply.menus[2]?.placeholder ?? '', ['lot-59']);
  expect(question(reopened)).toContain('Which lot-59?');
  expect(reopened.content).toContain('Now: Yes');
});

it('what concerns the whole crew is done only for those who manage the server', async () => {
  const { ann, guild } = play.crew();
  const refused = await ann.slash('guarded');
  expect(refused.ephemeral).toBe(true);
  expect(refused.content).toContain('Only people who may manage this server can change that.');
  const lead = play.standIn.user({ name: 'Lee', guild, permissions: ['ManageGuild'] });
  expect((await lead.slash('guarded')).embeds[0]?.title).toBe('Done.');
});

describe('the text of a reply', () => {
  it('stays whole when it fits, and says when it does not', () => {
    const short = replyText({
      headline: 'Short.',
      findings: [{ ...finding(1), table: { title: 't', columns: [], rows: [] } }],
    });
    expect(short.whole).toBe(true);
    const cut = replyText(long);
    expect(cut.whole).toBe(false);
    const characters = [cut.title ?? '', ...cut.blocks].reduce((sum, text) => sum + text.length, 0);
    expect(characters).toBeLessThanOrEqual(5800);
    expect(lostIn(plainReply(long))).toEqual([]);
  });

  it('is broken into pieces that lose nothing', () => {
    const text = [wordy(500), '🛁'.repeat(1500), '', wordy(10)].join('\n');
    const parts = pieces(text);
    for (const part of parts) {
      expect(part.length).toBeLessThanOrEqual(2000);
      expect(part).not.toMatch(/\p{Surrogate}/u);
    }
    expect(parts.join('').replaceAll('\n', '')).toBe(text.replaceAll('\n', ''));
  });
});
