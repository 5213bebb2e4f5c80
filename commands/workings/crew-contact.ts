import type { Choice, Reading, UnitSystem } from '#interview/question.ts';
import type { Language } from '#words/language.ts';
import { crewWords } from '../words/crew.ts';
import { crewChangeWords } from '../words/crew-changes.ts';

const contact = (
  id: 'crew-name' | 'crew-phone',
  told: { brief: string; shape: RegExp; rejected: 'crewName' | 'crewPhone' },
) => ({
  id,
  brief: told.brief,
  key: id,
  unset: (language: Language = 'english') => crewWords[language].unset[id] ?? '',
  read(text: string, _?: UnitSystem, language: Language = 'english'): Reading<string> {
    const said = text.trim();
    return told.shape.test(said) ? { value: said } : { rejected: crewChangeWords[language][told.rejected] };
  },
  show: (kept: string) => kept,
  suggest: (): readonly Choice[] => [],
});

/** Whom the occupant is to call, printed on the page that stays in the house. */
export const crewContact = [
  contact('crew-name', {
    brief: 'Name of the crew, printed on the occupant’s page',
    shape: /^(?=.{2,60}$)[\p{L}\d][\p{L}\p{M}\d .,&'’()+/-]*$/u,
    rejected: 'crewName',
  }),
  contact('crew-phone', {
    brief: 'Phone number printed on the occupant’s page',
    shape: /^(?=(?:\D*\d){7,20}\D*$)[+(\d][\d ().-]{5,28}(?: ?(?:ext\.?|x) ?\d{1,6})?$/,
    rejected: 'crewPhone',
  }),
] as const;
