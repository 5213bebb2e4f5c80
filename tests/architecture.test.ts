import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
const files = (folder: string): string[] =>
  !existsSync(join(root, folder))
    ? []
    : readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
        .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1));

/** Which rooms each room may import. The linter holds the same line; this says it in one place and checks the linter's work. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  'src/quantity': ['mathjs'],
  'src/engine': ['#quantity'],
  'src/knowledge': ['#quantity', 'zod', 'json'],
  'src/findings': ['#quantity', '#knowledge'],
  'src/interview': ['#quantity'],
  'src/diagnosis': ['#quantity', '#knowledge'],
  'src/walkthrough': ['#quantity', '#knowledge'],
  'src/pictures': ['#findings', '#quantity', '@resvg/resvg-js', 'd3-scale', 'd3-shape', 'node'],
  'src/store': ['#interview', '#quantity', 'better-sqlite3', 'node'],
  commands: [
    '#chat',
    '#diagnosis',
    '#engine',
    '#findings',
    '#interview',
    '#knowledge',
    '#quantity',
    '#walkthrough',
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
  [...readFileSync(join(root, file), 'utf8').matchAll(importPattern)]
    .map((match) => match[1] ?? match[2] ?? match[3] ?? '')
    .filter((specifier) => !/^\.\.?\//.test(specifier) || specifier.endsWith('.json'));

describe('the house keeps its rooms apart', () => {
  for (const [room, allowed] of Object.entries(mayImport)) {
    it(`${room} imports only ${allowed.join(', ') || 'itself'}`, () => {
      const own = `#${room.replace('src/', '')}`;
      const strays = files(room).flatMap((file) =>
        imports(file)
          .filter((specifier) => ![own, ...allowed].includes(roomOf(specifier)))
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
      const text = readFileSync(join(root, file), 'utf8');
      return [
        ...text.matchAll(
          /(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*)?export (?:function\*?|const) (\w+)(?:\s*=\s*\(|\s*\(|\s*<)/g,
        ),
      ]
        .filter(([, doc]) => !doc?.includes('@source'))
        .map(([, , name]) => `${file} › ${name}: say where the formula comes from with @source`);
    });
    expect(nameless).toEqual([]);
  });
});
