import type { FactHow } from './question.ts';

const notKnown = new Set([
  "don't know",
  'dont know',
  "don't no",
  'do not know',
  'dunno',
  'dk',
  'idk',
  'unknown',
  'not sure',
  'no idea',
  "can't tell",
  'cant tell',
  'unsure',
  'no sé',
  'no se',
  'no lo sé',
  'no lo se',
  'no sabe',
  'nadie sabe',
  'ni idea',
  'no estoy seguro',
  'no estoy segura',
  'no puedo ver',
  'no se puede ver',
  'desconocido',
]);

/** Text as people type it on a phone: one kind of apostrophe, single spaces, no trailing full stop. */
export const plain = (text: string): string =>
  text
    .normalize('NFKC')
    .replace(/[\u2018\u2019\u02bc]/g, "'")
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase()
    .replace(/[.!]+$/, '');

/** Whether an answer says that nobody knows. Question marks alone say so too. */
export const meansNotKnown = (text: string): boolean => {
  const said = plain(text);
  return /^\?+$/.test(said) || notKnown.has(said.replace(/\?+$/, ''));
};

/** A turn that is not an answer but asks something of the conversation itself. */
export type Turn = 'back' | 'why' | 'stop' | 'another-job';

const turns: Readonly<Record<string, Turn>> = {
  back: 'back',
  undo: 'back',
  why: 'why',
  'why?': 'why',
  stop: 'stop',
  quit: 'stop',
  cancel: 'stop',
  atrás: 'back',
  atras: 'back',
  volver: 'back',
  'por qué': 'why',
  'por que': 'why',
  '¿por qué?': 'why',
  'por qué?': 'why',
  parar: 'stop',
  detener: 'stop',
  cancelar: 'stop',
  'another job': 'another-job',
  'new job': 'another-job',
  'otro trabajo': 'another-job',
};

export const turnMeant = (text: string): Turn | undefined => {
  const said = plain(text);
  return Object.hasOwn(turns, said) ? turns[said] : undefined;
};

const howWords: readonly (readonly [RegExp, FactHow])[] = [
  [/[\s,(]+(?:as )?measured\)?$/i, 'measured'],
  [/^measured[:,\s]+/i, 'measured'],
  [/[\s,(]+medid[oa]s?\)?$/i, 'measured'],
  [/[\s,(]+(?:(?:read )?(?:off|on|from) (?:the )?(?:label|carton|plate|box))\)?$/i, 'label'],
  [
    /^(?:(?:about|around|roughly|approximately|approx|maybe|perhaps|guess|some)(?:[.,:]\s*|\s+|(?=\d))|~\s*)/i,
    'estimated',
  ],
  [/[\s,(]+(?:(?:según|de|en) la (?:etiqueta|placa|caja))\)?$/i, 'label'],
  [/^(?:(?:como|unos|unas|aproximadamente|quizás?|tal vez)\s+|(?:más|mas) o menos\s+)/i, 'estimated'],
  [/[\s,(]+(?:más o menos|mas o menos|aproximadamente|creo|calculado a ojo)\)?$/i, 'estimated'],
  [/[\s,(]+(?:or so|estimated|estimate|a guess|guess|i think|ish)\)?$/i, 'estimated'],
];

/** Splits off how an answer is known: "14 ft measured", "about 14 ft", "110 off the label". Plain answers were told. */
export function howKnown(text: string): { readonly text: string; readonly how: FactHow } {
  for (const [pattern, how] of howWords) {
    const rest = text.replace(pattern, '').trim();
    if (rest !== text.trim() && rest !== '') return { text: rest, how };
  }
  return { text, how: 'told' };
}
