import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inspect } from 'node:util';
import { type APIApplicationCommandBasicOption, ApplicationCommandOptionType as Type } from 'discord.js';
import { describe, expect, it, onTestFinished } from 'vitest';
import { loggable } from '#chat/discord/log.ts';
import { troubleOf } from '#chat/discord/start-troubles.ts';
import { requestHarm } from '../../fuzz/sent.ts';
import { workedTime } from '../../fuzz/worked-time.ts';
import { jpeg } from '../../support/photographs.ts';
import { clientFor } from '../../support/stand-in/client.ts';
import type { Person } from '../../support/stand-in/person.ts';
import type { Seen } from '../../support/stand-in/seen.ts';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { photo } from '../../support/stand-in/uploads.ts';
import { startProgram } from './program.ts';
import { answer, quickly, stage } from './stage.ts';

const play = stage({ platform: { patience: 60_000, now: workedTime() }, bot: { draw: quickly } });

/** A word that stands in everything one crew keeps. */
const secret = 'Thornapple';

/** A crew that has kept something of every kind, and a stranger who manages another server. */
async function crewAndStranger() {
  const { guild, channel, ann } = play.crew();
  const lead = play.standIn.user({ name: 'Lee', guild, channel, permissions: ['ManageGuild'] });
  const pages: Seen[] = [];
  const does = async (who: Person, words: string, options: Parameters<Person['slash']>[1]) => {
    pages.push(await who.slash(words, options));
  };
  await does(lead, 'crew add', { person: `<@${lead.id}>`, as: 'lead', name: `${secret} Lee` });
  await does(lead, 'crew qualify', {
    person: `<@${lead.id}>`,
    what: 'licensed-electrician',
    number: `${secret}-1`,
    expires: '2099-01-01',
  });
  await does(ann, 'fan add', { name: `${secret} 80`, 'fan-curve': '84@0.1 66@0.25', collar: '4 in' });
  await does(ann, 'job open', { name: `12 ${secret} Lane` });
  await does(ann, 'callback', { complaint: `loud hum, ${secret}` });
  await does(lead, 'swap start', { list: 'callback-visit' });
  await does(lead, 'swap note', { says: `${secret} noted` });
  await does(ann, 'size', { 'room-length': '8 ft' });
  expect(pages.filter(({ text }) => text.includes(secret)).length).toBeGreaterThan(3);

  const other = play.crew();
  const stranger = play.standIn.user({ ...other, name: 'Max', permissions: ['ManageGuild'] });
  return { pages, ann, lead, stranger };
}

interface Sayable {
  readonly words: string;
  readonly options: readonly APIApplicationCommandBasicOption[];
}

/** Every command and subcommand as the platform offers it. */
const sayable = (): readonly Sayable[] =>
  play.standIn.commands().flatMap(({ name, options = [] }) => {
    const subs = options.filter((option) => option.type === Type.Subcommand);
    return subs.length > 0
      ? subs.map((sub) => ({ words: `${name} ${sub.name}`, options: sub.options ?? [] }))
      : [{ words: name, options: options as readonly APIApplicationCommandBasicOption[] }];
  });

describe('what one server keeps', { timeout: 300_000 }, () => {
  it('is suggested to nobody of another, whatever is typed and wherever', async () => {
    const { stranger, ann } = await crewAndStranger();
    let asked = 0;
    let known = 0;
    for (const { words, options } of sayable()) {
      for (const option of options) {
        if (!('autocomplete' in option && option.autocomplete)) continue;
        for (const partial of ['', secret.slice(0, 5), '1']) {
          const offered = await stranger.autocomplete(words, option.name, partial);
          expect(JSON.stringify(offered), `/${words} ${option.name}`).not.toContain(secret);
          asked += 1;
        }
        const own = await ann.autocomplete(words, option.name, secret.slice(0, 5));
        if (JSON.stringify(own).includes(secret)) known += 1;
      }
    }
    expect(asked).toBeGreaterThan(200);
    // To the crew itself it is.
    expect(known).toBeGreaterThan(4);
  });

  it('is shown to nobody of another: by no command, no number, no name', async () => {
    const { stranger } = await crewAndStranger();
    const tried: Readonly<Record<string, readonly string[]>> = {
      name: ['1', `12 ${secret} Lane`, `${secret} 80`, '%'],
      person: [`${secret} Lee`, '%'],
      job: ['1', `12 ${secret} Lane`],
      search: ['%', secret],
      year: ['2026'],
    };
    for (const { words, options } of sayable()) {
      const [about] = options.filter(({ name }) => tried[name] !== undefined);
      for (const value of about ? (tried[about.name] ?? []) : [undefined]) {
        const given = options.flatMap((option): (readonly [string, string])[] => {
          if (option.name === about?.name && value !== undefined) return [[option.name, value]];
          if (!option.required || option.type !== Type.String) return [];
          const first = 'choices' in option ? option.choices?.[0]?.value : undefined;
          return [[option.name, String(first ?? 'x')]];
        });
        if (options.some(({ type, required }) => type === Type.Attachment && required)) continue;
        const told = await stranger.begin.slash(words, Object.fromEntries(given));
        const shown = await Promise.any([
          told.answer().then(({ text, files }) => `${text}${textOf(files)}`),
          told.form().then(({ title }) => title),
        ]);
        const echoed = value ?? '';
        expect(shown.replaceAll(echoed, ''), `/${words} ${JSON.stringify(given)}`).not.toContain(secret);
      }
    }
  });

  it('is reached by none of its buttons, menus and forms, pressed from another', async () => {
    const { pages, stranger, ann } = await crewAndStranger();
    const theirs = await stranger.slash('size');
    const ids = pages.flatMap(({ buttons, menus }) => [...buttons, ...menus].map(({ customId }) => customId ?? ''));
    expect(ids.length).toBeGreaterThan(10);
    for (const id of ids) {
      for (const values of [undefined, ['room-length']]) {
        const begun = stranger.begin.pressRaw(id, theirs, values);
        const shown = await Promise.any([
          begun.answer().then(({ text }) => text),
          begun.form().then(({ title }) => title),
        ]);
        expect(shown).not.toContain(secret);
      }
    }
    expect((await ann.slash('job show')).text).toContain(secret);
  });
});

