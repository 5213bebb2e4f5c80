import { oneOf } from '#interview/choices.ts';
import type { Question } from '#interview/question.ts';
import { plain } from '#interview/words.ts';
import { type Observation, type ObservationId, observations, plannedObservations } from '#knowledge/circuit-rules.ts';
import { observationsInSpanish } from '#knowledge/observations-spanish.ts';
import type { QuestionWords } from '#words/question-words.ts';

/** Other words for some answers. A bare "yes" never stands for the answer that somebody proved something. */
const otherWords: Partial<Record<ObservationId, Readonly<Record<string, readonly string[]>>>> = {
  'fan-ground': { 'present-not-proven': ['yes', 'y', 'there is one', 'wire'], none: ['no', 'n', 'missing'] },
  'gfci-protection': { 'not-tested': ['yes', 'y', 'there is one'], none: ['no', 'n'] },
  'switch-box-neutral': { none: ['no', 'n', 'missing', 'switch loop'] },
  'switch-box-ground': { yes: ['y'], none: ['no', 'n', 'missing'] },
  'wiring-kind': {
    'copper-cable': ['copper', 'nm', 'nm-b'],
    aluminium: ['aluminum', 'al'],
    'knob-and-tube': ['knob and tube'],
  },
  'unit-kind': { 'fan-only': ['fan'], 'fan-and-light': ['light'], 'fan-and-heater': ['heater'] },
  'control-wanted': {
    'plain-switch': ['switch'],
    'countdown-timer': ['timer', 'countdown'],
    'spring-timer': ['spring timer', 'wind-up timer'],
    'humidity-sensor': ['humidity', 'humidistat'],
    'occupancy-sensor': ['occupancy', 'motion'],
    'continuous-with-boost': ['continuous', 'boost'],
    'speed-control': ['dimmer'],
  },
};

/** Answers that say too little to be taken for either. */
const tooLittle: Partial<Record<ObservationId, readonly [words: readonly string[], says: string]>> = {
  'switch-box-neutral': [
    ['yes', 'y'],
    'Say which: a neutral of the same circuit, or one of another circuit. Where nobody traced it, say don’t know.',
  ],
};

const openedOnly = 'Answer only from a box proven dead; never open one to find out.';

const openedOnlyInSpanish = 'Responda solo desde una caja comprobada sin tensión; nunca abra una para averiguarlo.';

const promptOf = ({ prompt, seen }: Observation): string =>
  seen === 'opened-box' ? `${prompt} ${openedOnly}` : prompt;

function spanishOf(id: ObservationId): QuestionWords | undefined {
  const texts = observationsInSpanish[id];
  if (texts === undefined) return undefined;
  const { prompt, brief, why, options, whenUnknown } = texts;
  return {
    prompt: observations[id].seen === 'opened-box' ? `${prompt} ${openedOnlyInSpanish}` : prompt,
    why,
    brief,
    because: whenUnknown,
    choices: options,
    also: id === 'fan-ground' ? { 'present-not-proven': ['sí', 'si', 'hay uno'] } : {},
  };
}

/** One observation of the power rules as a question. What is not known is `unknown`, and the rules take the dangerous way. */
function observed(id: ObservationId): Question<string> {
  const { brief, why, options, whenUnknown, ...rest } = observations[id];
  const words = otherWords[id] ?? {};
  const spanish = spanishOf(id);
  const question = oneOf<string>({
    id,
    ...(spanish === undefined ? {} : { words: { spanish } }),
    prompt: promptOf({ brief, why, options, whenUnknown, ...rest }),
    why,
    brief,
    choices: options.map((option) => ({ ...option, also: words[option.id] ?? [] })),
    whenUnknown: { value: 'unknown', because: whenUnknown },
  });
  const [vague, says] = tooLittle[id] ?? [[], ''];
  return {
    ...question,
    read: (text, units) => (vague.includes(plain(text)) ? { rejected: says } : question.read(text, units)),
    show: (value, units) => (value === 'unknown' ? 'not known' : question.show(value, units)),
  };
}

const questions = new Map(plannedObservations.map((id) => [id, observed(id)]));

/** The question behind an observation of the planning stage. */
export function wiringQuestion(id: ObservationId): Question<string> {
  const question = questions.get(id);
  if (!question) throw new Error(`${id} is no observation of the planning stage`);
  return question;
}

export const controlWanted = wiringQuestion('control-wanted');
export const unitKind = wiringQuestion('unit-kind');
