import { MessageFlags } from 'discord.js';
import type { Reply } from '#findings/reply.ts';
import type { ScopedStore } from '#store/store.ts';
import { discordWords } from '#words/discord.ts';
import { standing } from '#words/standing.ts';
import type { Screen } from '../screen.ts';
import type { Drawing } from './chart-pictures.ts';
import type { Answerable, Decision } from './decision.ts';
import { harmless } from './harmless.ts';
import { type House, jobOf, wordsFor } from './house.ts';
import { type Log, loggable } from './log.ts';
import { mayAttach, mayEmbed } from './may-attach.ts';
import { type Around, type Enclosed, type Message, messageOf } from './message.ts';
import { isOutOfReach } from './out-of-reach.ts';
import { inFile, pieces, plainReply, replyText } from './text.ts';
import { workingText } from './working.ts';

/** Where something is told, and with what. */
export interface Telling {
  readonly house: House;
  readonly store: ScopedStore;
  readonly log: Log;
  readonly interaction: Answerable;
}

/** Sends what was decided. */
export async function tell(telling: Telling, decision: Exclude<Decision, { does: 'take' }>): Promise<void> {
  const { interaction } = telling;
  switch (decision.does) {
    case 'nothing':
      return;
    case 'say':
      await sayTo(interaction, decision.text);
      return;
    case 'ask':
      if (!interaction.isModalSubmit()) await interaction.showModal(decision.form);
      return;
    case 'explain':
      return explain(telling, decision);
    case 'show':
      return show(telling, decision);
  }
}

/** A sentence for the one who acted. Where an answer was promised to everybody, it takes the place of that. */
async function sayTo(interaction: Answerable, content: string): Promise<void> {
  const apart = { content, flags: MessageFlags.Ephemeral } as const;
  if (!interaction.deferred) await interaction.reply(apart);
  else if (interaction.isModalSubmit() && interaction.isFromMessage()) await interaction.followUp(apart);
  else await interaction.editReply({ content, attachments: [], files: [] });
}

/** Shows a screen at once, its picture with it if it is drawn in time and put in afterwards if not. */
async function show(telling: Telling, { screen, where }: Extract<Decision, { does: 'show' }>): Promise<void> {
  const { house, store, interaction } = telling;
  // Setting pages may take longer than the platform waits, the first time on a busy machine surely.
  if (screen.reply?.papers && !interaction.deferred) {
    if (interaction.isChatInputCommand()) await interaction.deferReply();
    else if (where === 'in place' && interaction.isButton()) await interaction.deferUpdate();
  }
  const words = wordsFor(store, interaction);
  const chart = screen.reply?.chart;
  const drawing = chart && mayAttach(interaction) ? house.pictures.of(chart) : undefined;
  const drawn = drawing && (await settledWithin(patienceFor(drawing, telling), drawing.bytes));
  if (drawn?.outcome === 'failed') telling.log('error', 'a chart could not be drawn', loggable(drawn.error));
  const chartless = !chart
    ? []
    : !mayAttach(interaction)
      ? [words.chartNotAllowed]
      : drawing === undefined
        ? [words.tooManyCharts]
        : drawn?.outcome === 'failed'
          ? [words.chartFailed]
          : drawn?.outcome === 'late'
            ? [words.chartFollows]
            : [];
  const fileless =
    (screen.reply?.files ?? screen.reply?.papers) && !mayAttach(interaction) ? [words.fileNotAllowed] : [];
  const unseen = screen.reply && !mayEmbed(interaction) ? [words.mayNotEmbed] : [];
  const lacking = [...chartless, ...fileless, ...unseen];
  const job = screen.talk === undefined ? undefined : jobOf(store, screen.talk, screen.language);
  const cutShort = screen.talk === undefined && screen.reply !== undefined && !replyText(screen.reply).whole;
  const whole = cutShort && screen.reply ? wholeText(screen.command, screen.reply) : undefined;
  const file = whole && mayAttach(interaction) ? whole.file : undefined;
  const brought = mayAttach(interaction) ? await filesOf(screen) : [];
  const around = {
    job,
    file,
    brought,
    picture: drawn?.outcome === 'done' ? asPicture(screen, drawn.value) : undefined,
  };
  await put(interaction, messageOf({ ...screen, notes: [...screen.notes, ...lacking] }, around), where);
  if (whole && !file) await inPieces(interaction, whole.text, 'further');
  if (drawing && drawn?.outcome === 'late') await putLatePicture(telling, screen, { job, file, brought, drawing });
}

/** Puts a message where it belongs: the one that was pressed changed, or a new one, also where that one is gone. */
async function put(interaction: Answerable, message: Message, where: 'new' | 'in place'): Promise<void> {
  const { attachments: _, ...fresh } = message;
  try {
    if (await changed(interaction, message, where)) return;
  } catch (error) {
    if (!isOutOfReach(error)) throw error;
  }
  if (interaction.deferred) await interaction.followUp(fresh);
  else await interaction.reply(fresh);
}

/** Changes the message that was promised or pressed; false where a new one is due. */
async function changed(interaction: Answerable, message: Message, where: 'new' | 'in place'): Promise<boolean> {
  if (interaction.deferred) {
    // What was promised may have become a photo by now; that message stays as it is.
    if (where === 'new' && interaction.replied) return false;
    await interaction.editReply(message);
    return true;
  }
  if (where === 'new') return false;
  if (interaction.isMessageComponent()) await interaction.update(message);
  else if (interaction.isModalSubmit() && interaction.isFromMessage()) await interaction.update(message);
  else return false;
  return true;
}

