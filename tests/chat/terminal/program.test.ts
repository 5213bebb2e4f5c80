import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStore, type Store } from '#store/store.ts';
import { type Ended, ended, started } from './program.ts';

const example = [
  'duct',
  'fan-curve=96@0 84@0.1 66@0.25 0@0.5',
  'collar=4 in',
  'duct-run=14 ft 4 in flex compressed 4 %; 2 x elbow 90; wall cap',
];

/** A whole duct by follow-up questions, from an invented house. */
const duct = ['duct', '84@0.1 66@0.25', '4 in', '8 ft 4 in smooth', 'roof cap', 'dk', 'none', 'dk'].join('\n');

// Starting takes a second, so the runs that do not need each other are started together.
describe('the program as it is started', { timeout: 60_000 }, () => {
  const home = mkdtempSync(join(tmpdir(), 'fanwright-'));
  const folder = (name: string): string => {
    mkdirSync(join(home, name));
    return join(home, name);
  };
  let held: Store | undefined;
  let runs: Readonly<Record<'once' | 'talk' | 'settings' | 'second', Promise<Ended>>>;

  beforeAll(() => {
    held = openStore(join(home, 'held.sqlite'));
    writeFileSync(join(folder('settings'), '.env'), 'LOG_LEVEL=loud\nDISCORD_GUILD=ours\n');
    runs = {
      once: ended(started(folder('once'), [...example, '--json'])),
      talk: ended(started(folder('talk'), []), `${duct}\nsize\n8-0\n5 ft\n`),
      settings: ended(started(join(home, 'settings'), ['help'])),
      second: ended(started(folder('second'), [], { FANWRIGHT_DB: '../held.sqlite' })),
    };
  });

  afterAll(() => {
    held?.close();
    rmSync(home, { recursive: true, force: true });
  });

  it('answers one line in JSON and nothing else, and keeps nothing', async () => {
    const { code, out, errors } = await runs.once;
    expect({ code, errors }).toEqual({ code: 0, errors: '' });
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ command: 'duct', status: 'answered', missing: [] });
    const ids = ['delivered-airflow', 'static-pressure', 'duct-velocity', 'pressure-shares', 'code-duct-length'];
    expect(answer.findings.map(({ id }: { id: string }) => id)).toEqual(
      expect.arrayContaining([...ids, 'sound', 'remedies']),
    );
    expect(existsSync(join(home, 'once', 'data'))).toBe(false);
  });

  it('talks line by line from a pipe, without a prompt, with the chart in a file beside', async () => {
    const { code, out, errors } = await runs.talk;
    expect({ code, errors }).toEqual({ code: 0, errors: '' });
    expect(out).toContain('> 8-0\nRoom length: 8 ft (2.44 m).\nHow wide is it?\n');
    expect(out).toMatch(/^About \d+ cfm \([\d.]+ L\/s\) will come out of this duct/m);
    const chart = /^Chart: (charts\/duct-[0-9a-f]{8}\.png)$/m.exec(out)?.[1] ?? 'none';
    expect(
      readFileSync(join(home, 'talk', chart))
        .subarray(1, 4)
        .toString(),
    ).toBe('PNG');
  });

  it('goes on with an open question when it is started again', async () => {
    const { out } = await runs.talk;
    expect(out).toMatch(/The question stays open\. Type go on next time to answer it\.\s*$/);
    const again = await ended(started(join(home, 'talk'), []), 'go on\n8 ft\n');
    expect(again.out).toContain('You were asked, for size: How high is the ceiling?');
    expect(again.out).toContain('> go on\nHow high is the ceiling?');
    expect(again.out).toContain('Ceiling height: 8 ft (2.44 m).');
  });

  it('takes its settings from a .env file, and says what is wrong with them, each in a sentence', async () => {
    expect(await runs.settings).toEqual({
      code: 1,
      out: '',
      errors:
        'DISCORD_GUILD must be the number of a server, such as 123456789012345678. LOG_LEVEL must be debug, info, warn, error or silent.\n',
    });
  });

  it('does not start twice on the same records', async () => {
    const { code, out, errors } = await runs.second;
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(errors).toMatch(/^\.\.\/held\.sqlite is already in use by another Fanwright, so [^\n]*\.\n$/);
  });

  it('ends quietly when nobody reads on', async () => {
    const child = started(folder('left'), []);
    child.stdout?.once('data', () => child.stdout?.destroy());
    child.stdin?.write('help\n'.repeat(50));
    let errors = '';
    child.stderr?.on('data', (text) => {
      errors += text;
    });
    const code = await new Promise((onEnd) => child.once('close', onEnd));
    expect({ code, errors }).toEqual({ code: 0, errors: '' });
  });
});
