import type { Command, DeskCommand } from '#chat/command.ts';

const pasted = (command: Command): string => `${command.name} ${command.example}`;

const help: DeskCommand = {
  kind: 'desk',
  name: 'help',
  summary: 'What to ask, in the order of a job, with an example of each.',
  example: 'duct',
  actions: [
    {
      name: '',
      summary: 'What to ask, in the order of a job, with an example of each.',
      options: [{ id: 'command', brief: 'the command to explain; all of them when left out' }],
      act({ commands }, { command: name }) {
        const wanted = commands.find((command) => command.name === name?.trim().toLowerCase().replace(/^\//, ''));
        if (!wanted) {
          return {
            headline:
              'Ask in the order of a job. Leave out what you do not know: it is asked for, or say “don’t know”.',
            findings: [],
            tables: [
              {
                title: 'Commands',
                columns: ['command', 'what it does'],
                rows: commands.map(({ name: each, summary }) => [each, summary]),
              },
            ],
          };
        }
        const rows =
          wanted.kind === 'answer'
            ? wanted.takes.map(({ id, brief, accepts }) => [id, `${brief}: ${accepts}`])
            : wanted.actions.flatMap((action) => [
                [`${wanted.name} ${action.name}`.trim(), action.summary],
                ...action.options.map(({ id, brief }) => [`  ${id}`, brief]),
              ]);
        return {
          headline: `${wanted.summary} Example: ${pasted(wanted)}`,
          findings: [],
          tables: [{ title: 'It takes', columns: ['name', 'what'], rows }],
        };
      },
    },
  ],
};

export default help;
