import type { Action, Command, DeskCommand } from '#chat/command.ts';
import type { Table } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';

/** How many examples a newcomer is shown. */
const mostExamples = 3;

const everything = (commands: readonly Command[], remark = ''): Reply => ({
  headline: `${remark}Ask in the order of a job. Name a command, and what it lacks is asked for; “don’t know” is always an answer.`,
  findings: [],
  tables: [
    {
      title: 'Commands, in the order of a job',
      columns: ['command', 'what it tells'],
      rows: commands.map(({ name, summary }) => [name, summary]),
    },
    {
      title: 'To try',
      columns: ['all in one line'],
      rows: commands
        .filter(({ kind }) => kind === 'answer')
        .slice(0, mostExamples)
        .map(({ name, example }) => [`${name} ${example}`]),
    },
  ],
});

function explained(command: Command): Reply {
  const table: Table =
    command.kind === 'answer'
      ? {
          title: 'It takes, each where you know it',
          columns: ['name', 'what', 'written as'],
          rows: command.takes.map(({ id, brief, accepts }) => [id, brief, accepts]),
        }
      : {
          title: 'It does',
          columns: ['command', 'what', 'takes'],
          rows: command.actions.map((action) => [
            `${command.name} ${action.name}`.trim(),
            action.summary,
            action.options.map(({ id, brief }) => `${id}: ${brief}`).join('; '),
          ]),
        };
  return { headline: `${command.summary} Example: ${command.name} ${command.example}`, findings: [], tables: [table] };
}

const explain: Action = {
  name: '',
  summary: 'What to ask, in the order of a job, with an example of each.',
  options: [
    {
      id: 'command',
      brief: 'the command to explain; all of them when left out',
      suggest: ({ commands }, typed) =>
        commands
          .filter(({ name }) => name.startsWith(typed.trim().toLowerCase()))
          .map(({ name }) => ({ id: name, label: name })),
    },
  ],
  act({ commands }, { command: said = '' }) {
    const name = said.trim().toLowerCase().replace(/^\//, '');
    if (name === '') return everything(commands);
    const wanted = commands.find((command) => command.name === name);
    return wanted ? explained(wanted) : everything(commands, `There is no “${name.slice(0, 30)}” command. `);
  },
};

const help: DeskCommand = {
  kind: 'desk',
  name: 'help',
  summary: explain.summary,
  example: 'duct',
  actions: [explain],
};

export default help;
