import { chmodSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { platformChecks } from '#chat/discord/platform-checks.ts';
import { commands } from '#commands/index.ts';
import { backUpInto } from '#operation/backups.ts';
import { diskCheck, nodeCheck, secretsCheck, zoneCheck } from '#operation/machine-checks.ts';
import { pictureCheck } from '#operation/picture-check.ts';
import { backupsCheck, healthCheck, recordsCheck } from '#operation/records-checks.ts';
import { openStore } from '#store/store.ts';
import { startBot } from '../chat/discord/bot.ts';
import { quickly } from '../chat/discord/stage.ts';
import { contentsOf } from '../store/contents.ts';
import { answer, folder, ladder } from '../store/workbench.ts';
import { type StandInOptions, startStandIn } from '../support/stand-in/stand-in.ts';

const fixing = (about: string, says: string | RegExp) => ({ about, state: 'fix', says: expect.stringMatching(says) });

describe('of the machine, the doctor says', () => {
  const machine = { node: '20.19.0', zoneAsked: undefined, zone: 'America/Halifax' };

  it.each([
    ['20.19.0', 'good'],
    ['20.18.9', 'fix'],
    ['24.99.1', 'good'],
    ['25.0.0', 'fix'],
    ['9.0.0', 'fix'],
  ])('of Node %s: %s', (node, state) => {
    expect(nodeCheck({ ...machine, node }, '>=20.19 <25').state).toBe(state);
  });

  it('what its time zone is, and when TZ names none', () => {
    expect(zoneCheck(machine)).toMatchObject({ state: 'good', says: expect.stringContaining('America/Halifax') });
    expect(zoneCheck({ ...machine, zoneAsked: 'Halifax/Nowhere' })).toEqual(fixing('time zone', /^Set TZ to a zone/));
  });

  it('when the disk is nearly full, counting the room a rewriting of the records takes', () => {
    const path = join(folder(), 'records.sqlite');
    const megabytes = (count: number) => count * 1024 * 1024;
    expect(diskCheck(path, megabytes(200)).state).toBe('good');
    writeFileSync(path, new Uint8Array(megabytes(10)));
    expect(diskCheck(path, megabytes(220))).toEqual(
      fixing('disk', /^Free some disk space: 220 MB .*230 MB are wanted/),
    );
    expect(diskCheck(join(folder(), 'no', 'such', 'folder')).says).toMatch(/\d MB free/);
  });

  it('when others may read the token', () => {
    const file = join(folder(), '.env');
    expect(secretsCheck(file)).toEqual([]);
    writeFileSync(file, '');
    chmodSync(file, 0o644);
    expect(secretsCheck(file)).toMatchObject([{ state: 'note', says: expect.stringContaining('chmod 600') }]);
    chmodSync(file, 0o600);
    expect(secretsCheck(file)).toMatchObject([{ state: 'good' }]);
  });

  it('that a picture can be drawn', async () => {
    expect(await pictureCheck()).toMatchObject({
      state: 'good',
      says: expect.stringMatching(/^A chart is drawn, \d+ kB/),
    });
  });
});

describe('of the records, the doctor says', () => {
  const now = new Date('2026-03-03T12:00:00Z');

  function records() {
    const place = folder();
    const path = join(place, 'records.sqlite');
    const store = openStore(path);
    const crew = store.scoped('crew');
    const { number } = crew.currentSheet(ladder);
    for (let count = 0; count < 50; count += 1) crew.addFact(number, answer('note', 'x'.repeat(500)));
    return { place, path, store, plan: { folder: join(place, 'backups'), hours: 24, kept: 3 } };
  }

  it('how they are, in use and not, and changes nothing', () => {
    const { place, path, store } = records();
    expect(recordsCheck(path)).toMatchObject({ state: 'good', says: expect.stringMatching(/is sound: .*, in use by/) });
    store.close();
    const before = [contentsOf(path), readdirSync(place)];
    expect(recordsCheck(path)).toMatchObject({ state: 'good', says: expect.stringMatching(/version \d+\.$/) });
    expect([contentsOf(path), readdirSync(place)]).toEqual(before);
  });

  it('when they are damaged, and that none are there yet', () => {
    const { path, place, store } = records();
    store.close();
    const bytes = readFileSync(path);
    bytes.fill(0xff, bytes.length - 3 * 4096, bytes.length - 2 * 4096);
    writeFileSync(path, bytes);
    expect(recordsCheck(path)).toEqual(fixing('records', /is damaged.*restore the latest backup/));
    expect(readFileSync(path)).toEqual(bytes);
    expect(recordsCheck(join(place, 'none.sqlite')).says).toContain('is made at the first start');
    expect(recordsCheck(join(place, 'no', 'such', 'records.sqlite'))).toMatchObject({ state: 'fix' });
  });

  it('how old the last backup is, when it is too old, damaged or missing', async () => {
    const { path, store, plan } = records();
    expect(backupsCheck(plan, path, now)).toEqual(fixing('backups', /^Make a backup, with: npm start -- backup/));
    const file = await backUpInto(plan, (to) => store.backup(to), new Date('2026-03-03T02:00:00Z'));
    store.close();
    expect(backupsCheck(plan, path, now)).toMatchObject({
      state: 'good',
      says: expect.stringContaining('10 hours old'),
    });
    expect(readdirSync(plan.folder)).toHaveLength(1);
    expect(backupsCheck(plan, path, new Date('2026-03-05T02:00:00Z'))).toEqual(fixing('backups', /is 48 hours old/));
    writeFileSync(file, 'nothing of use');
    expect(backupsCheck(plan, path, now)).toEqual(fixing('backups', /^Make a backup.*of no use: .*is damaged/));
    expect(backupsCheck({ ...plan, hours: 0 }, path, now)).toMatchObject({ state: 'note' });
  });

  it('how the health file reads', () => {
    const file = join(folder(), 'health.json');
    expect(healthCheck(undefined, now).says).toContain('set FANWRIGHT_HEALTH');
    expect(healthCheck(file, now)).toMatchObject({
      state: 'note',
      says: expect.stringContaining('while the program runs'),
    });
    writeFileSync(file, JSON.stringify({ state: 'ended', at: '2026-03-03T11:00:00Z' }));
    expect(healthCheck(file, now).says).toContain('The program ended at');
  });
});

describe('of the platform, the doctor says', () => {
  async function scene(options?: StandInOptions) {
    const standIn = await startStandIn(options);
    onTestFinished(() => standIn.close());
    const asked = (more: Partial<Parameters<typeof platformChecks>[0]> = {}) =>
      platformChecks({ token: standIn.token, api: standIn.api, guild: undefined, commands, ...more });
    return { standIn, asked };
  }

  it('that all is well once the commands are registered, and before that what to do', async () => {
    const { standIn, asked } = await scene();
    const before = await asked();
    expect(before.at(-1)).toMatchObject({
      about: 'commands',
      state: 'note',
      says: expect.stringMatching(/^Start the program/),
    });
    const bot = await startBot(standIn, { draw: quickly });
    await bot.stop();
    const after = await asked();
    expect(after.map(({ about, state }) => `${about} ${state}`)).toEqual([
      'token good',
      'intents good',
      'connection good',
      'commands good',
    ]);
    expect(JSON.stringify([before, after])).not.toContain(standIn.token);
  });

  it('when there is no token, when it does not look like one, and when it is refused, and never says the token', async () => {
    const { standIn, asked } = await scene();
    expect(await asked({ token: undefined })).toMatchObject([
      { state: 'note', says: expect.stringContaining('put DISCORD_TOKEN') },
    ]);
    const requests = standIn.requests.length;
    expect(await asked({ token: 'hunter2-and-more' })).toEqual([fixing('token', /does not look like one\.$/)]);
    expect(standIn.requests).toHaveLength(requests);
    const refused = `${standIn.token}-no`;
    const checks = await asked({ token: refused });
    expect(checks).toEqual([fixing('token', /^Discord refuses DISCORD_TOKEN: copy/)]);
    expect(JSON.stringify(checks)).not.toContain('not-a-secret');
  });

  it('when the bot is not in the server, and when the platform cannot be reached', async () => {
    const { standIn, asked } = await scene();
    expect((await asked({ guild: '123456789012345678' })).at(-1)).toEqual(
      fixing('commands', /^Invite the bot to the server/),
    );
    await standIn.goDown();
    expect(await asked()).toEqual([fixing('token', /^Discord cannot be reached/)]);
  });
});