const textOf = (files: Seen['files']): string =>
  files.map(({ bytes }) => Buffer.from(bytes).toString('latin1')).join('');

describe('nobody is mentioned', { timeout: 180_000 }, () => {
  it('in a first answer, a change, a further message, a photo, or a file', async () => {
    const { guild, channel, ann } = play.crew();
    const lead = play.standIn.user({ name: 'Lee', guild, channel, permissions: ['ManageGuild'] });
    const name = `@everyone <@${ann.id}0> <@&1> https://example.com`;
    const from = play.standIn.requests.length;
    await lead.slash('crew add', { person: `<@${lead.id}>`, as: 'lead', name });
    await ann.slash('job open', { name });
    await lead.slash('swap start', { list: 'callback-visit' });
    await lead.slash('swap note', { says: name });
    await lead.slash('swap photo', { file: { ...photo('@everyone.jpg'), bytes: jpeg() }, step: 'V05' });
    const asked = await ann.slash('size');
    const wrong = await answer(ann, asked, { 'room-length': name, 'room-width': '5 ft' });
    await ann.press(wrong, 'Why');
    await ann.slash('fan add', { name, 'fan-curve': '84@0.1 66@0.25' });
    await ann.slash('fan export');
    await ann.slash('job export', { name: '1' });
    await lead.slash('handoff', { job: '1' });
    const sent = play.standIn.requests.slice(from);
    const kinds = new Set(
      sent.map(
        ({ method, path }) =>
          `${method} ${path
            .split('/')
            .filter((part) => !/\d/.test(part))
            .join('/')}`,
      ),
    );
    expect([...kinds]).toEqual(
      expect.arrayContaining(['POST /interactions/callback', 'PATCH /webhooks/messages', 'POST /webhooks']),
    );
    expect(sent.flatMap((request) => requestHarm(request, [ann.id, lead.id]))).toEqual([]);
  });
});

describe('a token', { timeout: 120_000 }, () => {
  /** Shaped as the platform's, and nobody's. */
  const token = ['MTIzNDU2Nzg5MDEyMzQ1Njc4', 'Gabcde', 'abcdefghijklmnopqrstuvwxyz0123456789AB'].join('.');

  it('stands in no line the program writes, however much it logs and whatever fails', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
    const standIn = await startStandIn({ token, patience: 50_000 });
    const program = startProgram(folder, { ...standIn.environment, LOG_LEVEL: 'debug' });
    onTestFinished(async () => {
      program.kill('SIGKILL');
      await program.ended;
      await standIn.close();
      rmSync(folder, { recursive: true, force: true });
    });
    await program.until(/"what":"ready"/);
    const ann = standIn.user();
    // The first two cannot be answered at all; after the others it is tried to say so, once.
    for (const [status, code, times] of [
      [404, 10_062, 1],
      [400, 40_060, 1],
      [403, 50_001, 2],
      [401, 50_027, 2],
    ] as const) {
      standIn.fail({ path: /callback/, times, status, code });
      ann.begin.slash('job open', { name: 'Thornapple Lane' });
      await program.until(new RegExp(`"code":${code}`));
    }
    standIn.gateway.askToReconnect();
    await ann.slash('help');
    program.kill('SIGTERM');
    expect(await program.ended).toBe(0);
    const said = program.said();
    expect(said).toContain('"level":"debug"');
    for (const part of token.split('.')) expect(said).not.toContain(part);
    expect(said).not.toMatch(/token-\d+|Thornapple/);
  });

  it('is in no error that leaves the client, looked into as deep as it goes', async () => {
    const standIn = await startStandIn({ token });
    const client = clientFor(standIn);
    onTestFinished(async () => {
      await client.destroy();
      await standIn.close();
    });
    await client.login(token);
    standIn.fail({ path: /^\/interactions/, status: 400, code: 50_035 });
    const secretWord = 'interaction-token-of-somebody';
    const refused = await client.rest
      .post(`/interactions/1/${secretWord}/callback`, { body: { type: 4, data: { content: secret } }, auth: false })
      .catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(Error);
    const deep = (value: unknown) => inspect(value, { depth: Number.POSITIVE_INFINITY, showHidden: true });
    // The client's own error does hold it, which is why only what is picked from it may go on.
    expect(deep(refused)).toContain(secretWord);
    expect(deep(loggable(refused))).not.toMatch(new RegExp(`${secretWord}|${secret}`));
    const trouble = troubleOf(refused);
    expect(deep(trouble)).not.toMatch(new RegExp(`${secretWord}|${secret}`));
    for (const part of token.split('.')) expect(deep([refused, trouble])).not.toContain(part);
  });
});
