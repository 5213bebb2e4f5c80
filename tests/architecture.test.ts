import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
const files = (folder: string, ending = '.ts'): string[] =>
  !existsSync(join(root, folder))
    ? []
    : readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
        .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1));
const textOf = (file: string): string => readFileSync(join(root, file), 'utf8');

/** Which rooms each room may import. The linter holds the same line; this says it in one place and checks the linter's work. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  // mathjs takes half a second to load: node:module lets the one file that needs it load it only when a unit is first read.
  'src/quantity': ['mathjs', 'node:module'],
  'src/engine': ['#quantity'],
  'src/knowledge': ['#quantity', '#words', 'zod', 'json'],
  'src/findings': ['#quantity', '#knowledge', '#words'],
  'src/lookup': ['#quantity', '#knowledge', '#words', 'better-sqlite3', 'fastest-levenshtein'],
  'src/interview': ['#quantity', '#words'],
  'src/diagnosis': ['#quantity', '#knowledge'],
  'src/walkthrough': ['#quantity', '#knowledge', '#words'],
  'src/pictures': ['#findings', '#quantity', '@resvg/resvg-js', 'd3-scale', 'd3-shape', 'pdfkit', 'node'],
  'src/store': ['#interview', '#quantity', 'better-sqlite3', 'node', 'zod'],
  'src/words': [],
  'src/operation': ['#pictures', '#store', 'node'],
  commands: [
    '#chat',
    '#diagnosis',
    '#engine',
    '#findings',
    '#interview',
    '#knowledge',
    '#lookup',
    '#quantity',
    '#walkthrough',
    '#words',
    'fastest-levenshtein',
  ],
};

const importPattern =
  /(?:^|\n)(?:import|export)\b[^;]*?\bfrom\s+'([^']+)'|\bimport\('([^']+)'\)|\brequire\('([^']+)'\)/g;

const roomOf = (specifier: string): string => {
  if (specifier.startsWith('#')) return specifier.split('/')[0] as string;
  if (specifier.startsWith('node:')) return 'node';
  if (specifier.endsWith('.json')) return 'json';
  return specifier.startsWith('@') ? specifier.split('/').slice(0, 2).join('/') : (specifier.split('/')[0] as string);
};

const imports = (file: string): string[] =>
  [...textOf(file).matchAll(importPattern)]
    .map((match) => match[1] ?? match[2] ?? match[3] ?? '')
    .filter((specifier) => !/^\.\.?\//.test(specifier) || specifier.endsWith('.json'));

describe('the house keeps its rooms apart', () => {
  for (const [room, allowed] of Object.entries(mayImport)) {
    it(`${room} imports only ${allowed.join(', ') || 'itself'}`, () => {
      const own = `#${room.replace('src/', '')}`;
      const strays = files(room).flatMap((file) =>
        imports(file)
          .filter((specifier) => ![own, ...allowed].some((room) => room === roomOf(specifier) || room === specifier))
          .map((specifier) => `${file} imports ${specifier}: move what it needs down, or hand it in as an argument`),
      );
      expect(strays).toEqual([]);
    });
  }

  it('commands see the conversation only through its contract', () => {
    const strays = files('commands').flatMap((file) =>
      imports(file)
        .filter((specifier) => specifier.startsWith('#chat/') && specifier !== '#chat/command.ts')
        .map((specifier) => `${file} imports ${specifier}; only #chat/command.ts is open to commands`),
    );
    expect(strays).toEqual([]);
  });

  it('discord.js is known in one room only', () => {
    const strays = files('src')
      .filter((file) => !file.startsWith('src/chat/discord/') && imports(file).includes('discord.js'))
      .map((file) => `${file} imports discord.js; only src/chat/discord may`);
    expect(strays).toEqual([]);
  });

  it('every exported engine function names its source', () => {
    const nameless = files('src/engine').flatMap((file) => {
      return [
        ...textOf(file).matchAll(
          /(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*)?export (?:function\*?|const) (\w+)(?:\s*=\s*\(|\s*\(|\s*<)/g,
        ),
      ]
        .filter(([, doc]) => !doc?.includes('@source'))
        .map(([, , name]) => `${file} › ${name}: say where the formula comes from with @source`);
    });
    expect(nameless).toEqual([]);
  });
});

/** A house rule over the text of a file: what must not stand in it, and what to do instead. */
interface Rule {
  readonly title: string;
  readonly broken: RegExp;
  readonly instead: string;
}

const rules: readonly Rule[] = [
  {
    title: 'nothing is left for later in a comment',
    broken: /\b(?:TO[D]O|FIX[M]E|X{3}|HA[C]K)\b/,
    instead: 'do it now, or say in a sentence what the code does not do',
  },
  {
    title: 'no path of one machine is written down',
    broken: /(?<![\w.$}/])\/(?:home|Users|root|tmp|work|var|opt|mnt)\/\w/,
    instead: 'take the folder from the settings, or from the system’s own folder for passing files',
  },
  {
    title: 'nothing is printed past the conversation',
    broken: /\bconsole(?:\.\w|\[)/,
    instead: 'return the words, or use the log of src/chat/discord',
  },
];

/** Where a rule is broken, as `file:line: what, use what instead`. */
const breaches = ({ broken, instead }: Rule, file: string, text: string): string[] =>
  text
    .split('\n')
    .flatMap((line, index) => (broken.test(line) ? [`${file}:${index + 1}: ${line.trim()}; ${instead}`] : []));

const ours = ['src', 'commands', 'tests', 'knowledge'].flatMap((folder) => [
  ...files(folder),
  ...files(folder, '.json'),
]);

describe('the house is kept tidy', () => {
  for (const rule of rules) {
    it(rule.title, () => {
      expect(ours.flatMap((file) => breaches(rule, file, textOf(file)))).toEqual([]);
    });
  }

  it('the rules catch what they are there for, and nothing like it', () => {
    const caught = (text: string) => rules.flatMap((rule) => breaches(rule, 'page.ts', text)).length;
    for (const bad of [`// ${'TO'}DO later`, `${'con'}sole.log(1)`, `open('/${'tmp'}/a.db')`, `"/${'home'}/ann/x"`]) {
      expect(caught(bad), bad).toBe(1);
    }
    for (const good of [
      'const toDo = 1;',
      'the console. Then',
      'and/or work/rest',
      'https://example.org/work/x',
      '../work/x',
    ]) {
      expect(caught(good), good).toBe(0);
    }
  });

  it('a file is read in a few minutes', () => {
    const most = 400;
    const long = ours
      .filter((file) => file.endsWith('.ts'))
      .map((file) => ({ file, lines: textOf(file).split('\n').length - 1 }))
      .filter(({ lines }) => lines > most)
      .map(({ file, lines }) => `${file} has ${lines} lines: look for the second idea hiding in it`);
    expect(long).toEqual([]);
  });
});
