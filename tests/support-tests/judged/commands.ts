import { type BadCase, command, commands, type GoodCase, option, times } from './builders.ts';

export const goodCommands: readonly GoodCase[] = [
  [
    'commands with subcommands',
    commands(
      command(),
      command({
        name: 'job',
        options: [
          {
            type: 1,
            name: 'open',
            description: 'Open a job',
            options: [option('name', { required: true }), option('address')],
          },
        ],
      }),
    ),
  ],
  [
    'an option with autocomplete and lengths',
    commands(command({ options: [option('duct-run', { autocomplete: true, min_length: 1, max_length: 400 })] })),
  ],
  ['permissions written as digits', commands(command({ default_member_permissions: '32', contexts: [0] }))],
];

/** Each breaks exactly one limit of the platform's published documentation or description, or a rule of this project. */
export const badCommands: readonly BadCase[] = [
  [
    'a command description of 101 characters',
    commands(command({ description: 'x'.repeat(101) })),
    { at: '0.description', by: 'schema' },
  ],
  [
    'a command without a description',
    commands(command({ description: undefined })),
    { at: '0.description', by: 'limit' },
  ],
  ['a command name of 33 characters', commands(command({ name: 'x'.repeat(33) })), { at: '0.name', by: 'schema' }],
  ['a command name with a blank', commands(command({ name: 'duct run' })), { at: '0.name', by: 'limit' }],
  ['a command name with a capital', commands(command({ name: 'Duct' })), { at: '0.name', by: 'limit' }],
  [
    '26 options',
    commands(command({ options: times(26, (nth) => option(`o${nth}`)) })),
    { at: '0.options', by: 'schema' },
  ],
  [
    '26 fixed choices',
    commands(
      command({ options: [option('o', { choices: times(26, (nth) => ({ name: `${nth}`, value: `${nth}` })) })] }),
    ),
    { at: '0.options.0.choices', by: 'schema' },
  ],
  [
    'choices beside autocomplete',
    commands(command({ options: [option('o', { autocomplete: true, choices: [{ name: 'a', value: 'a' }] })] })),
    { at: '0.options.0.choices', by: 'limit' },
  ],
  [
    'a needed option after an optional one',
    commands(command({ options: [option('a'), option('b', { required: true })] })),
    { at: '0.options.1', by: 'limit' },
  ],
  [
    'two options of one name',
    commands(command({ options: [option('a'), option('a')] })),
    { at: '0.options.1.name', by: 'limit' },
  ],
  [
    'a subcommand beside a plain option',
    commands(command({ options: [option('a'), { type: 1, name: 'b', description: 'c' }] })),
    { at: '0.options', by: 'limit' },
  ],
  [
    'a command of more than 8,000 characters',
    commands(
      command({
        options: times(20, (nth) =>
          option(`o${nth}`, { choices: times(5, (c) => ({ name: `${'x'.repeat(90)}${c}`, value: `${c}` })) }),
        ),
      }),
    ),
    { at: '0', by: 'limit' },
  ],
  ['two commands of one name', commands(command(), command()), { at: '1.name', by: 'limit' }],
  ['101 commands', commands(...times(101, (nth) => command({ name: `c${nth}` }))), { at: '', by: 'limit' }],
];
