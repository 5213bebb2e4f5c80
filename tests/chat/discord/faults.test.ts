import { describe, expect, it, onTestFinished } from 'vitest';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { photo } from '../../support/stand-in/uploads.ts';
import { listenForWarnings } from '../../support/stand-in/warnings.ts';
import { type BotOptions, startBot } from './bot.ts';
import { answer, question, quickly } from './stage.ts';

const minute = 60_000;
const run = { 'fan-curve': '110', collar: '4 in' };
const room = { 'room-length': '8 ft', 'room-width': '5 ft', 'ceiling-height': '8 ft', fixtures: 'none' };
const duct = {
  ...run,
  'duct-run': '20 ft 4 in flex; wall cap',
  'airflow-needed': '50',
  'fan-settings': 'none',
  'rated-sones': '1',
};

/** Everything the bot logged of what went wrong must be named, and nobody may be told what the platform would not take. */
async function scene(options: BotOptions & { readonly heartbeatInterval?: number } = {}) {
  const warnings = listenForWarnings();
  const unhandled: unknown[] = [];
  const listen = (reason: unknown) => unhandled.push(reason);
  process.on('unhandledRejection', listen);
  const { heartbeatInterval = 41_250, ...rest } = options;
  const standIn = await startStandIn({ heartbeatInterval, patience: 50_000 });
  const bot = await startBot(standIn, { draw: quickly, ...rest });
  onTestFinished(async () => {
    await bot.stop();
    await standIn.close();
    warnings.stop();
    process.off('unhandledRejection', listen);
    expect(standIn.violations).toEqual([]);
    expect(warnings.said).toEqual([]);
    expect(unhandled).toEqual([]);
  });
  const ann = standIn.user();
  const facts = (job = 1) => [...bot.store.scoped(standIn.guild().id).newestFacts(job).keys()];
  return { standIn, bot, ann, facts };
}

/** A drawing that is there when it is let go. */
function slowDrawing() {
  let done = () => {};
  const ready = new Promise<void>((resolve) => {
    done = resolve;
  });
  return { draw: async () => ready.then(() => photo().bytes), letGo: () => done() };
}

describe('the line to the platform', { timeout: 60_000 }, () => {
  it('that is dumb without being cut is noticed, and what was pressed meanwhile is answered', async () => {
    const { standIn, ann, bot } = await scene({ heartbeatInterval: 600 });
    const asked = await ann.slash('duct', run);
    standIn.gateway.goSilent();
    const now = await ann.press(asked, '10 ft 4 in flex');
    expect(question(now)).toContain('So far: 10 ft 4 in flex.');
    expect(standIn.gateway.counts.resumed).toBeGreaterThan(0);
    expect(bot.logged).toEqual([]);
  });

  it('declared over but to be resumed is resumed', async () => {
    const { standIn, ann } = await scene();
    const asked = await ann.slash('duct', run);
    standIn.gateway.invalidateSessions(true);
    await standIn.until(() => (standIn.gateway.counts.resumed === 1 ? true : undefined));
    expect(question(await ann.press(asked, '10 ft 4 in flex'))).toContain('So far: 10 ft 4 in flex.');
    expect(standIn.gateway.counts.identified).toBe(1);
  });

  it('away for minutes: a press made meanwhile comes too late to be answered and is kept, and the next one shows so', async () => {
    const { standIn, bot, ann, facts } = await scene();
    const asked = await ann.slash('size', { 'room-length': '8 ft', 'room-width': '5 ft' });
    await standIn.goDown();
    ann.begin.press(asked, "Don't know");
    standIn.clock.advance(5 * minute);
    await standIn.comeBack();
    await standIn.until(() => (bot.logged.length > 0 ? true : undefined));
    expect(bot.logged).toMatchObject([{ code: 10_062, to: 'a press' }]);
    expect(facts()).toContain('ceiling-height');
    const now = await ann.press(asked, "Don't know");
    expect(now.content).toContain('That was an earlier step. Here is where it stands.');
    expect(question(now)).toContain('What stands in the room?');
  });
});

