import {
  answer,
  type BadCase,
  button,
  choices,
  form,
  type GoodCase,
  input,
  label,
  layout,
  menu,
  reply,
  row,
  times,
} from './builders.ts';

export const goodAnswers: readonly GoodCase[] = [
  ['a promise to answer for one pair of eyes', answer({ type: 5, data: { flags: 64 } })],
  ['a promise to update', answer({ type: 6 })],
  [
    '25 suggestions',
    answer({ type: 8, data: { choices: times(25, (nth) => ({ name: `Part ${nth}`, value: `${nth}` })) } }),
  ],
  ['no suggestion at all', answer({ type: 8, data: { choices: [] } })],
  [
    'a form with text, a menu, radio buttons, boxes and a file',
    form({
      components: [
        label(input()),
        label(menu()),
        label({ type: 21, custom_id: 'radio', options: choices(2) }),
        label({ type: 22, custom_id: 'boxes', options: choices(3) }),
        label({ type: 19, custom_id: 'photo' }),
      ],
    }),
  ],
  ['a form field that may be left out', form({ components: [label(menu({ min_values: 0, required: false }))] })],
  ['a form field in a row of its own', form({ components: [row(input({ label: 'Length' }))] })],
];

/** Each breaks exactly one limit of the platform's published documentation or description, or a rule of this project. */
export const badAnswers: readonly BadCase[] = [
  ['a promise with a layout flag', answer({ type: 5, data: { flags: layout } }), { at: 'data.flags', by: 'limit' }],
  ['an answer of unknown type', answer({ type: 3 }), { at: 'type', by: 'schema' }],
  [
    '26 suggestions',
    answer({ type: 8, data: { choices: times(26, (nth) => ({ name: `${nth}`, value: `${nth}` })) } }),
    { at: 'data.choices', by: 'schema' },
  ],
  [
    'a suggestion of 101 characters',
    answer({ type: 8, data: { choices: [{ name: 'x'.repeat(101), value: 'y' }] } }),
    { at: 'data.choices.0.name', by: 'schema' },
  ],
  [
    'suggestions to a press',
    answer({ type: 8, data: { choices: [] } }, { answering: { type: 3, onMessage: true } }),
    { at: 'type', by: 'limit' },
  ],
  [
    'a message to a partial word',
    reply({ content: 'x' }, { answering: { type: 4, onMessage: false } }),
    { at: 'type', by: 'limit' },
  ],
  [
    'an update where no message is',
    answer({ type: 6 }, { answering: { type: 2, onMessage: false } }),
    { at: 'type', by: 'limit' },
  ],
  [
    'a form after a form',
    { ...form({ components: [label(input())] }), answering: { type: 5, onMessage: true } },
    { at: 'type', by: 'limit' },
  ],
  [
    'a form title of 46 characters',
    form({ title: 'x'.repeat(46), components: [label(input())] }),
    { at: 'data.title', by: 'schema' },
  ],
  [
    'a form label of 46 characters',
    form({ components: [label(input(), { label: 'x'.repeat(46) })] }),
    { at: 'data.components.0.label', by: 'schema' },
  ],
  [
    'a form of 6 parts',
    form({ components: times(6, (nth) => label(input({ custom_id: `${nth}` }))) }),
    { at: 'data.components', by: 'limit' },
  ],
  [
    'a button in a form',
    form({ components: [row(button())] }),
    { at: 'data.components.0.components.0.type', by: 'schema' },
  ],
  [
    'two form fields of one id',
    form({ components: [label(input()), label(input())] }),
    { at: 'data.components.1.component.custom_id', by: 'limit' },
  ],
  [
    'a form field that needs nothing and is needed',
    form({ components: [label(menu({ min_values: 0 }))] }),
    { at: 'data.components.0.component.required', by: 'limit' },
  ],
  [
    'a form field in a row without a label',
    form({ components: [row(input())] }),
    { at: 'data.components.0.components.0.label', by: 'limit' },
  ],
];
