import {
  type Action,
  type AnswerCommand,
  type Command,
  type Desk,
  type DeskCommand,
  type Start,
  summaryIn,
} from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import type { AnyQuestion, UnitSystem } from '#interview/question.ts';
import { worded } from '#interview/worded.ts';
import { ductDiameter } from '#quantity/kinds.ts';
import type { Language } from '#words/language.ts';
import { plainReading, type Reading } from './plain-words/reading.ts';
import { readDuctRun } from './questions/duct-run-reading.ts';
import { askWords } from './words/ask.ts';
import { heardIn, tellsOfDanger } from './workings/danger-heard.ts';
import { emergencyIn } from './workings/danger-net.ts';
import { emergencyReply } from './workings/emergency.ts';

/** Readings closer than this are both offered; one that scores less than the least is no reading at all. */
const apart = 1;
const least = 2;
/** One this near to the best is named beside it. */
const near = 2.5;

interface Understood {
  readonly command: AnswerCommand<unknown>;
  readonly given: Readonly<Record<string, string>>;
  /** What was understood, item by item. */
  readonly items: readonly string[];
  /** Numbers and answers that found no place. */
  readonly left: readonly string[];
  /** Units that were worked out, in sentences. */
  readonly told: readonly string[];
}

const itemOf = (question: AnyQuestion, answer: string, { units, language }: ReadFor): string => {
  const { id, widget, read, show, brief } = worded(question, language);
  const reading = read(answer, units);
  const told =
    widget.kind === 'text' || 'rejected' in reading ? answer.replaceAll('; ', ', ') : show(reading.value, units);
  const own = language === 'english' ? id.replaceAll('-', ' ') : shortly(brief);
  return `${askWords[language].names[id] ?? own} ${told}`;
};

