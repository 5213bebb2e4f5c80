import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../../..');
const { imports } = createRequire(import.meta.url)(join(root, 'package.json')) as { imports: Record<string, string> };

/** What a file loads before its first line runs; `import type` and `import(…)` load nothing then. */
const loadsAtOnce = (file: string): readonly string[] =>
  [
    ...readFileSync(file, 'utf8').matchAll(
      /^(?:import|export)\s(?!type\s)[^;]*?from\s+'([^']+)'|^import\s+'([^']+)'/gm,
    ),
  ].map(([, from, bare]) => from ?? bare ?? '');

function place(specifier: string, from: string): string {
  if (specifier.startsWith('.')) return resolve(dirname(from), specifier);
  const [room = '', ...rest] = specifier.split('/');
  const target = imports[`${room}/*`];
  return target === undefined ? specifier : join(root, target.replace('*', rest.join('/')));
}

/** Everything that is loaded by the time a file runs, packages by name. */
function loaded(...files: readonly string[]): ReadonlySet<string> {
  const found = new Set<string>();
  const waiting = files.map((file) => join(root, file));
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    if (found.has(file)) continue;
    found.add(file);
    if (file.endsWith('.ts')) waiting.push(...loadsAtOnce(file).map((specifier) => place(specifier, file)));
  }
  return found;
}

it('starting in Discord loads no unit library and no pictures', () => {
  const all = [...loaded('src/main.ts', 'src/chat/discord/discord.ts')];
  expect(all).toContain('discord.js');
  expect(all).toContain(join(root, 'commands/duct.ts'));
  const heavy = all.filter((each) => /mathjs|resvg|^d3-|src\/pictures\/|cli-table3|wrap-ansi|dejavu/.test(each));
  expect(heavy).toEqual([]);
});
