import { oneOf } from '#interview/choices.ts';
import { codeQuestions } from '../words/code-questions.ts';

/** The building code. The electrical code has editions of its own and is asked apart. */
export const buildingCodeEdition = oneOf({
  id: 'building-code-edition',
  words: { spanish: codeQuestions['building-code-edition'] },
  prompt: 'Which building code does the town go by?',
  why: 'Editions differ in how long a duct may be, where it may end and what a fan must be listed for.',
  brief: 'Building code and edition',
  choices: [
    { id: 'irc-2015', label: 'IRC 2015', also: ['2015'] },
    { id: 'irc-2018', label: 'IRC 2018', also: ['2018'] },
    { id: 'irc-2021', label: 'IRC 2021', also: ['2021'] },
    { id: 'irc-2024', label: 'IRC 2024', also: ['2024'] },
    { id: 'ashrae-62-2', label: 'ASHRAE 62.2', also: ['62.2'] },
    { id: 'california-2025', label: 'California 2025', also: ['crc 2025', 'california'] },
    { id: 'canada', label: 'Canada', hint: 'provincial codes differ', also: ['nbc'] },
    { id: 'england', label: 'England', hint: 'Approved Document F', also: ['adf', 'uk'] },
  ],
  whenUnknown: { value: 'irc-2021', because: 'Reckoned by the IRC of 2021; the inspector says which applies.' },
});
