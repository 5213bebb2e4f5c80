import { type Action, briefIn, type Command, type DeskCommand, summaryIn } from '#chat/command.ts';
import type { Table } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import { worded } from '#interview/worded.ts';
import type { Language } from '#words/language.ts';
import { helpWords } from './words/help.ts';

/** How many examples a newcomer is shown. */
const mostExamples = 3;

function everything(commands: readonly Command[], language: Language, remark = ''): Reply {
  const texts = helpWords[language];
  return {
    language,
    headline: `${remark}${texts.order}`,
    findings: [],
    tables: [
      {
        title: texts.commands,
        columns: [texts.command, texts.tells],
        rows: commands.map((command) => [command.name, summaryIn(command, language)]),
      },
      {
        title: texts.toTry,
        columns: [texts.inOneLine],
        rows: commands
          .filter(({ kind }) => kind === 'answer')
          .slice(0, mostExamples)
          .map(({ name, example }) => [`${name} ${example}`]),
      },
    ],
  };
}

function explained(command: Command, language: Language): Reply {
  const texts = helpWords[language];
  const table: Table =
    command.kind === 'answer'
      ? {
          title: texts.takes,
          columns: [texts.name, texts.what, texts.writtenAs],
          rows: command.takes
            .map((question) => worded(question, language))
            .map(({ id, brief, accepts }) => [id, brief, accepts]),
        }
      : {
          title: texts.does,
          columns: [texts.command, texts.what, texts.taking],
          rows: command.actions.map((action) => [
            `${command.name} ${action.name}`.trim(),
            summaryIn(action, language),
            action.options.map((option) => `${option.id}: ${briefIn(option, language)}`).join('; '),
          ]),
        };
  const more = command.kind === 'desk' ? (command.moreExamples ?? []) : [];
  const toTry: Table = {
    title: texts.toTry,
    columns: [texts.inOneLine],
    rows: more.map((line) => [`${command.name} ${line}`]),
  };
  return {
    language,
    headline: texts.example(summaryIn(command, language), `${command.name} ${command.example}`),
    findings: [],
    tables: more.length === 0 ? [table] : [table, toTry],
  };
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
  act({ commands, speaker: { language = 'english' } }, { command: said = '' }) {
    const name = said.trim().toLowerCase().replace(/^\//, '');
    if (name === '') return everything(commands, language);
    const wanted = commands.find((command) => command.name === name);
    return wanted
      ? explained(wanted, language)
      : everything(commands, language, helpWords[language].noSuch(name.slice(0, 30)));
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
