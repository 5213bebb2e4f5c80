import {
  ButtonStyle,
  ComponentType,
  type InteractionButtonComponentData,
  type StringSelectMenuComponentData,
} from 'discord.js';
import type { Choice } from '#interview/question.ts';
import type { Language } from '#words/language.ts';
import { standing as words } from '#words/standing.ts';
import { whichJobWords } from '#words/which-job.ts';
import type { Asking, Given, Screen } from '../screen.ts';
import { isTyped, noneOfThese } from './form.ts';
import { clipped, visible } from './harmless.ts';
import { customId, type Press } from './press.ts';

type Button = InteractionButtonComponentData;
type Row = readonly (Button | StringSelectMenuComponentData)[];
type At = Pick<Press, 'talk' | 'turn'>;

/** The platform's limits: rows, buttons in one, characters on one, choices in a menu, characters in one. */
const most = { rows: 5, buttonsInRow: 5, label: 80, choices: 25, choiceText: 100, placeholder: 150 } as const;

/** More than two rows of buttons do not fit a phone held in one hand; then a menu serves better. */
const mostAsButtons = most.buttonsInRow * 2;

const line = (text: string): string => visible(text).replace(/\s+/g, ' ').trim();

const button = (label: string, press: Press, style: ButtonStyle = ButtonStyle.Secondary): Button => ({
  type: ComponentType.Button,
  style: style as Button['style'],
  label: clipped(line(label), most.label),
  customId: customId(press),
});

/** The buttons and menus under a screen, row by row. */
export function rowsOf(screen: Screen, talk: string, whole: boolean): readonly Row[] {
  const at = { talk, turn: screen.revision };
  return screen.asking ? askingRows(screen, screen.asking, at) : answeredRows(screen, at, whole);
}

/** The way to a sheet of its own, where the notes offer it. */
const anotherJob = ({ mayGoElsewhere, language = 'english' }: Screen, at: At): readonly Button[] =>
  mayGoElsewhere ? [button(whichJobWords[language].anotherJob, { act: 'another-job', ...at })] : [];

function answeredRows(screen: Screen, at: At, whole: boolean): readonly Row[] {
  const { reply, given = [], language = 'english' } = screen;
  const { showWorking, showEverything } = words[language];
  const standing = [
    button(showWorking, { act: 'working', ...at }),
    ...(whole ? [] : [button(showEverything, { act: 'everything', ...at })]),
    ...anotherJob(screen, at),
  ];
  const next = [...new Map((reply?.suggestions ?? []).map((each) => [each.command, each])).values()].map(
    ({ label, command }) => button(label, { act: 'start', ...at, choice: command }),
  );
  const menus = inChunks(given, most.choices).slice(0, most.rows - 1);
  const buttons = inChunks([...standing, ...next], most.buttonsInRow).slice(0, most.rows - menus.length);
  return [...buttons, ...menus.map((chunk, index) => [changeMenu(chunk, at, { index, of: menus.length, language })])];
}

/** A menu of answers to change. Many answers take several menus, each named for the answer it begins with. */
function changeMenu(
  given: readonly Given[],
  at: At,
  { index, of, language }: { readonly index: number; readonly of: number; readonly language: Language },
): StringSelectMenuComponentData {
  const [first] = given;
  const place = of > 1 && first ? words[language].changeFrom(first.brief) : words[language].change;
  return {
    type: ComponentType.StringSelect,
    customId: customId({ act: 'change', ...at, ...(index > 0 ? { choice: String(index) } : {}) }),
    placeholder: clipped(line(place), most.placeholder),
    options: given.map(({ id, brief, shown }) => ({
      label: clipped(line(brief), most.choiceText),
      description: clipped(line(shown), most.choiceText),
      value: id,
    })),
  };
}

function inChunks<Item>(items: readonly Item[], size: number): readonly (readonly Item[])[] {
  return Array.from({ length: Math.ceil(items.length / size) }, (_, index) =>
    items.slice(index * size, (index + 1) * size),
  );
}

/** How the answer to a screen is given: in a form, where it asks several things; else by what suits the question best. */
export function givenBy({ questions, question, choices }: Asking): 'form' | 'buttons' | 'menu' {
  if (questions.length > 1 || choices.length === 0) return 'form';
  return question.widget.kind !== 'several' && choices.length <= mostAsButtons ? 'buttons' : 'menu';
}

function askingRows(screen: Screen, asking: Asking, at: At): readonly Row[] {
  const { language = 'english' } = screen;
  const { typeIt, answer, dontKnow, why, back } = words[language];
  const { choices, question, canGoBack } = asking;
  const given = givenBy(asking);
  const form = (label: string) => button(label, { act: 'form', ...at }, ButtonStyle.Primary);
  const typed = isTyped(question) || choices.length > most.choices ? [form(typeIt)] : [];
  const standing = [
    ...(given === 'form' ? [form(answer)] : typed),
    button(dontKnow, { act: 'not-known', ...at }),
    button(why, { act: 'why', ...at }),
    ...(canGoBack ? [button(back, { act: 'back', ...at })] : []),
    ...anotherJob(screen, at),
  ];
  if (given === 'form') return [standing];
  return given === 'buttons' ? [...choiceRows(choices, at), standing] : [[menu(asking, at, language)], standing];
}

function choiceRows(choices: readonly Choice[], at: At): readonly Row[] {
  const rows: Button[][] = [];
  choices.forEach(({ id, label }, index) => {
    if (index % most.buttonsInRow === 0) rows.push([]);
    const style = id === 'done' ? ButtonStyle.Success : ButtonStyle.Primary;
    rows.at(-1)?.push(button(label, { act: 'answer', ...at, choice: String(index) }, style));
  });
  return rows;
}

function menu({ choices, question }: Asking, at: At, language: Language): StringSelectMenuComponentData {
  const several = question.widget.kind === 'several';
  const offered = choices.slice(0, several ? most.choices - 1 : most.choices);
  return {
    type: ComponentType.StringSelect,
    customId: customId({ act: 'pick', ...at }),
    placeholder: clipped(
      line(several ? words[language].pickAll(question.brief) : words[language].pickOne(question.brief)),
      most.placeholder,
    ),
    minValues: 1,
    maxValues: several ? offered.length : 1,
    options: [
      ...offered.map(({ id, label, hint }) => ({
        label: clipped(line(label), most.choiceText),
        value: id,
        ...(hint ? { description: clipped(line(hint), most.choiceText) } : {}),
      })),
      ...(several ? [noneOfThese(language)] : []),
    ],
  };
}
