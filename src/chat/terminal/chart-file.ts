import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Reply } from '#findings/reply.ts';

/** Draws the chart of a reply into `folder`, named for what is on it, so that the same answer is the same file. */
export async function chartFile(folder: string, command: string, { chart }: Reply): Promise<string | undefined> {
  if (!chart) return undefined;
  const name = createHash('sha256').update(JSON.stringify(chart)).digest('hex').slice(0, 8);
  const path = join(folder, `${command}-${name}.png`);
  if (existsSync(path)) return path;
  const { chartPng } = await import('#pictures/chart-png.ts');
  mkdirSync(folder, { recursive: true });
  writeFileSync(path, await chartPng(chart));
  return path;
}
