import { inEach } from '#words/in-each.ts';

export const helpWords = inEach(
  {
    order:
      'Ask in the order of a job. Name a command, and what it lacks is asked for; “don’t know” is always an answer.',
    noSuch: (name: string) => `There is no “${name}” command. `,
    commands: 'Commands, in the order of a job',
    command: 'command',
    tells: 'what it tells',
    toTry: 'To try',
    inOneLine: 'all in one line',
    takes: 'It takes, each where you know it',
    name: 'name',
    what: 'what',
    writtenAs: 'written as',
    does: 'It does',
    taking: 'takes',
    example: (summary: string, line: string) => `${summary} Example: ${line}`,
  },
  {
    order:
      'Pregunte en el orden de un trabajo. Nombre un comando y se le pregunta lo que falta; “no sé” siempre es una respuesta.',
    noSuch: (name) => `No hay un comando “${name}”. `,
    commands: 'Comandos, en el orden de un trabajo',
    command: 'comando',
    tells: 'lo que dice',
    toTry: 'Para probar',
    inOneLine: 'todo en una línea',
    takes: 'Se le da, si usted lo sabe',
    name: 'nombre',
    what: 'qué es',
    writtenAs: 'se escribe',
    does: 'Hace',
    taking: 'se le da',
    example: (summary, line) => `${summary} Ejemplo: ${line}`,
  },
);
