import { callbackFindings, isCallbackFinding } from '#knowledge/callback-findings.ts';
import { observations, whoDecides } from '#knowledge/circuit-rules.ts';
import { type Entry, inWords, upperFirst } from './entry.ts';
import { isRecord, type Raw, textAt, textsAt } from './raw.ts';

type Words = Pick<Entry, 'says' | 'more' | 'caution'>;
type Line = readonly [label: string, says: string];

/** A line where there is something to say. */
const line = (label: string, says: string | undefined): readonly Line[] =>
  says === undefined || says === '' ? [] : [[label, says]];

/** What an entry says, by its kind. */
export function wordsOf(kind: Entry['kind'], node: Raw): Words {
  if (kind === 'cause') return cause(node);
  if (kind === 'check') return check(node);
  if (kind === 'question') return question(node);
  if (kind === 'wiring rule') return wiringRule(node);
  return {
    says: textAt(node, 'says') ?? textAt(node, 'means') ?? '',
    more: [
      ...line('Also called', textsAt(node, 'also').concat(textsAt(node, 'names')).join(', ')),
      ...line('Why', textAt(node, 'reason')),
      ...line('Effort, 1 to 5', typeof node['effort'] === 'number' ? String(node['effort']) : undefined),
      ...line('Note', textAt(node, 'note')),
    ],
  };
}

/** Signs that go with a cause most of the time. */
function usualSigns(signs: unknown): string {
  const usual = isRecord(signs)
    ? Object.entries(signs).filter(([, tier]) => tier === 'always' || tier === 'usually')
    : [];
  return usual.flatMap(([id]) => (isCallbackFinding(id) ? [callbackFindings[id].short] : [])).join('; ');
}

const roleOf = (node: Raw): string | undefined => {
  const who = textAt(node, 'who');
  return who === undefined ? undefined : inWords(who);
};

function cause(node: Raw): Words {
  const caution = textAt(node, 'caution');
  return {
    says: 'A cause of callbacks.',
    more: [
      ...line('Shows as', upperFirst(usualSigns(node['signs']))),
      ...line('To be sure', textAt(node, 'confirm')),
      ...line('To put it right', textAt(node, 'remedy')),
      ...line('Parts', upperFirst(textsAt(node, 'parts').join(', '))),
      ...line('Who', roleOf(node)),
      ...line('Refer', textAt(node, 'refer')),
      ...line('Note', textAt(node, 'note')),
    ],
    ...(caution === undefined ? {} : { caution }),
  };
}

const check = (node: Raw): Words => ({
  says: textAt(node, 'question') ?? '',
  more: [
    ...line('How', textAt(node, 'how')),
    ...line('Seen from', inWords(textAt(node, 'from') ?? '')),
    ...line('Power', upperFirst(textAt(node, 'power') ?? '')),
    ...line('Who', roleOf(node)),
    ...line('Note', textAt(node, 'note')),
  ],
});

function question(node: Raw): Words {
  const { options } = node;
  const labels = Array.isArray(options)
    ? options.flatMap((option) => (isRecord(option) ? [textAt(option, 'label') ?? ''] : []))
    : [];
  return {
    says: textAt(node, 'prompt') ?? '',
    more: [
      ...line('Why', textAt(node, 'why')),
      ...line('Answers', labels.join('; ')),
      ...line('When nobody knows', textAt(node, 'whenUnknown')),
    ],
  };
}

const weights: Readonly<Record<string, string>> = {
  stop: 'Stops the work.',
  caution: 'A caution.',
  advice: 'Advice.',
  good: 'All is well.',
};

/** "Where it sits: over the tub or shower", for each thing a rule hangs on. */
function appliesTo(applies: unknown): string {
  if (!isRecord(applies)) return '';
  return Object.entries(applies)
    .map(([id, values]) => {
      const asked = Object.entries(observations).find(([each]) => each === id)?.[1];
      const meant = Array.isArray(values) ? values.map(String) : [];
      const labels = meant.map(
        (value) => asked?.options.find((option) => option.id === value)?.label ?? inWords(value),
      );
      return `${asked?.brief ?? inWords(id)}: ${labels.join(' or ')}`;
    })
    .join('. ');
}

function wiringRule(node: Raw): Words {
  const { whenUnknown } = node;
  const decides = Object.entries(whoDecides).find(([id]) => id === textAt(node, 'decides'))?.[1];
  return {
    says: textAt(node, 'says') ?? '',
    more: [
      ...line('Holds where', appliesTo(node['applies'])),
      ...line('Weight', weights[textAt(node, 'weight') ?? '']),
      ...line('When nobody knows', isRecord(whenUnknown) ? textAt(whenUnknown, 'says') : undefined),
      ...line('Who decides', decides?.says),
      ...line('Note', textAt(node, 'note')),
    ],
  };
}
