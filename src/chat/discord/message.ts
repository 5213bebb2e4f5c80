import { type ActionRowData, ComponentType, type MessageActionRowComponentData } from 'discord.js';
import type { Weight } from '#findings/finding.ts';
import { heaviest } from '#findings/reply.ts';
import { conversationWords } from '#words/conversation.ts';
import type { Language } from '#words/language.ts';
import { standing } from '#words/standing.ts';
import type { Asking, Given, Screen } from '../screen.ts';
import { deskRows } from './desk-press.ts';
import { clipped, harmless, visible } from './harmless.ts';
import { givenBy, rowsOf } from './rows.ts';
import { limits, replyText } from './text.ts';

/** A file that goes with a message. A picture is shown with the answer, any other file below it. */
export interface Enclosed {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What is in it, for somebody who cannot see it. */
  readonly alt: string;
}

/** A whole message: everything is set, so that editing in place leaves nothing of the screen before. */
export interface Message {
  content: string;
  embeds: {
    title?: string;
    description?: string;
    color: number;
    image?: { url: string };
    footer?: { text: string };
  }[];
  components: ActionRowData<MessageActionRowComponentData>[];
  files: { attachment: Buffer; name: string; description: string }[];
  attachments: never[];
}

/** What stands around a screen. */
export interface Around {
  /** The job the screen is about, in words. */
  readonly job?: string | undefined;
  readonly picture?: Enclosed | undefined;
  readonly file?: Enclosed | undefined;
  /** The files the reply itself brings. */
  readonly brought?: readonly Enclosed[];
}

/** Decoration only: every weight is also said in words. */
const colours: Readonly<Record<Weight, number>> = {
  stop: 0x9c2f26,
  caution: 0x9a6a10,
  advice: 0x14507a,
  good: 0x2d6a4f,
};

/** A screen as a message: notes and question with buttons, or the answer with its picture. */
export function messageOf(screen: Screen, { job, picture, file, brought = [] }: Around = {}): Message {
  const { fileHoldsAll, allFollows } = standing[screen.reply?.language ?? 'english'];
  const more = file ? fileHoldsAll : screen.talk === undefined ? allFollows : undefined;
  const text = screen.reply ? replyText(screen.reply, more) : undefined;
  const rows =
    screen.talk === undefined
      ? deskRows(screen.reply?.presses ?? [])
      : rowsOf(screen, screen.talk, text?.whole ?? true);
  return {
    content: contentOf(screen, job),
    embeds: screen.reply && text ? embedsOf(text, { weight: heaviest(screen.reply.findings), job, picture }) : [],
    components: rows.map((components) => ({ type: ComponentType.ActionRow, components: [...components] })),
    files: [picture, file, ...brought].flatMap((each) => (each ? [sent(each)] : [])),
    attachments: [],
  };
}

const sent = ({ name, bytes, alt }: Enclosed) => ({
  // The same bytes, not a copy of them.
  attachment: Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength),
  name,
  description: clipped(visible(alt), 1024),
});

function embedsOf(
  { title, blocks }: ReturnType<typeof replyText>,
  { weight, job, picture }: Around & { readonly weight: Weight },
): Message['embeds'] {
  const shown = blocks.length > 0 ? blocks : [''];
  return shown.map((description, index) => ({
    ...(index === 0 && title !== undefined ? { title } : {}),
    ...(description === '' ? {} : { description }),
    color: colours[weight],
    ...(index === 0 && picture ? { image: { url: `attachment://${picture.name}` } } : {}),
    ...(index === shown.length - 1 && job !== undefined
      ? { footer: { text: clipped(visible(job), limits.footer) } }
      : {}),
  }));
}

function contentOf(screen: Screen, job: string | undefined): string {
  const { asking, notes, noted = [], given = [], command, language = 'english' } = screen;
  const said = [...notedLine(noted, asking !== undefined, language), ...notes.map(harmless)];
  if (!asking) return clipped(said.join('\n'), limits.content);
  const place = `-# /${[command, ...(job === undefined ? [] : [harmless(job)])].join(' · ')}`;
  const earlier = given.filter(({ id }) => !noted.some((each) => each.id === id));
  const head = [place, ...soFar(earlier, language), ...said];
  const question = questionText(asking, language);
  // The question itself must stand whole; what was said before gives way.
  return [clipped(head.join('\n'), limits.content - question.length - 1), question].join('\n');
}

/** What is known by now: the latest answers in words, the rest counted. */
function soFar(earlier: readonly Given[], language: Language): readonly string[] {
  const { soFar: inWords, notKnown } = standing[language];
  const { dontKnow } = conversationWords[language];
  const known = earlier.filter(({ shown }) => !shown.startsWith(dontKnow));
  const unknown = earlier.length - known.length;
  const items = [
    ...(known.length > 0 ? [shortList(known.map(readBack), language)] : []),
    ...(unknown > 0 ? [notKnown(unknown)] : []),
  ];
  return items.length === 0 ? [] : [`-# ${inWords(items.join(' · '))}`];
}

const readBack = ({ brief, shown }: Given): string => harmless(`${brief}: ${shown}`.replace(/\s+/g, ' '));

/** What was just understood: plain to see while there is more to ask, small above an answer. */
function notedLine(noted: readonly Given[], asking: boolean, language: Language): readonly string[] {
  if (noted.length === 0) return [];
  const line = noted.length === 1 ? noted.map(readBack).join() : shortList(noted.map(readBack), language, mostNoted);
  const said = `${standing[language].noted} ${line}`;
  return [asking ? said : `-# ${said}`];
}

/** Characters of a list: a line or two on a phone, a few more where they are the latest. */
const mostSoFar = 200;
const mostNoted = 400;

/** The latest of a list that fit, the earlier ones counted. */
function shortList(items: readonly string[], language: Language, most = mostSoFar): string {
  const kept: string[] = [];
  let used = 0;
  for (const item of items.toReversed()) {
    used += item.length + 3;
    if (kept.length > 0 && used > most) break;
    kept.unshift(clipped(item, 80));
  }
  const more = items.length - kept.length;
  return [...(more > 0 ? [standing[language].more(more)] : []), ...kept].join(' · ');
}

/** Leaves room above the question for what was said of the last answer. */
const mostQuestion = 1500;

function questionText(asking: Asking, language: Language): string {
  const { questions, prompt, question, choices, now } = asking;
  const prompts = questions.length > 1 ? questions.map((each) => each.prompt) : [prompt];
  // A menu shows the hints itself; a button has no room for them.
  const hints = givenBy(asking) === 'buttons' ? choices.filter(({ hint }) => hint) : [];
  return clipped(
    [
      ...prompts.map((each) => `**${harmless(each)}**`),
      ...(now === undefined ? [] : [standing[language].now(harmless(now))]),
      ...(questions.length === 1 && choices.length === 0 ? [`-# ${harmless(question.accepts)}`] : []),
      ...hints.map(({ label, hint = '' }) => `-# ${harmless(label)}: ${harmless(hint)}`),
    ].join('\n'),
    mostQuestion,
  );
}
