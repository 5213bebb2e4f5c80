import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { drawnHouse, madeFrom, pictureFolder, sourceSum, sum } from './drawn-house.ts';

const read = (name: string): Uint8Array => readFileSync(join(pictureFolder, name));
const sums: Readonly<Record<string, { readonly source: string; readonly picture: string }>> = JSON.parse(
  Buffer.from(read(madeFrom)).toString(),
);
const readme = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8');
const shown = [...readme.matchAll(/!\[([^\]]*)\]\(knowledge\/demo\/pictures\/([^)]+)\)/g)];

it('the pictures show what the demo house shows today; if not, npm run pictures makes them anew', () => {
  const drawn = drawnHouse();
  expect(Object.keys(sums)).toEqual(Object.keys(drawn));
  for (const [name, each] of Object.entries(drawn)) expect(sourceSum(each), name).toBe(sums[name]?.source);
});

it('each picture is the one that was made, a small PNG, and no other lies beside them', () => {
  expect(readdirSync(pictureFolder).sort()).toEqual([...Object.keys(sums), madeFrom].sort());
  for (const [name, { picture }] of Object.entries(sums)) {
    const bytes = read(name);
    expect(sum(bytes), name).toBe(picture);
    expect(Buffer.from(bytes.subarray(1, 4)).toString(), name).toBe('PNG');
    expect(bytes.length, name).toBeLessThan(120_000);
  }
});

it('the README shows a few of them, each with words that say what is on it and that it is invented', () => {
  expect(shown.length).toBeGreaterThanOrEqual(2);
  expect(shown.length).toBeLessThanOrEqual(4);
  for (const [, alt = '', name = ''] of shown) {
    expect(Object.keys(sums)).toContain(name);
    expect(alt.length).toBeGreaterThan(60);
    expect(alt).toContain('invented');
  }
});
