import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type StandIn, startStandIn } from '../support/stand-in/stand-in.ts';

let standIn: StandIn;
let bot: ChildProcess;

beforeAll(async () => {
  standIn = await startStandIn({ patience: 8000 });
  bot = fork(new URL('../support/stand-in/bare-bot.ts', import.meta.url), {
    execArgv: ['--import', 'tsx'],
    env: { ...process.env, ...standIn.environment },
  });
  await standIn.connected();
});
afterAll(async () => {
  bot.kill('SIGTERM');
  await once(bot, 'exit');
  await standIn.close();
  expect(standIn.violations).toEqual([]);
});

it('the bare bot answers whatever command it is given', async () => {
  expect((await standIn.user().slash('duct', { collar: '4 in' })).content).toBe('Here.');
});

it('a load of a fixed number in flight counts every answer and how long it took', async () => {
  const ann = standIn.user();
  const result = await standIn.load({ inFlight: 4, seconds: 0.3, make: (nth) => ann.begin.slash('duct', { nth }) });
  expect(result.fired).toBeGreaterThanOrEqual(4);
  expect(result).toMatchObject({ acknowledged: result.fired, answered: result.fired, missed: 0 });
  const { p50, p90, p99, max } = result.acknowledgement;
  expect([p50, p90, p99, max]).toEqual([p50, p90, p99, max].sort((a, b) => a - b));
  expect(p50).toBeGreaterThan(0);
});

it('a load of a fixed rate fires at that rate', async () => {
  const ann = standIn.user();
  const result = await standIn.load({ rate: 100, seconds: 0.5, make: () => ann.begin.slash('duct') });
  expect(result).toMatchObject({ fired: 50, acknowledged: 50, missed: 0 });
});
