import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

/**
 * The list of every published or worked-out figure these tests hold the program to, written into CHECKED.md: how many are
 * checked, and each that is not with its reason. Run vitest with -u after adding figures.
 */
const folder = join(import.meta.dirname, 'figures');

interface Listing {
  readonly file: string;
  readonly checked: readonly string[];
  readonly left: readonly (readonly [id: string, why: string])[];
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Files list their figures by id with a check each, as cases, or keep lists of ids, of rows and of what is left out. */
function listing(file: string): Listing {
  const data: unknown = JSON.parse(readFileSync(join(folder, file), 'utf8'));
  if (!isRecord(data)) return { file, checked: [], left: [] };
  const listed = data['ids'] ?? data['listed'];
  const notTested = isRecord(data['notTested']) ? data['notTested'] : {};
  const reason = (entry: unknown): string =>
    isRecord(entry) ? String(entry['reason'] ?? entry['why'] ?? '') : String(entry);
  if (Array.isArray(listed)) {
    const ids = listed.map(String);
    const left = Object.entries(notTested).map(([id, why]) => [id, reason(why)] as const);
    const leftIds = new Set(left.map(([id]) => id));
    return { file, checked: ids.filter((id) => !leftIds.has(id)), left };
  }
  if (Array.isArray(data['cases'])) {
    return { file, checked: data['cases'].map((each) => String(isRecord(each) ? each['id'] : each)), left: [] };
  }
  const entries = Object.entries(data).filter((entry): entry is [string, Record<string, unknown>] =>
    isRecord(entry[1]),
  );
  return {
    file,
    checked: entries.filter(([, entry]) => entry['check'] !== null).map(([id]) => id),
    left: entries.filter(([, entry]) => entry['check'] === null).map(([id, entry]) => [id, reason(entry)] as const),
  };
}

const listings = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .sort()
  .map(listing);

const page = (): string =>
  [
    '# Figures the program is held to',
    '',
    'Written by `checked-figures.test.ts`. Each figure stands in `figures/` with its source; what is not checked says why.',
    '',
    '| file | checked | left out |',
    '|---|---|---|',
    ...listings.map(
      ({ file, checked, left }) => `| ${file.replace('.json', '')} | ${checked.length} | ${left.length} |`,
    ),
    '',
    ...listings
      .filter(({ left }) => left.length > 0)
      .flatMap(({ file, left }) => [
        `## Left out of ${file.replace('.json', '')}`,
        '',
        ...left.map(([id, why]) => `- \`${id}\`: ${why}`),
        '',
      ]),
  ].join('\n');

it('every figure is checked or left out with its reason', async () => {
  for (const { left } of listings) for (const [id, why] of left) expect(why, `${id} needs a reason`).toMatch(/\w{3}/);
  expect(listings.reduce((sum, { checked }) => sum + checked.length, 0)).toBeGreaterThan(500);
  await expect(page()).toMatchFileSnapshot(join(import.meta.dirname, 'CHECKED.md'));
});
