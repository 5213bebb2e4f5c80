import {
  type ActionRowData,
  ButtonStyle,
  ComponentType,
  type InteractionButtonComponentData,
  type MessageActionRowComponentData,
  type StringSelectMenuComponentData,
} from 'discord.js';
import type { Choice } from '#interview/question.ts';
import type { Asking, Screen } from '../screen.ts';
import { customId, type Press } from './press.ts';
import { cut, harmless, replyBlocks } from './text.ts';

type Row = ActionRowData<MessageActionRowComponentData>;

/** A picture that goes with a message. */
export interface Picture {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly alt: string;
}

/** A whole message: everything is set, so that editing in place leaves nothing of the screen before. */
export interface Message {
  content: string;
  embeds: { title?: string; description: string; image?: { url: string } }[];
  components: Row[];
  files: { attachment: Buffer; name: string; description: string }[];
  attachments: never[];
}

const buttonsInRow = 5;

/** A screen as a message: notes and question with buttons, or the answer with its picture. */
export function messageOf(screen: Screen, picture?: Picture): Message {
  const rows = screen.talk === undefined ? [] : rowsOf(screen, screen.talk);
  const { title, blocks } = screen.reply ? replyBlocks(screen.reply) : { title: undefined, blocks: [] };
  const description = blocks.length > 0 ? blocks : screen.reply ? [''] : [];
  return {
    content: cut([...screen.notes.map(harmless), ...(screen.asking ? [askingText(screen)] : [])].join('\n'), 2000),
    embeds: description.map((block, index) => ({
      ...(index === 0 && title !== undefined ? { title } : {}),
      description: block === '' ? '\u200b' : block,
      ...(index === 0 && picture ? { image: { url: `attachment://${picture.name}` } } : {}),
    })),
    components: rows.map((components) => ({ type: ComponentType.ActionRow, components })),
    files: picture
      ? [{ attachment: Buffer.from(picture.bytes), name: picture.name, description: cut(picture.alt, 1024) }]
      : [],
    attachments: [],
  };
}

function askingText({ asking, command }: Screen): string {
  if (!asking) return '';
  const more = asking.questions.length > 1 ? asking.questions.map(({ brief }) => `- ${harmless(brief)}`) : [];
  const hints = asking.choices.flatMap(({ label, hint }) => (hint ? [`-# ${harmless(label)}: ${harmless(hint)}`] : []));
  return [
    `-# ${command}`,
    `**${harmless(asking.prompt)}**`,
    ...(more.length > 0 ? more : asking.choices.length === 0 ? [`-# ${harmless(asking.question.accepts)}`] : []),
    ...hints,
  ].join('\n');
}

type Button = InteractionButtonComponentData;

const button = (label: string, press: Press, style: ButtonStyle = ButtonStyle.Secondary): Button => ({
  type: ComponentType.Button,
  style: style as Button['style'],
  label: label.length > 80 ? `${label.slice(0, 79)}…` : label,
  customId: customId(press),
});

function rowsOf(screen: Screen, talk: string): (Button | StringSelectMenuComponentData)[][] {
  const at = { talk, turn: screen.revision };
  if (screen.asking) return askingRows(screen.asking, at);
  const standing = [
    button('Show the working', { act: 'working', ...at }),
    ...(screen.reply?.suggestions ?? [])
      .slice(0, buttonsInRow - 1)
      .map(({ label, command }) => button(label, { act: 'start', command })),
  ];
  const given = (screen.given ?? []).slice(0, 25);
  const change: StringSelectMenuComponentData = {
    type: ComponentType.StringSelect,
    customId: customId({ act: 'change', ...at }),
    placeholder: 'Change an answer',
    options: given.map(({ id, brief, shown }) => ({
      label: cut(brief, 100),
      description: cut(shown.replace(/\n/g, ' '), 100),
      value: id,
    })),
  };
  return [standing, ...(given.length > 0 ? [[change]] : [])];
}

function askingRows(asking: Asking, at: { talk: string; turn: number }): (Button | StringSelectMenuComponentData)[][] {
  const { question, choices } = asking;
  const several = question.widget.kind === 'several';
  const typed = question.widget.kind === 'text' || question.growing !== undefined;
  const asButtons = !several && choices.length <= buttonsInRow * 2;
  const standing = [
    ...(typed ? [button(choices.length > 0 ? 'Type it' : 'Answer', { act: 'form', ...at }, ButtonStyle.Primary)] : []),
    button("Don't know", { act: 'not-known', ...at }),
    button('Why', { act: 'why', ...at }),
    ...(asking.canGoBack ? [button('Back', { act: 'back', ...at })] : []),
  ];
  if (choices.length === 0) return [standing];
  if (!asButtons) return [[menu(asking, at, several)], standing];
  const rows: Button[][] = [];
  choices.forEach((choice, index) => {
    if (index % buttonsInRow === 0) rows.push([]);
    rows.at(-1)?.push(button(choice.label, { act: 'answer', ...at, choice: String(index) }, ButtonStyle.Primary));
  });
  return [...rows, standing];
}

const menu = (
  { choices, question }: Asking,
  at: { talk: string; turn: number },
  several: boolean,
): StringSelectMenuComponentData => {
  const offered = choices.slice(0, several ? 24 : 25);
  return {
    type: ComponentType.StringSelect,
    customId: customId({ act: 'pick', ...at }),
    placeholder: cut(question.brief, 150),
    minValues: 1,
    maxValues: several ? offered.length : 1,
    options: [
      ...offered.map(({ id, label, hint }: Choice) => ({
        label: cut(label, 100),
        value: id,
        ...(hint ? { description: cut(hint, 100) } : {}),
      })),
      ...(several ? [{ label: 'None of these', value: 'none' }] : []),
    ],
  };
};