describe('a platform that asks to wait', { timeout: 60_000 }, () => {
  it('with the first answer gets it as soon as it may come', async () => {
    const { standIn, ann, bot, facts } = await scene();
    standIn.fail({ path: /callback/, status: 429, retryAfter: 1 });
    const begun = ann.begin.slash('size', { 'room-length': '8 ft' });
    expect(question(await begun.answer())).toContain('How wide');
    expect(await begun.acknowledgement()).toBeGreaterThan(900);
    expect(facts()).toEqual(['room-length']);
    expect(bot.logged).toEqual([]);
  });

  it('longer than it waits itself: the answer is lost, what was said is not, and the next press shows it', async () => {
    const { standIn, ann, bot, facts } = await scene();
    const asked = await ann.slash('size', { 'room-length': '8 ft', 'room-width': '5 ft' });
    standIn.fail({ path: /callback/, status: 429, retryAfter: 1 });
    ann.begin.press(asked, "Don't know");
    await standIn.until(() => (standIn.requests.at(-1)?.status === 429 ? true : undefined));
    standIn.clock.advance(4000);
    await standIn.until(() => (bot.logged.length > 0 ? true : undefined));
    expect(bot.logged).toMatchObject([
      { code: 10_062, meaning: expect.stringContaining('later than the platform waits') },
    ]);
    expect(facts()).toContain('ceiling-height');
    expect((await ann.press(asked, 'Why')).content).toContain('That was an earlier step.');
  });

  it('with a chart that comes later puts it in when it may', async () => {
    const { draw, letGo } = slowDrawing();
    const { standIn, ann, bot } = await scene({ draw, patience: 20 });
    const reply = await ann.slash('duct', duct);
    expect(reply.content).toContain('The chart follows.');
    standIn.fail({ method: 'PATCH', path: /messages/, status: 429, retryAfter: 1 });
    letGo();
    const shown = await ann.until(reply, ({ files }) => files.length > 0);
    expect(shown.content).not.toContain('The chart follows.');
    expect(bot.logged).toEqual([]);
  });
});

describe('a platform that stumbles (5xx)', { timeout: 60_000 }, () => {
  it('over an answer: the person hears so, what was said is kept, and the next press shows it', async () => {
    const { standIn, ann, bot, facts } = await scene();
    const asked = await ann.slash('size', { 'room-length': '8 ft', 'room-width': '5 ft' });
    standIn.fail({ path: /callback/, status: 503 });
    const said = await ann.press(asked, "Don't know");
    expect(said).toMatchObject({
      ephemeral: true,
      content: expect.stringContaining('Nothing you answered before is lost'),
    });
    expect(bot.logged).toMatchObject([{ error: 'HTTPError', status: 503 }]);
    expect(facts()).toContain('ceiling-height');
    expect(question(await ann.press(asked, 'Why'))).toContain('What stands in the room?');
  });

  it('again and again: nobody can be told, and the program lives', async () => {
    const { standIn, ann, bot, facts } = await scene();
    standIn.fail({ path: /callback/, status: 500, times: 2 });
    ann.begin.slash('size', { 'room-length': '8 ft' });
    await standIn.until(() => (bot.logged.length === 2 ? true : undefined));
    expect(bot.logged.map(({ what }) => what)).toEqual(['an event could not be answered', 'could not say so']);
    expect(facts()).toEqual(['room-length']);
    expect(question(await ann.slash('size'))).toContain('How wide');
  });

  it('over a chart that comes later: it is said in its place', async () => {
    const { draw, letGo } = slowDrawing();
    const { standIn, ann, bot } = await scene({ draw, patience: 20 });
    const reply = await ann.slash('duct', duct);
    standIn.fail({ method: 'PATCH', path: /messages/, status: 502 });
    letGo();
    const shown = await ann.until(reply, ({ content }) => content.includes('The chart is left out'));
    expect(shown.embeds).toEqual(reply.embeds);
    expect(bot.logged).toMatchObject([{ what: 'a chart could not be put in afterwards', status: 502 }]);
  });
});

describe('a token that has run out', { timeout: 60_000 }, () => {
  it('while a chart was drawn: the answer stands, the program lives, and its buttons go on', async () => {
    const { draw, letGo } = slowDrawing();
    const { standIn, ann, bot } = await scene({ draw, patience: 20 });
    const reply = await ann.slash('duct', duct);
    standIn.clock.advance(16 * minute);
    letGo();
    await standIn.until(() => (bot.logged.length === 2 ? true : undefined));
    expect(bot.logged).toMatchObject([
      { what: 'a chart could not be put in afterwards', code: 50_027 },
      { what: 'could not say so', code: 50_027 },
    ]);
    expect(JSON.stringify(bot.logged)).not.toMatch(/token-\d/);
    expect((await ann.press(reply, 'Show the working')).content).toContain('Delivered airflow');
  });

  it('since a question was asked: its buttons and forms still go on, hours later', async () => {
    const { standIn, ann } = await scene();
    const asked = await ann.slash('size');
    standIn.clock.advance(300 * minute);
    const next = await answer(ann, asked, { 'room-length': '8 ft', 'room-width': '5 ft' });
    expect(question(next)).toContain('How high is the ceiling?');
  });
});

