import type { QuestionWords } from '#words/question-words.ts';

/** Which editions of the codes apply, in Spanish. The codes themselves keep their names. */
const electricalCode = {
  prompt: '¿Qué edición del código eléctrico usa el municipio?',
  why: 'Desde 2020 más de cuatro alambres de tierra cuentan más, desde 2023 cuentan las regletas de terminales, y Canadá cuenta de otra manera.',
  because: 'Se cuenta con la edición del NEC que pida más espacio.',
  choices: {
    2014: 'NEC 2014',
    2017: 'NEC 2017',
    2020: 'NEC 2020',
    2023: 'NEC 2023',
    2026: 'NEC 2026',
    canada: 'Canadá',
  },
  hints: { canada: 'código eléctrico canadiense' },
};

export const codeQuestions = {
  'building-code-edition': {
    prompt: '¿Qué código de construcción usa el municipio?',
    why: 'Las ediciones difieren en qué tan largo puede ser un ducto, dónde puede terminar y para qué tiene que estar listado un extractor.',
    brief: 'Código de construcción y edición',
    because: 'Se calcula con el IRC de 2021; el inspector dice cuál aplica.',
    choices: {
      'irc-2015': 'IRC 2015',
      'irc-2018': 'IRC 2018',
      'irc-2021': 'IRC 2021',
      'irc-2024': 'IRC 2024',
      'ashrae-62-2': 'ASHRAE 62.2',
      'california-2025': 'California 2025',
      canada: 'Canadá',
      england: 'Inglaterra',
    },
    hints: { canada: 'los códigos de las provincias difieren', england: 'Approved Document F' },
  },
  'electrical-code-edition': { ...electricalCode, brief: 'Edición del código eléctrico' },
  'code-edition': { ...electricalCode, brief: 'Edición del código eléctrico, por su nombre corto' },
} as const satisfies Readonly<Record<string, QuestionWords>>;
