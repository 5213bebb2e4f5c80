import type { Wording } from '#interview/choices.ts';
import type { Question, Reading, UnitSystem } from '#interview/question.ts';
import type { Kind } from '#quantity/kind.ts';

interface Asking<Q extends number> extends Wording {
  readonly kind: Kind<Q>;
  readonly placeholder: string;
}

/** More than anybody writes down on a ladder. */
const mostReadings = 25;

/** "6,2; 6,0" holds decimal commas, "6.2, 6.0" and "45,48" lists; without commas a space before a number parts them. */
function partsOf(text: string): readonly string[] {
  if (/[;\n]/.test(text)) return text.split(/[;\n]/);
  if (/^\d+,\d(?:\s*[^\d,;]*)?$/.test(text)) return [text];
  if (/,|\/(?=\s*\d)|\band\b|&/.test(text)) return text.split(/,|\/(?=\s*\d)|\band\b|&/);
  return text.split(/\s+(?=\d)/);
}

const unitOf = (part: string): string => /^[\d.,\s]+([^\d.,\s].*)$/.exec(part)?.[1]?.trim() ?? '';

/** A question answered by several readings of one thing: "6.2, 6.0, 6.4 s". A unit after the last stands for all. */
export function readings<Q extends number>({ kind, placeholder, ...wording }: Asking<Q>): Question<readonly Q[]> {
  const accepts = `one or more readings with commas between, such as ${placeholder}`;
  return {
    ...wording,
    accepts,
    widget: { kind: 'text', placeholder },
    whenUnknown: { value: [], because: 'Nothing was read, so nothing is measured.' },
    read(text, units) {
      const said = text
        .normalize('NFKC')
        .replace(/\p{Cc}/gu, ' ')
        .trim();
      if (said === '' || said.length > 300) return { rejected: `Give ${accepts}.` };
      return /^(?:none|no readings)$/i.test(said) ? { value: [] } : readAll(said, kind, units);
    },
    show: (values, units) =>
      values.length === 0 ? 'no readings' : values.map((each) => kind.showShort(each, units)).join('; '),
  };
}

function readAll<Q extends number>(said: string, kind: Kind<Q>, units: UnitSystem): Reading<readonly Q[]> {
  const whole = /[,;\n]/.test(said) ? { rejected: '' } : kind.read(said, units);
  if ('value' in whole) return { value: [whole.value] };
  const parts = partsOf(said)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const shared = unitOf(parts.at(-1) ?? '');
  const values: Q[] = [];
  for (const part of parts) {
    const one = kind.read(/^[\d.,]+$/.test(part) ? `${part} ${shared}`.trim() : part, units);
    if ('rejected' in one) return one;
    values.push(one.value);
  }
  if (values.length > mostReadings)
    return { rejected: `That is more than ${mostReadings} readings. Give the last few.` };
  return { value: values };
}
