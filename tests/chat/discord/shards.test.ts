import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import type { Health } from '#operation/health.ts';
import { backUpFile } from '#store/backup.ts';
import { contentsOf } from '../../store/contents.ts';
import type { Guild } from '../../support/stand-in/fixtures.ts';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { startProgram } from './program.ts';
import { question } from './stage.ts';

/** A platform that wants two connections, with a server on each: a server's number says which. */
async function twoShards() {
  const standIn = await startStandIn({ shards: 2, heartbeatInterval: 200, patience: 60_000, guilds: [] });
  const servers = new Map<number, Guild>();
  while (servers.size < 2) {
    standIn.clock.advance(1);
    const guild = standIn.addGuild({ name: `Crew ${servers.size}` });
    servers.set(Number((BigInt(guild.id) >> 22n) % 2n), guild);
  }
  return { standIn, onShard: (shard: number) => standIn.user({ guild: servers.get(shard) as Guild }) };
}

it('more servers than one connection carries are served over two, from one set of records', {
  timeout: 180_000,
}, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
  const { standIn, onShard } = await twoShards();
  const [records, health] = [join(folder, 'records.sqlite'), join(folder, 'health.json')];
  const program = startProgram(folder, { ...standIn.environment, FANWRIGHT_DB: records, FANWRIGHT_HEALTH: health });
  onTestFinished(async () => {
    program.kill('SIGKILL');
    await program.ended;
    await standIn.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const healthNow = () => JSON.parse(readFileSync(health, 'utf8')) as Health;

  await program.until(/"what":"ready".*\n/);
  const lines = program
    .said()
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(lines.find(({ what }) => what === 'ready')).toMatchObject({
    level: 'info',
    version: expect.stringMatching(/^\d+\.\d+\.\d+$/),
    database: records,
    databaseVersion: expect.any(Number),
    servers: expect.any(Number),
    shards: 2,
  });
  expect(standIn.gateway.counts.identified).toBe(2);
  // The commands are told once, not once for each connection.
  expect(standIn.registrations).toHaveLength(1);
  expect(healthNow()).toMatchObject({
    state: 'ready',
    shards: [
      { id: 0, ready: true, lastHeartbeat: expect.stringMatching(/Z$/) },
      { id: 1, ready: true },
    ],
  });

  const asked = await Promise.all([0, 1].map((shard) => onShard(shard).slash('size', { 'room-length': '8 ft' })));
  expect(asked.map(question)).toEqual([expect.stringContaining('How wide'), expect.stringContaining('How wide')]);

  // A copy made by another process meanwhile holds what both servers said.
  const copy = join(folder, 'copy.sqlite');
  await backUpFile(records, copy);
  expect(contentsOf(copy)).toBe(contentsOf(records));
  expect(contentsOf(copy).match(/^crews .*$/gm)).toHaveLength(2);

  const callbacks = () => standIn.requests.filter(({ path }) => path.includes('callback'));
  // Told to end while an answer for the second connection is under way: it is finished first.
  standIn.fail({ path: /callback/, slowBy: 500 });
  const last = onShard(1).slash('size', { 'room-length': '9 ft', 'room-width': '6 ft' });
  await standIn.until(() => (callbacks().length > asked.length ? true : undefined));
  program.kill('SIGTERM');
  expect(question(await last)).toContain('How high is the ceiling?');
  expect(await program.ended).toBe(0);
  expect(healthNow().state).toBe('ended');
  expect(program.said()).not.toMatch(/"level":"(error|warn)"/);
  expect(standIn.violations).toEqual([]);
});
