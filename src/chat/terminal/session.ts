import type { PressOffer, Reply } from '#findings/reply.ts';
import { meansNotKnown, turnMeant } from '#interview/words.ts';
import { SheetTrouble } from '#store/sheet-trouble.ts';
import type { ScopedStore } from '#store/store.ts';
import type { Language } from '#words/language.ts';
import { terminalWords } from '#words/terminal.ts';
import { crewLanguage } from '../answers.ts';
import type { Command, Speaker, Start } from '../command.ts';
import { begin, hear } from '../conversation.ts';
import { acted, deskFor } from '../desk.ts';
import { clipped, nearest, optionsFrom, withoutShellFlags, wordsOf } from '../options.ts';
import type { Asking, Screen } from '../screen.ts';
import { sheetTroubleText } from '../sheet-trouble-text.ts';
import { type Heard, recalledTalk, screenOf, type Talk } from '../talk.ts';
import { completionsOf } from './completions.ts';
import { deskAnswer } from './desk.ts';
import { photoAt } from './given-photo.ts';
import { type Paper, paragraph } from './paper.ts';
import { afterField, type Filling, fieldBefore, fieldLeft, fieldText, fieldTrouble, pressLines } from './presses.ts';
import { replyText, screenText } from './render.ts';
import { workingText } from './working-text.ts';

/** What a session needs from outside. */
export interface Outside {
  readonly store: ScopedStore;
  readonly commands: readonly Command[];
  readonly who: string;
  /** The language asked for at the start; the crew's own setting holds where it is left out. */
  readonly language?: Language | undefined;
  /** Looked up for every answer, since a window can be resized. */
  readonly paper: Paper;
  /** Draws the chart of a reply to a file and says where it is. */
  drawn(command: string, reply: Reply): Promise<string | undefined>;
  /** Keeps the files of a reply, and says of each where it is. Left out where none are kept. */
  kept?(reply: Reply): Promise<readonly string[]>;
}

/** A conversation in a terminal: one typed line in, the text to print out. It keeps no state that a restart would lose. */
export interface Session {
  /** Three lines, and a fourth where a question was left open, or for somebody who has hardly begun. */
  greeting(): string;
  say(line: string): Promise<string>;
  /** Whether a question stands open. */
  asking(): boolean;
  /** The words that would complete a typed line, and the end of the line they replace. */
  completions(line: string): readonly [candidates: string[], typed: string];
}

const channel = 'terminal';
const longestLine = 2000;

