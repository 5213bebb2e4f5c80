import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Reply } from '#findings/reply.ts';

/**
 * Draws the chart of a reply into `folder`, named for what is on it, so that the same answer is the same file.
 *
 * @returns the path, or a sentence why there is none: an answer does not fail for want of its picture.
 */
export async function chartFile(folder: string, command: string, { chart }: Reply): Promise<string | undefined> {
  if (!chart) return undefined;
  const name = createHash('sha256').update(JSON.stringify(chart)).digest('hex').slice(0, 8);
  const path = join(folder, `${command}-${name}.png`);
  if (existsSync(path)) return path;
  const { chartPng } = await import('#pictures/chart-png.ts');
  const picture = await chartPng(chart);
  try {
    mkdirSync(folder, { recursive: true });
    // Written aside first: a half-written picture must not be taken for the whole one next time.
    writeFileSync(`${path}.part`, picture);
    renameSync(`${path}.part`, path);
    return path;
  } catch (error) {
    return `not kept, since ${folder} cannot be written (${error instanceof Error && 'code' in error ? error.code : error}).`;
  }
}
