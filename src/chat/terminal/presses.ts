import type { FormField, FormOffer, PressOffer } from '#findings/reply.ts';
import type { Language } from '#words/language.ts';
import { terminalWords } from '#words/terminal.ts';
import { type Paper, paragraph } from './paper.ts';

/** A form on its way: what was filled in so far, an empty text where a field was passed by. */
export interface Filling {
  readonly offer: FormOffer;
  readonly said: Readonly<Record<string, string>>;
}

/** What can be pressed, each with the number that does it. */
export const pressLines = (
  presses: readonly PressOffer[],
  paper: Paper,
  language: Language = 'english',
): readonly string[] =>
  presses.length === 0
    ? []
    : [
        terminalWords[language].typeANumber,
        ...presses.map(({ label, goesOn }, index) =>
          paragraph(
            goesOn ? terminalWords[language].orEnter(label) : label,
            paper,
            `${String(index + 1).padStart(3)}  `,
          ),
        ),
      ];

/** The field asked now. */
export const fieldLeft = ({ offer, said }: Filling): FormField | undefined =>
  offer.fields.find(({ id }) => said[id] === undefined);

/** The question of the field asked now. */
export function fieldText(form: Filling, paper: Paper, language: Language = 'english'): string {
  const { dashToSkip, pathOf } = terminalWords[language];
  const field = fieldLeft(form);
  if (!field) return '';
  const skip = field.optional ? dashToSkip : '';
  const choices = (field.choices ?? []).map(({ label }, index) =>
    paragraph(label, paper, `${String(index + 1).padStart(3)}  `),
  );
  const accepts = field.photo ? pathOf(field.accepts) : field.accepts;
  return [paragraph(`${field.label}? ${field.choices ? '' : `(${accepts})`}${skip}`, paper), ...choices].join('\n');
}

/** The form with the last field that was filled in open again. */
export function fieldBefore(form: Filling): Filling {
  const said = Object.entries(form.said);
  return { ...form, said: Object.fromEntries(said.slice(0, -1)) };
}

/** Why a typed line will not do for the field asked now; nothing where it will. */
export function fieldTrouble(form: Filling, text: string): string | undefined {
  const field = fieldLeft(form);
  const value = field && afterField(form, text).said[field.id];
  return field === undefined || value === undefined || value === '' ? undefined : field.trouble?.(value);
}

/** The form after one typed line: the number of a choice picks it. */
export function afterField(form: Filling, text: string): Filling {
  const field = fieldLeft(form);
  if (!field) return form;
  const picked = /^\d{1,2}$/.test(text) ? field.choices?.[Number(text) - 1]?.id : undefined;
  const said = field.optional && /^[-–]$/.test(text) ? '' : (picked ?? text);
  return { ...form, said: { ...form.said, [field.id]: said } };
}
