import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import terms from '../../knowledge/spanish/terms.json' with { type: 'json' };

const root = join(import.meta.dirname, '../..');
const filesIn = (folder: string): readonly string[] =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1));

/** What knowledge says, without the ids it is said under. */
const saidIn = (file: string, text: string): string =>
  file.endsWith('.json') ? text.replace(/"(?:[^"\\]|\\.)*"\s*:/g, '') : text;

/** Where Spanish stands: the knowledge put into it, and the catalogues, whose Spanish is told from English by its words. */
const texts = [...filesIn('knowledge/spanish'), ...filesIn('src/words'), ...filesIn('commands/words')]
  .filter((file) => !file.endsWith('terms.json'))
  .map((file) => ({ file, text: saidIn(file, readFileSync(join(root, file), 'utf8')) }));

it('Spanish has one word for one thing', () => {
  const inEnglishToo = new Set(['breaker', 'dimmer']);
  const strays = Object.values(terms).flatMap(({ avoid, spanish }) =>
    avoid.flatMap((word) =>
      texts
        .filter(({ file }) => file.endsWith('.json') || !inEnglishToo.has(word))
        .filter(({ text }) => new RegExp(`(?<!\\p{L})${word}(?:e?s)?(?!\\p{L})`, 'iu').test(text))
        .map(({ file }) => `${file} says “${word}”: say “${spanish}”`),
    ),
  );
  expect(strays).toEqual([]);
});

it('each term is really used', () => {
  const all = texts.map(({ text }) => text.toLowerCase()).join('\n');
  const unused = Object.values(terms).filter(({ spanish }) => !all.includes(spanish.toLowerCase()));
  // The checklists and the occupant's page name the two kinds of endings; a callback speaks of the ending outside.
  expect(unused.map(({ spanish }) => spanish).filter((term) => term !== 'salida de pared')).toEqual([]);
});