describe('a message that is gone', { timeout: 60_000 }, () => {
  it.each([
    ['deleted', 404, 10_008],
    ['in a thread that was archived', 400, 50_083],
  ])(
    '%s when its button is pressed: what was said is kept, and the answer comes as a new message',
    async (_, status, code) => {
      const { standIn, ann, bot, facts } = await scene();
      const asked = await ann.slash('size', { 'room-length': '8 ft', 'room-width': '5 ft' });
      standIn.fail({ path: /callback/, status, code });
      const now = await ann.press(asked, "Don't know");
      expect(now.id).not.toBe(asked.id);
      expect(question(now)).toContain('What stands in the room?');
      expect(facts()).toContain('ceiling-height');
      expect(question(await ann.press(now, 'Back'))).toContain('How high is the ceiling?');
      expect(bot.logged).toEqual([]);
    },
  );

  it('before its chart is there is left alone', async () => {
    const { draw, letGo } = slowDrawing();
    const { standIn, ann, bot } = await scene({ draw, patience: 20 });
    const reply = await ann.slash('duct', duct);
    standIn.removeMessage(reply);
    letGo();
    await standIn.until(() => (standIn.requests.at(-1)?.status === 404 ? true : undefined));
    expect((await ann.slash('help')).text).toContain('Commands');
    expect(ann.messages().filter(({ ephemeral }) => ephemeral)).toEqual([]);
    expect(bot.logged).toEqual([]);
  });
});

describe('a server', { timeout: 60_000 }, () => {
  it('the bot is thrown out of in the middle keeps its records, and other servers are served', async () => {
    const { standIn, bot } = await scene();
    const guild = standIn.addGuild({ name: 'Leaving', channels: ['general'] });
    const channel = standIn.channel('general', guild);
    const ben = standIn.user({ name: 'Ben', guild, channel });
    const asked = await ben.slash('size', { 'room-length': '8 ft', 'room-width': '5 ft' });
    standIn.fail({ path: /callback/, times: 2, status: 403, code: 50_001 });
    ben.begin.press(asked, "Don't know");
    standIn.removeGuild(guild);
    await standIn.until(() => (bot.logged.length === 2 ? true : undefined));
    expect(bot.logged).toMatchObject([{ code: 50_001 }, { what: 'could not say so', code: 50_001 }]);
    expect([...bot.store.scoped(guild.id).newestFacts(1).keys()]).toContain('ceiling-height');
    expect((await standIn.user().slash('help')).text).toContain('Commands');
  });

  it('that is away for a while is served when it is back', async () => {
    const { standIn, ann, bot } = await scene();
    const asked = await ann.slash('duct', run);
    standIn.removeGuild(standIn.guild(), { unavailable: true });
    const now = await ann.press(asked, '10 ft 4 in flex');
    standIn.returnGuild(standIn.guild());
    expect(question(await ann.press(now, 'Elbow 90°'))).toContain('10 ft 4 in flex; elbow 90');
    expect(bot.logged).toEqual([]);
  });
});

describe('a permission the bot lacks', { timeout: 60_000 }, () => {
  it('is named to whoever asked, with what it is for', async () => {
    const { standIn, ann } = await scene();
    standIn.withhold(standIn.channel(), ['EmbedLinks', 'AttachFiles']);
    const reply = await ann.slash('duct', duct);
    expect(reply.content).toContain('Allow this bot to attach files in this channel to see it.');
    expect(reply.content).toContain('If no answer shows below, allow this bot to embed links in this channel.');
    standIn.withhold(standIn.channel(), []);
    const again = await ann.slash('size', { ...room, running: 'on-demand' });
    expect(again.content).not.toContain('allow this bot');
  });
});

describe('what the platform tells twice', { timeout: 60_000 }, () => {
  it('also after a new session is done once, whatever kind it is', async () => {
    const { standIn, ann, bot, facts } = await scene();
    const asked = await ann.slash('size', {}, { twice: true });
    const form = await ann.pressExpectingForm(asked, 'Answer', { twice: true });
    const next = await ann.submit(form, { 'room-length': '8 ft', 'room-width': '5 ft' }, { twice: true });
    standIn.gateway.invalidateSessions();
    await standIn.until(() => (standIn.gateway.counts.identified === 2 ? true : undefined));
    const last = await ann.press(next, "Don't know", { twice: true });
    expect(question(last)).toContain('What stands in the room?');
    expect(facts()).toEqual(['room-length', 'room-width', 'ceiling-height']);
    expect(standIn.messages()).toHaveLength(1);
    expect(bot.logged).toEqual([]);
  });
});
