/**
 * Walks both adapters for as long as it is told, and prints what went wrong:
 *
 *     npx tsx tests/fuzz/long.ts [minutes] [seed]
 *
 * Charts are drawn in earnest. Exit code 1 when anything went wrong.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { drawnChart } from '#chat/discord/chart-pictures.ts';
import { discordWalker } from './discord-walker.ts';
import { terminalWalker } from './terminal-walker.ts';
import { walked } from './walker.ts';
import { workedTime } from './worked-time.ts';

const stepsEach = 400;
/** Milliseconds somebody waits for an answer: a busy machine sets pages slowly, and the platform waits a quarter of an hour. */
const patience = 60_000;

const [minutes = 10, first = 1] = process.argv.slice(2).map(Number);
const end = Date.now() + minutes * 60_000;
const found = new Set<string>();
const print = (line: string) => process.stdout.write(`${line}\n`);

const complain = (problem: string): void => {
  // Numbers, ids and what was typed differ each time; the same slip is told once.
  const [line = ''] = problem.split('\n');
  const kind = line.replace(/"(?:[^"\\]|\\.)*"|\d+/g, '').slice(0, 90);
  if (found.has(kind)) return;
  found.add(kind);
  print(`\n${problem}`);
};
process.on('unhandledRejection', (reason) => complain(`an unhandled rejection: ${String(reason)}`));

let [walks, steps] = [0, 0];
for (let seed = first; Date.now() < end; seed += 1) {
  const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
  const file = join(folder, 'records.sqlite');
  for (const begin of [
    () => terminalWalker(seed),
    () => discordWalker(seed, { file, draw: drawnChart, now: workedTime(), patience }),
  ]) {
    const walker = await begin();
    const result = await walked(walker, (done) => done >= stepsEach || Date.now() > end);
    await walker.close();
    for (const problem of result.problems) complain(`seed ${seed}: ${problem}`);
    walks += 1;
    steps += result.steps;
  }
  rmSync(folder, { recursive: true, force: true });
}
print(`${steps} steps in ${walks} walks from seed ${first}; ${found.size} kinds of trouble.`);
process.exitCode = found.size > 0 ? 1 : 0;