export function terminalSession(outside: Outside): Session {
  const { store, commands, who } = outside;
  const speaker: Speaker = {
    channel,
    who,
    get language() {
      return outside.language ?? crewLanguage(store);
    },
  };
  const words = () => terminalWords[speaker.language ?? 'english'];
  const answering = commands.filter((command) => command.kind === 'answer');
  const desk = deskFor({
    store: () => store,
    recordsOpen: () => true,
    speaker,
    commands,
    mayManage: true,
    photo: (path) => photoAt(path, speaker.language),
  });
  const plain = (text: string): string => paragraph(text, outside.paper);
  let open: Talk | undefined;
  /** A question left for another command, to come back to. */
  let aside: string | undefined;
  let last: Reply | undefined;
  /** What can be pressed under the last answer, by its number. */
  let offered: readonly PressOffer[] = [];
  /** A form being filled in line by line. It is asked again after a restart, as one closed on a phone is. */
  let filling: Filling | undefined;

  const asking = (talk = open): Asking | undefined => (talk ? screenOf(store, talk).asking : undefined);

  const unanswered = (id: string | undefined): Talk | undefined => {
    const talk = id === undefined ? undefined : recalledTalk(store, answering, id, speaker.language);
    return asking(talk) ? talk : undefined;
  };

  /** The question a person left unanswered, in this session or before a restart. */
  const unfinished = (): Talk | undefined => unanswered(store.latestTalk(speaker)?.id) ?? unanswered(aside);

  /** Whether there is one job at most, be it the demo house. */
  const isNewcomer = (): boolean => store.listSheets({ limit: 2 }).length < 2;

  /** Where the picture and the files of a reply are. */
  const places = async (command: string, reply: Reply): Promise<readonly string[]> => {
    const path = await outside.drawn(command, reply);
    return [...(path === undefined ? [] : [words().chart(path)]), ...((await outside.kept?.(reply)) ?? [])];
  };

  const shown = async (screen: Screen): Promise<string> => {
    open = screen.talk === undefined ? undefined : recalledTalk(store, answering, screen.talk, speaker.language);
    const text = screenText(screen, outside.paper);
    if (!screen.reply) return text;
    last = screen.reply;
    const where = await places(screen.command, screen.reply);
    const left = unanswered(aside);
    const next = [
      ...(screen.reply.suggestions ?? []).map(({ label, command }) => words().suggestion(label, command)),
      ...(left ? [words().goOnTo(left.command.name)] : []),
    ];
    return [text, '', ...where, ...[words().afterAnswer, ...next].map(plain)].join('\n');
  };

  const begun = async ({ start, given, notes, line }: Start): Promise<string> => {
    const command = answering.find(({ name }) => name === start);
    if (!command) return plain(unknownCommand(start, commands, speaker.language));
    const screen = begin(store, command, given, { ...speaker, line });
    return shown({ ...screen, noted: [], notes: [...notes, ...screen.notes] });
  };

  const atDesk = async (command: string, reply: Reply | Start): Promise<string> => {
    if ('start' in reply) return begun(reply);
    if (reply.findings.length > 0) last = reply;
    filling = reply.asks && { offer: reply.asks, said: {} };
    offered = reply.refused || reply.asks ? [] : (reply.presses ?? []);
    const where = await places(command, reply);
    const below = [
      ...where,
      ...pressLines(offered, outside.paper, speaker.language),
      ...(filling ? [fieldText(filling, outside.paper, speaker.language)] : []),
    ];
    const notes = (reply.notes ?? []).map(plain);
    return [
      ...notes,
      ...(notes.length > 0 ? [''] : []),
      replyText(reply, outside.paper),
      ...(below.length > 0 ? ['', ...below] : []),
    ].join('\n');
  };

  const pressed = async ({ command: name, action: called, given }: Omit<PressOffer, 'label'>): Promise<string> => {
    const command = commands.find((each) => each.name === name);
    const action = command?.kind === 'desk' ? command.actions.find((each) => each.name === called) : undefined;
    return action ? atDesk(name, acted(action, desk, given)) : plain(words().noSuchPress(`${name} ${called}`));
  };

  /** Whether a line with a slash before it names a file where a photo is asked for, rather than a command. */
  const isPath = (form: Filling, text: string): boolean => {
    const [word = ''] = text.slice(1).toLowerCase().split(/\s/, 1);
    return fieldLeft(form)?.photo === true && !commands.some(({ name }) => name === word);
  };

  const filled = async (form: Filling, text: string): Promise<string> => {
    const asked = (about: Filling) => fieldText(about, outside.paper, speaker.language);
    const [word = ''] = text.toLowerCase().split(/\s/);
    const isCommand = text === word || namesOptions.test(text) || namesAction(text, commands);
    const about = aboutField(form, text, isCommand && commands.some(({ name }) => name === word) ? word : undefined);
    if (about !== undefined) return [plain(about), asked(form)].join('\n');
    if (turnMeant(text) === 'back') {
      filling = fieldBefore(form);
      return asked(filling);
    }
    const trouble = fieldTrouble(form, text);
    if (trouble !== undefined) return [plain(trouble), asked(form)].join('\n');
    const next = afterField(form, text);
    filling = next;
    if (fieldLeft(next)) return fieldText(next, outside.paper, speaker.language);
    filling = undefined;
    return pressed({ ...next.offer, given: { ...next.offer.given, ...next.said } });
  };

  /** What is said of a field instead of filling it in: why it is asked, or that a command takes a slash here. */
  const aboutField = (form: Filling, text: string, command: string | undefined): string | undefined => {
    if (turnMeant(text) === 'why' || isHelp.test(text))
      return words().inForm(form.offer.title, fieldLeft(form)?.accepts ?? '');
    return command === undefined ? undefined : words().forTheCommand(command);
  };

  /** A line that names no command is read as a question in plain words, where it is more than a slip in a command's name. */
  const inPlainWords = async (name: string, line: string): Promise<string> => {
    const ask = commands.find((each) => each.name === 'ask');
    const action = ask?.kind === 'desk' ? ask.actions.find((each) => each.name === '') : undefined;
    const isSlip = !/\s/.test(line) || /\s[a-z][\w-]*=/i.test(line);
    const reply = isSlip || !action ? undefined : acted(action, desk, { text: line });
    if (reply === undefined) return plain(unknownCommand(name, commands, speaker.language));
    if ('refused' in reply && reply.refused) {
      // A whole sentence was no slip in a name: it is told what could be read, and what to do if somebody is in danger.
      const isSentence = line.trim().split(/\s+/).length > 3;
      return plain(isSentence ? reply.headline : unknownCommand(name, commands, speaker.language));
    }
    if (open && asking()) aside = open.id;
    const said = await atDesk('ask', reply);
    const meant = nearest(
      name.toLowerCase(),
      commands.map((command) => command.name),
    );
    return meant === undefined || name.length < 4 ? said : `${said}\n${plain(words().ifYouMeant(meant))}`;
  };

  const started = async (typed: readonly string[], line: string): Promise<string> => {
    const { rest, flags } = withoutShellFlags(typed);
    if (flags.length === 0) return startedFrom(typed, line);
    const left = words().forTheShell(flags.map(clipped).join(', '));
    return [plain(left), await startedFrom(rest, rest.join(' '))].join('\n');
  };

  const startedFrom = async (words: readonly string[], line: string): Promise<string> => {
    const [name = '', ...rest] = words;
    const command = commands.find((each) => each.name === name.toLowerCase());
    if (!command) return inPlainWords(name, line);
    offered = [];
    if (open && asking()) aside = open.id;
    if (command.kind === 'desk') {
      open = undefined;
      const answer = deskAnswer(command, rest, desk);
      if ('problems' in answer) return answer.problems.map(plain).join('\n');
      return atDesk(command.name, answer.reply);
    }
    const { values, problems, missed } = optionsFrom(
      rest,
      command.takes.map(({ id }) => id),
      command.inWords?.id,
      speaker.language,
    );
    const { language } = speaker;
    const screen = begin(store, command, values, { channel, who, language, missed });
    return shown({ ...screen, notes: [...problems, ...screen.notes] });
  };

  const changed = async (wanted: string): Promise<string> => {
    const given = open ? (screenOf(store, open).given ?? []) : [];
    const found = given.find((each) => each.id === wanted.toLowerCase()) ?? given[Number(wanted) - 1];
    if (open && found) return shown(hear(store, open, { change: found.id }, who));
    if (given.length === 0) return plain(words().noAnswerHere);
    const lines = given.map(({ id, brief, shown: value }, index) =>
      paragraph(`${brief} (${id}): ${value}`, outside.paper, `${String(index + 1).padStart(3)}  `),
    );
    return [plain(words().whichAnswer), ...lines].join('\n');
  };

  const stopped = (talk: Talk): string => {
    store.endTalk(talk.id);
    open = undefined;
    return plain(words().stopped);
  };

  const resumed = async (): Promise<string> => {
    const talk = unfinished();
    return talk ? shown(screenOf(store, talk)) : plain(words().nothingWaiting);
  };

  const worked = (): string => (last ? workingText(last, outside.paper) : plain(words().nothingWorked));

  /** A word of the session typed at a question that could not take it as an answer; the question stays. */
  const sessionWord = async (text: string, still: Screen): Promise<string | undefined> => {
    const [word = '', ...rest] = wordsOf(text);
    const isMeant = (isWorking.test(word) && rest.length === 0) || isChange.test(word) || isGoOn.test(text);
    if (!isMeant) return undefined;
    const question = await shown(still);
    if (isWorking.test(word)) return [worked(), '', question].join('\n');
    return isChange.test(word) ? changed(rest.join(' ')) : question;
  };

  const answered = async (talk: Talk, now: Asking, text: string): Promise<string> => {
    if (text === '') return screenText(screenOf(store, talk), outside.paper);
    if (turnMeant(text) === 'stop') return stopped(talk);
    if (isHelp.test(text))
      return [helpWith(now, speaker.language).map(plain).join('\n'), await shown(screenOf(store, talk))].join('\n');
    const screen = hear(store, talk, heardIn(text, now), who);
    const [word = ''] = text.toLowerCase().split(/\s/);
    const refused = screen.notes.length > 0 && screen.asking?.question.id === now.question.id;
    const own = refused ? await sessionWord(text, { ...screen, notes: [] }) : undefined;
    if (own !== undefined) return own;
    const hint = refused && commands.some(({ name }) => name === word);
    if (hint && (namesOptions.test(text) || namesAction(text, commands))) return started(wordsOf(text), text);
    return shown(hint ? { ...screen, notes: [...screen.notes, words().forTheCommand(word)] } : screen);
  };

  return {
    greeting() {
      const left = unfinished();
      const lines = left
        ? [...words().greeting, words().leftOpen(left.command.name, asking(left)?.prompt ?? '')]
        : isNewcomer()
          ? [...words().greeting, words().newHere]
          : words().greeting;
      return lines.map(plain).join('\n');
    },
    asking: () => asking() !== undefined,
    completions: (line) => completionsOf(line, commands, asking(), desk),
    async say(line) {
      const text = line.trim();
      try {
        const now = asking();
        const turn = text.startsWith('/') && turnMeant(text.slice(1)) ? text.slice(1) : text;
        if (open && now && !turn.startsWith('/')) return await answered(open, now, turn);
        if (filling && turnMeant(text) === 'stop') {
          filling = undefined;
          return plain(words().formStopped);
        }
        if (filling && text !== '' && (!text.startsWith('/') || isPath(filling, text)))
          return await filled(filling, text);
        const onward = /^(?:next)?$/i.test(text) ? offered.find(({ goesOn }) => goesOn) : undefined;
        const press = /^\d{1,2}$/.test(text) ? offered[Number(text) - 1] : onward;
        if (press) return await pressed(press);
        if (text.length > longestLine) return plain(words().tooLong);
        const [word = '', ...rest] = wordsOf(text.replace(/^\//, ''));
        if (text === '') return '';
        if (isGoOn.test(text)) return await resumed();
        if (isWorking.test(word)) return worked();
        if (isChange.test(word)) return await changed(rest.join(' '));
        const onTalk = turnMeant(text);
        if (open && (onTalk === 'back' || onTalk === 'another-job'))
          return await shown(hear(store, open, { turn: onTalk }, who));
        if (turnMeant(text) || meansNotKnown(text) || /^skip$/i.test(text)) return plain(words().nothingAsked);
        const named = isHelp.test(word) ? 'help' : word;
        return await started([named, ...rest], text.replace(/^\//, ''));
      } catch (error) {
        if (error instanceof SheetTrouble) return plain(sheetTroubleText(error, speaker.language));
        throw error;
      }
    },
  };
}

const helpWith = ({ question }: Asking, language: Language = 'english'): readonly string[] => [
  question.why,
  terminalWords[language].itTakes(question.accepts),
  terminalWords[language].orType,
];

/** `fan list`: a command at the desk with one of the things it does. */
function namesAction(text: string, commands: readonly Command[]): boolean {
  const [name = '', called = ''] = text.toLowerCase().split(/\s+/);
  return commands.some(
    (command) =>
      command.kind === 'desk' && command.name === name && command.actions.some((each) => each.name === called),
  );
}

/** Words to the session itself, in either language. */
const isHelp = /^(?:help|ayuda)$/i;
const isGoOn = /^(?:go ?on|resume|continue|seguir|continuar)$/i;
const isWorking = /^(?:working|c[aá]lculos)$/i;
const isChange = /^(?:change|cambiar)$/i;

/** `duct collar=4in`: no answer to a question reads like that. */
const namesOptions = /^\S+\s+[a-z][\w-]*\s*=/i;

/** A typed number picks the choice with that number, as printed; anything else is an answer in words. */
function heardIn(text: string, { question, choices }: Asking): Heard {
  const numbers = text.split(/[\s,]+/).map(Number);
  const picked = numbers.map((number) => choices[number - 1]?.id);
  const several = question.widget.kind === 'several';
  if (choices.length > 0 && picked.every((id) => id !== undefined) && (several || picked.length === 1)) {
    return { answers: { [question.id]: picked.join(', ') } };
  }
  return { answers: { [question.id]: text } };
}

function unknownCommand(name: string, commands: readonly Command[], language: Language = 'english'): string {
  const names = commands.map((command) => command.name);
  const meant = nearest(name.toLowerCase(), names);
  const { didYouMean, notACommand } = terminalWords[language];
  return meant ? didYouMean(clipped(name), meant) : notACommand(clipped(name), names.join(', '));
}
