import { oneOf } from '#interview/choices.ts';
import type { Question } from '#interview/question.ts';
import { type ElectricalCodeEdition, electricalCodeEditions } from '#knowledge/box-rules.ts';
import { codeQuestions } from '../words/code-questions.ts';

export type CodeInForce = ElectricalCodeEdition | 'canada';

const years = Object.keys(electricalCodeEditions) as ElectricalCodeEdition[];
const buildingCode = /\b(?:irc|ibc|imc|upc|crc|ashrae)\b|\b(?:2015|2018|2021|2024)\b|62\.2/i;

/** The edition of the electrical code, under one of the two names it goes by. A building-code year is named as such. */
function edition(id: 'electrical-code-edition' | 'code-edition'): Question<CodeInForce | 'unknown'> {
  const question = oneOf<CodeInForce>({
    id,
    words: { spanish: codeQuestions[id] },
    prompt: 'Which edition of the electrical code does the town go by?',
    why: 'From 2020 more than four ground wires count more, from 2023 terminal blocks count, and Canada counts otherwise.',
    brief: id === 'electrical-code-edition' ? 'Electrical code edition' : 'Electrical code edition, by its short name',
    choices: [
      ...years.map((year) => ({ id: year, label: `NEC ${year}`, also: [`${year} nec`, `nfpa 70 ${year}`] })),
      {
        id: 'canada',
        label: 'Canada',
        hint: 'Canadian Electrical Code',
        also: ['cec', 'csa', 'canadian', 'oesc', 'csa c22.1'],
      },
    ],
    whenUnknown: { value: 'canada', because: '' },
  });
  return {
    ...question,
    whenUnknown: { value: 'unknown', because: 'Counted by whichever edition of the NEC asks for the most room.' },
    read(text, units) {
      const wrong = buildingCode.exec(text);
      if (wrong && !/\b(?:nec|nfpa)\b/i.test(text)) {
        return {
          rejected: `“${wrong[0]}” is the building code’s, which says nothing of box fill. The electrical code has its own editions: NEC ${years.join(', ')}, or Canada.`,
        };
      }
      return /^\s*ca\.?\s*$/i.test(text)
        ? {
            rejected: '“CA” may be Canada or California. Write canada, or the year of the NEC that California goes by.',
          }
        : question.read(text, units);
    },
    show: (value, units) => (value === 'unknown' ? 'not known' : question.show(value, units)),
  };
}

export const electricalCodeEdition = edition('electrical-code-edition');

/** The same question by the short name that box fill is often asked with. */
export const codeEdition = edition('code-edition');
