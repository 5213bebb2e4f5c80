import { callbackTexts } from '#knowledge/callback-texts.ts';
import { checklistsIn } from '#knowledge/checklist-spanish.ts';
import { glossaryInSpanish, lookedUpInSpanish } from '#knowledge/glossary-spanish.ts';
import { observationsInSpanish } from '#knowledge/observations-spanish.ts';
import { type Entry, upperFirst } from './entry.ts';

type Line = readonly [label: string, says: string];

/** What an entry is in Spanish. What is left out stays as it is printed. */
type Told = NonNullable<Entry['spanish']>;

const line = (label: string, says: string | undefined): readonly Line[] =>
  says === undefined || says === '' ? [] : [[label, says]];

const own = <Of>(entries: Readonly<Record<string, Of>>, key: string): Of | undefined =>
  Object.hasOwn(entries, key) ? entries[key] : undefined;

function term(key: string): Told | undefined {
  const told = own(glossaryInSpanish, key);
  if (told === undefined) return undefined;
  return { title: told.name, names: told.also, says: told.says, more: line('También', told.also.join(', ')) };
}

function cause(key: string): Told | undefined {
  const told = own(callbackTexts.spanish.causes, key);
  if (told === undefined) return undefined;
  return {
    title: upperFirst(told.name),
    names: [],
    says: 'Una causa de quejas.',
    more: [
      ...line('Para estar seguro', told.confirm),
      ...line('Para arreglarlo', told.remedy),
      ...line('Piezas', upperFirst(told.parts.join(', '))),
      ...line('A quién se refiere', told.refer),
    ],
    ...(told.caution === undefined ? {} : { caution: told.caution }),
  };
}

function check(key: string): Told | undefined {
  const { findings, variables, contexts } = callbackTexts.spanish;
  const told = own(findings, key) ?? own(variables, key);
  if (told !== undefined)
    return { title: upperFirst(told.short), names: [], says: told.question, more: line('Cómo', told.how) };
  const context = own(contexts, key);
  return context && { title: upperFirst(context.name), names: [], says: context.question, more: [] };
}

function danger(key: string): Told | undefined {
  const told = own(callbackTexts.spanish.dangers, key);
  return told && { title: told.name, names: [], says: told.says, more: [] };
}

const { facts } = checklistsIn.spanish.swap;

function question(key: string): Told | undefined {
  const observed = own(observationsInSpanish, key);
  if (observed !== undefined) {
    const { brief, prompt, why, options, whenUnknown } = observed;
    const more = [...line('Por qué', why), ...line('Respuestas', Object.values(options).join('; '))];
    return { title: brief, names: [], says: prompt, more: [...more, ...line('Si nadie sabe', whenUnknown)] };
  }
  const asked = own(facts, key);
  if (asked === undefined) return undefined;
  const answers = asked.options.map(({ label }) => label).join('; ');
  return {
    title: asked.prompt,
    names: [],
    says: '',
    more: [...line('Por qué', asked.why), ...line('Respuestas', answers), ...line('Si nadie sabe', asked.whenUnknown)],
  };
}

const steps = new Map(Object.values(checklistsIn.spanish).flatMap((list) => list.steps.map((each) => [each.id, each])));
const { signers } = checklistsIn.spanish.swap.words;

function step(key: string): Told | undefined {
  const told = steps.get(key);
  if (told === undefined) return undefined;
  return {
    title: `${told.code}: ${/^.*?[.?](?=\s|$)/.exec(told.do)?.[0] ?? told.do}`,
    names: [told.title],
    says: told.do,
    more: [
      ['Fíjese en', told.lookFor],
      ['Por qué', told.why],
      ['Firma', told.signers.map((who) => signers[who]).join(' o ')],
      ...(told.hold ? [['Alto', 'El trabajo para aquí hasta que se firme.'] as const] : []),
      ...line('Si falla', told.onFail),
    ],
    ...(told.caution === undefined ? {} : { caution: told.caution }),
  };
}

const kinds: Readonly<Partial<Record<Entry['kind'], (key: string) => Told | undefined>>> = {
  term,
  cause,
  check,
  danger,
  question,
  step,
};

/** What an entry is in Spanish, by its kind and by what its file calls it; what it is called where only that is known. */
export function toldInSpanish({ id, kind }: Pick<Entry, 'id' | 'kind'>, key: string): Told | undefined {
  const told = kinds[kind]?.(key);
  if (told !== undefined) return told;
  const [title, ...names] = own(lookedUpInSpanish, id) ?? [];
  return title === undefined ? undefined : { title, names };
}