/** "Puntos nominales del extractor, o el número del empaque" within a line: the first of it, in small letters. */
const shortly = (brief: string): string => {
  const [first = brief] = brief.split(/[,(:]/);
  return first.charAt(0).toLowerCase() + first.slice(1).trim();
};

const numbersIn = (text: string): readonly string[] => text.match(/\d+(?:\.\d+)?(?:\/\d+)?/g) ?? [];

/** A reading against the questions of its command: what they accept is given, what they do not is named. */
function understood({ facts, loose, told }: Reading, command: AnswerCommand<unknown>, readFor: ReadFor): Understood {
  const { units } = readFor;
  const read = Object.entries(facts).map(([id, answer]) => {
    const question = command.takes.find((each) => each.id === id);
    return { id, answer, question, taken: question !== undefined && !('rejected' in question.read(answer, units)) };
  });
  const fits = read.filter(({ taken }) => taken);
  const placed = fits.map(({ answer }) => answer).join(' ');
  return {
    command,
    given: Object.fromEntries(fits.map(({ id, answer }) => [id, answer])),
    items: fits.flatMap(({ question, answer }) => (question ? [itemOf(question, answer, readFor)] : [])),
    left: [
      ...loose,
      ...read
        .filter(({ taken, answer }) => !taken && !placed.includes(answer))
        .flatMap(({ answer }) => numbersIn(answer)),
    ],
    told,
  };
}

/** The units a bare number is in, and the language it is answered in. */
interface ReadFor {
  readonly units: UnitSystem;
  readonly language: Language;
}

const listed = (items: readonly string[], and: string): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} ${and} ${items.at(-1)}`;

const whatItSays = ({ command, items }: Understood): string =>
  items.length === 0 ? command.name : `${command.name}: ${items.join('; ')}`;

function start(reading: Understood, other: string | undefined, { units, language }: ReadFor): Start {
  const texts = askWords[language];
  const { command, given, items, left, told } = reading;
  return {
    start: command.name,
    given,
    notes: [
      `${texts.readAs(whatItSays(reading))}${items.length === 0 ? texts.noFacts : ''}`,
      ...told,
      ...(left.length > 0 ? [texts.notPlaced(listed(left, texts.and), left.length > 1)] : []),
      ...(other === undefined ? [] : [texts.ifYouMeant(other)]),
    ],
    ...collarTaken(command, given, { units, language }),
  };
}

/** The collar is asked for; where nobody can be asked, it is taken to be of the size of the duct at the fan, and said so. */
function collarTaken(
  command: AnswerCommand<unknown>,
  given: Readonly<Record<string, string>>,
  { units, language }: ReadFor,
): Pick<Start, 'unasked'> {
  const wanted = command.takes.some(({ id }) => id === 'collar') && given['collar'] === undefined;
  const run = wanted ? readDuctRun(given['duct-run'] ?? '', units) : undefined;
  const sizes =
    run && 'value' in run
      ? run.value.parts.map((part) => (part.part === 'transition' ? part.from : part.diameter))
      : [];
  const size = sizes.find((each) => each !== null);
  if (size === undefined || size === null) return {};
  const collar = ductDiameter.show(size, units);
  return {
    unasked: {
      given: { collar },
      notes: [askWords[language].collarTaken(collar)],
    },
  };
}

/** The two nearest readings, to choose from. */
function choice(text: string, readings: readonly Understood[], language: Language): Reply {
  const texts = askWords[language];
  return {
    language,
    headline: texts.canBeRead(
      readings.map(({ command }) => command.name).join(texts.asOr),
      readings.map(({ command }) => `as=${command.name}`).join(` ${texts.or} `),
    ),
    findings: [],
    tables: [
      {
        title: texts.nearest,
        columns: texts.columns,
        rows: readings.map(({ command, items, left }) => [
          command.name,
          summaryIn(command, language),
          items.join('; ') || texts.nothingUnderstood,
          left.join(', ') || texts.nothing,
        ]),
      },
    ],
    presses: readings.map(({ command }) => ({
      label: texts.press(command.name),
      command: 'ask',
      action: '',
      given: { text, as: command.name },
    })),
  };
}

const nothingRead = (commands: readonly Command[], language: Language): Reply => ({
  language,
  headline: askWords[language].notRead(
    commands
      .filter(({ kind }) => kind === 'answer')
      .map(({ name }) => name)
      .join(', '),
  ),
  findings: [],
  refused: true,
});

function answered(
  { commands, bareUnits: units, speaker: { language = 'english' } }: Desk,
  text: string,
  as: string | undefined,
): Reply | Start {
  const answering = commands.filter((command): command is AnswerCommand<unknown> => command.kind === 'answer');
  const { readings } = plainReading(text, units, askWords[language].reading);
  const readable = readings.flatMap((reading) => {
    const command = answering.find(({ name }) => name === reading.command);
    return command ? [{ reading, command }] : [];
  });
  // Danger goes before every other reading: whoever smells burning must not be asked for the size of the room.
  if (as === undefined && tellsOfDanger(text)) {
    const chirps = heardIn(text).alarmChirps ? [askWords[language].chirpHeard] : [];
    return { start: 'callback', given: { complaint: text }, notes: [...chirps, askWords[language].dangerHeard] };
  }
  const emergency = as === undefined ? emergencyIn(text) : undefined;
  if (emergency !== undefined) return emergencyReply(emergency, language);
  const told = (as ?? '').trim().toLowerCase().replace(/^\//, '');
  const wanted = readable.filter(({ command }) => command.name === told);
  const [best, second] = wanted.length > 0 ? wanted : readable.filter(({ reading }) => reading.score >= least);
  if (!best) {
    const named = answering.find(({ name }) => name === told);
    return named
      ? {
          start: named.name,
          given: {},
          notes: [`${askWords[language].readAs(named.name)}${askWords[language].noFacts}`],
        }
      : nothingRead(commands, language);
  }
  const first = understood(best.reading, best.command, { units, language });
  const gap = second === undefined ? Number.POSITIVE_INFINITY : best.reading.score - second.reading.score;
  if (second !== undefined && gap < apart)
    return choice(text, [first, understood(second.reading, second.command, { units, language })], language);
  return start(first, gap < near ? second?.command.name : undefined, { units, language });
}

const inPlainWords: Action = {
  name: '',
  summary: 'Ask in plain words: it is read into a command, which then asks only what is missing.',
  options: [
    {
      id: 'text',
      brief: 'the question in your own words, such as: 110 fan 4in flex 20 ft 3 elbows roof cap what do I get',
      required: true,
      longest: 500,
    },
    {
      id: 'as',
      brief: 'the command to read it as, where more than one would fit',
      suggest: ({ commands }, typed) =>
        commands
          .filter(({ kind, name }) => kind === 'answer' && name.startsWith(typed.trim().toLowerCase()))
          .map(({ name }) => ({ id: name, label: name })),
    },
  ],
  act(desk, { text = '', as }) {
    const read = answered(desk, text, as);
    return 'start' in read ? { ...read, line: text } : read;
  },
};

const ask: DeskCommand = {
  kind: 'desk',
  name: 'ask',
  summary: inPlainWords.summary,
  example: '110 fan 4in flex 20 ft 3 elbows roof cap what do I get',
  actions: [inPlainWords],
};

export default ask;
