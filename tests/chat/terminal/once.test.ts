import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Command } from '#chat/command.ts';
import { answerOnce } from '#chat/terminal/once.ts';
import duct from '#commands/duct.ts';
import help from '#commands/help.ts';
import job from '#commands/job.ts';
import size from '#commands/size.ts';
import { openStore } from '#store/store.ts';
import { StoreTrouble } from '#store/trouble.ts';
import { folder } from '../../store/workbench.ts';
import { kept } from './streams.ts';

const commands: readonly Command[] = [size, duct, job, help];

async function once(words: readonly string[], file = 'no/such/folder/records.sqlite', all = commands) {
  const output = kept();
  const given = { commands: all, settings: { FANWRIGHT_DB: file }, who: 'ann', environment: {}, output };
  const code = await answerOnce(words, given);
  return { code, out: output.text() };
}

const json = async (...given: Parameters<typeof once>) => {
  const { code, out } = await once(...given);
  return { code, answer: JSON.parse(out) };
};

const bath = ['size', 'room-length=8 ft', 'room-width=5 ft'];

describe('one line, answered once', () => {
  it('needs no records', async () => {
    expect((await once(bath)).code).toBe(0);
    expect((await once(['help'])).code).toBe(0);
    expect((await once(['duct'])).code).toBe(2);
  });

  it('takes a slash and capitals before and in the name', async () => {
    expect((await once(['/SIZE', ...bath.slice(1)])).out).toMatch(/^This room needs 50 cfm/);
  });

  it('says in words what is needed and what was not understood, each once', async () => {
    expect(await once(['size', 'room-length=banana', 'room-hight=8'])).toEqual({
      code: 2,
      out: [
        'There is no “room-hight” here. Did you mean room-width?',
        'room-length: I cannot read “banana”; I need a length, such as 8 ft 6 in or 2.6 m.',
        'room-width is needed. How wide is it? It takes a length, such as 8 ft 6 in or 2.6 m.',
        '',
      ].join('\n'),
    });
  });

  it('helps where help is asked for with a flag', async () => {
    const { code, out } = await once(['duct', '--help']);
    expect(code).toBe(0);
    expect(out).toContain('Example: duct fan-curve=');
    expect((await once(['--help'])).out).toBe((await once(['help'])).out);
    expect((await once(['-h'])).out).toBe((await once(['help'])).out);
  });

  it.each([
    [['bogus'], 'There is no “bogus” command. There are size, duct, job, help.'],
    [['dcut'], 'There is no “dcut” command. Did you mean duct?'],
    [[''], 'Name a command: size, duct, job, help.'],
    [['\x1b[31m'], 'There is no “[31m” command. There are size, duct, job, help.'],
    [['__proto__'], 'There is no “__proto__” command. There are size, duct, job, help.'],
    [['x'.repeat(10_000)], `There is no “${'x'.repeat(30)}…” command. There are size, duct, job, help.`],
  ])('%j is no command', async (words, says) => {
    expect(await once(words)).toEqual({ code: 2, out: `${says}\n` });
    const { code, answer } = await json([...words, '--json']);
    expect(code).toBe(2);
    expect(answer).toMatchObject({ status: 'needs-answers', findings: [], missing: [], problems: [{ says }] });
  });

  it('stops with 3 where a finding says stop, and with the rest of the findings after it', async () => {
    const danger: Command = {
      ...size,
      name: 'trial',
      answer: () => ({
        headline: 'Stop.',
        findings: (['good', 'stop'] as const).map((weight) => ({
          id: weight,
          weight,
          says: `${weight}.`,
          working: [],
          sources: [],
        })),
      }),
    };
    const { code, answer } = await json(['trial', ...bath.slice(1), '--json'], ':memory:', [danger]);
    expect(code).toBe(3);
    expect(answer.status).toBe('stopped');
    expect(answer.findings.map(({ id }: { id: string }) => id)).toEqual(['stop', 'good']);
  });
});

describe('one line about a kept job', () => {
  const keep = async () => {
    const file = join(folder(), 'records.sqlite');
    await once(['job', 'open', '7', 'Fennel', 'Row'], file);
    const store = openStore(file);
    const kept = store.scoped('terminal');
    const told = { units: 'inch-pound', how: 'measured', who: 'ann' } as const;
    kept.addFacts(1, [
      { ...told, fact: 'room-length', typed: '12 ft', value: 1 },
      { ...told, fact: 'room-width', typed: '9 ft', value: 1 },
      { ...told, fact: 'ceiling-height', typed: '8 ft', value: 1 },
    ]);
    store.close();
    return file;
  };

  it('starts from its sheet', async () => {
    const file = await keep();
    const { code, out } = await once(['size', 'job=7 Fennel Row', 'fixtures=toilet, shower, tub'], file);
    expect({ code, first: out.split('\n')[0] }).toEqual({
      code: 0,
      first: 'This room needs 150 cfm (70.8 L/s).',
    });
    expect((await once(['size', 'job=#1', 'room-length=5 ft', 'fixtures=none'], file)).out).toMatch(
      /^This room needs 50 cfm/,
    );
  });

  it('says so where there is no such job, and keeps to JSON', async () => {
    const file = await keep();
    const says = 'There is no job “99” here. See them with: job list';
    expect(await once([...bath, 'job=99'], file)).toEqual({ code: 2, out: `${says}\n` });
    const { answer } = await json([...bath, 'job=99', '--json'], file);
    expect(answer).toMatchObject({ command: 'size', status: 'needs-answers', problems: [{ says }] });
  });

  it('passes on what is wrong with the records', async () => {
    await expect(once([...bath, 'job=1'])).rejects.toThrow(StoreTrouble);
    await expect(once(['job', 'list'])).rejects.toThrow(StoreTrouble);
  });
});

describe('one line for the desk', () => {
  it('is done, and in JSON its tables follow', async () => {
    const file = join(folder(), 'records.sqlite');
    const opened = await json(['job', 'open', 'name=14 Maple St', '--json'], file);
    expect(opened).toMatchObject({
      code: 0,
      answer: {
        command: 'job',
        status: 'answered',
        headline: 'Job 1, 14 Maple St is open here. Nothing is on it yet.',
      },
    });
    const listed = await json(['job', 'list', '--json'], file);
    expect(listed.answer.tables[0].rows).toEqual([
      ['1', '14 Maple St', 'open', expect.any(String), expect.any(String), '0'],
    ]);
    expect(listed.answer.findings).toEqual([]);
  });

  it('says which actions there are', async () => {
    const file = join(folder(), 'records.sqlite');
    expect(await once(['job'], file)).toEqual({
      code: 2,
      out: 'Say which: job open, job show, job list, job undo, job close, job causes, job export,\njob import, job erase.\n',
    });
    expect((await once(['job', 'lst'], file)).out).toBe('There is no “job lst”. Did you mean job list?\n');
    expect((await once(['job', 'list', 'state=lost'], file)).out).toBe('state is one of open, closed, all.\n');
    expect((await once(['job', 'undo', 'everything'], file)).out).toBe('job undo takes nothing after it.\n');
    expect(existsSync(file)).toBe(false);
  });
});