/** Puts in a picture that took too long, unless the conversation has gone on meanwhile. */
async function putLatePicture(
  { store, interaction, log }: Telling,
  screen: Screen,
  { drawing, ...around }: Omit<Around, 'picture'> & { readonly drawing: Drawing },
): Promise<void> {
  const stillShown = () => screen.talk === undefined || store.talk(screen.talk)?.revision === screen.revision;
  try {
    const picture = asPicture(screen, await drawing.bytes);
    if (stillShown()) await interaction.editReply(messageOf(screen, { ...around, picture }));
  } catch (error) {
    // Somebody deleted the answer meanwhile, or its thread was put to sleep.
    if (isOutOfReach(error)) return;
    log('error', 'a chart could not be put in afterwards', loggable(error));
    const notes = [...screen.notes, wordsFor(store, interaction).chartFailed];
    const said = stillShown() ? interaction.editReply(messageOf({ ...screen, notes }, around)) : undefined;
    await said?.catch((again: unknown) => log('error', 'could not say so', loggable(again)));
  }
}

async function filesOf({ reply }: Screen): Promise<readonly Enclosed[]> {
  const words = discordWords[reply?.language ?? 'english'];
  const lists = (reply?.files ?? []).map(({ name, text }) => ({
    name,
    bytes: Buffer.from(text),
    alt: words.listFile(name),
  }));
  if (!reply?.papers) return lists;
  // Pages are set in a thread of their own, begun with the first: nobody else waits for them.
  const { paperElsewhere } = await import('#pictures/drawn-elsewhere.ts');
  const papers = reply.papers.map(async ({ name, paper }) => ({
    name,
    bytes: await paperElsewhere(paper),
    alt: words.paperFile(paper.title),
  }));
  return [...lists, ...(await Promise.all(papers))];
}

const asPicture = ({ command, reply }: Screen, bytes: Uint8Array): Enclosed => ({
  name: `${command}.png`,
  bytes,
  alt: reply?.chart?.alt ?? '',
});

/** With more than this many to be drawn first, the chart is sure to come late, so nobody waits for it. */
const mostAhead = 4;

/** An answer that was promised has a quarter of an hour; so long its chart is waited for, rather than sent after it. */
const promisedPatience = 10_000;

/**
 * How long an answer waits for its chart. What the platform was told late has less time left; its clock and ours may differ,
 * which only ever makes the wait shorter.
 */
function patienceFor({ ahead }: Drawing, { house, interaction }: Telling): number {
  if (interaction.deferred) return promisedPatience;
  const age = Math.max(0, Date.now() - interaction.createdTimestamp);
  return ahead > mostAhead ? 0 : Math.max(0, house.patience - age);
}

type Settled<T> =
  | { readonly outcome: 'done'; readonly value: T }
  | { readonly outcome: 'failed'; readonly error: unknown }
  | { readonly outcome: 'late' };

async function settledWithin<T>(milliseconds: number, work: Promise<T>): Promise<Settled<T>> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<Settled<T>>((resolve) => {
    timer = setTimeout(() => resolve({ outcome: 'late' }), milliseconds);
  });
  const settled = work.then(
    (value): Settled<T> => ({ outcome: 'done', value }),
    (error: unknown): Settled<T> => ({ outcome: 'failed', error }),
  );
  const first = await Promise.race([settled, late]);
  clearTimeout(timer);
  return first;
}

/** More messages than this are a wall of text; a file reads better then. */
const mostPieces = 4;

async function explain(
  { interaction }: Telling,
  { what, reply, command }: Extract<Decision, { does: 'explain' }>,
): Promise<void> {
  const text = what === 'working' ? workingText(reply) : undefined;
  if (text !== undefined && (pieces(text).length <= mostPieces || !mayAttach(interaction))) {
    return inPieces(interaction, text, 'first');
  }
  const whole = wholeText(command, reply);
  if (!mayAttach(interaction)) return inPieces(interaction, whole.text, 'first');
  const { name, bytes, alt } = whole.file;
  await interaction.reply({
    content: standing[reply.language ?? 'english'].wholeInFile,
    files: [{ attachment: Buffer.from(bytes), name, description: alt }],
    flags: MessageFlags.Ephemeral,
  });
}

/** Text for one person, in as many messages as it takes. */
async function inPieces(interaction: Answerable, text: string, place: 'first' | 'further'): Promise<void> {
  const [first, ...rest] = pieces(text);
  const message = (content: string) => ({ content, flags: MessageFlags.Ephemeral }) as const;
  if (first !== undefined && place === 'first') await interaction.reply(message(first));
  for (const piece of place === 'first' ? rest : pieces(text)) await interaction.followUp(message(piece));
}

/** Everything a reply holds as plain text, for a file or for messages. */
function wholeText(command: string, reply: Reply): { text: string; file: Enclosed } {
  const words = standing[reply.language ?? 'english'];
  const working = reply.findings.length > 0 ? ['', '', words.working, workingText(reply, inFile)] : [];
  const text = [plainReply(reply), ...working].join('\n');
  return {
    text: harmless(text),
    file: { name: `${command}.txt`, bytes: Buffer.from(text), alt: words.wholeAsText },
  };
}
