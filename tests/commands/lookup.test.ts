import { describe, expect, it } from 'vitest';
import { commands } from '#commands/index.ts';
import lookup from '#commands/lookup.ts';
import { storeAt } from '../store/workbench.ts';
import { dialogue, done, suggested, wordsOfReply } from './at-a-desk.ts';

const at = () => ({ store: storeAt().scoped('crew'), commands });
const asked = (words: string, more: Readonly<Record<string, string>> = {}) =>
  done(lookup, '', { words, ...more }, at());

describe('lookup', () => {
  it('explains a term, with its other names, how sure it is and where to go on', () => {
    const reply = asked('sone');
    expect(reply.headline).toMatch(/^Sone: How loud a fan sounds/);
    expect(wordsOfReply(reply)).toMatch(/common practice, no source/);
    expect(wordsOfReply(reply)).toMatch(/Go on with\nduct, fan/);
  });

  it('says what a misspelt word was taken for', () => {
    expect(asked('fex duct').headline).toMatch(/^Read as “flex duct”\. Flex duct: /);
  });

  it('shows a table with its edition, its place and that it was seen in print', () => {
    const words = wordsOfReply(asked('length.irc', { all: 'yes' }));
    expect(words).toMatch(/Table M1504\.2/);
    expect(words).toMatch(/seen in print, code text/);
    expect(words).toMatch(/Used by\nreach/);
  });

  it('cuts a long table and offers the rest', () => {
    const reply = asked('length.irc');
    const figures = reply.tables?.find(({ title }) => title.startsWith('Figures'));
    expect(figures?.title).toMatch(/^Figures, the first 8 of \d+$/);
    expect(figures?.rows).toHaveLength(8);
    const [rest] = reply.presses ?? [];
    expect(rest?.given).toEqual({ words: 'length.irc', all: 'yes' });
    const all = done(lookup, '', rest?.given ?? {}, at()).tables?.find(({ title }) => title === 'Figures');
    expect(all?.rows.length).toBeGreaterThan(8);
  });

  it('warns with the entry where somebody could be hurt', () => {
    const [caution] = asked('motor bearing').findings.concat(asked('blame-noise.bearing').findings);
    expect(caution).toMatchObject({ weight: 'caution' });
  });

  it('offers several where none is named so, and opens the one that is pressed', () => {
    const reply = asked('hanger');
    const many = asked('insulation attic');
    expect(reply.headline).toMatch(/^Hanger: /);
    expect(many.headline).toBe('“insulation attic” is found in these. Choose one.');
    expect(many.presses).toHaveLength(5);
    const opened = done(lookup, '', many.presses?.[1]?.given ?? {}, at());
    expect(opened.headline).not.toBe(many.headline);
    expect(opened.tables?.map(({ title }) => title)).toContain('About it');
  });

  it('offers the nearest terms where nothing is found', () => {
    const reply = asked('xqzzwv');
    expect(reply.headline).toBe('Nothing is found for “xqzzwv”. Try another word, or one of these terms.');
    expect(reply.presses).toHaveLength(5);
  });

  it('suggests while somebody types, by what stands in the name', () => {
    expect(suggested(lookup, '', 'words', 'equiv', at())?.[0]).toBe('term.equivalent-length');
    expect(suggested(lookup, '', 'words', '', at())).toEqual([]);
  });

  it('tells figures in the units of the crew', () => {
    const { store } = at();
    store.saveSetting('units', { value: 'metric', who: 'lead' });
    const words = wordsOfReply(done(lookup, '', { words: 'need.irc-2015' }, { store, commands }));
    expect(words).toMatch(/23\.6 L\/s \(50 cfm\)/);
  });

  it('is opened by its number in a terminal', async () => {
    const said = await dialogue(at(), 'lookup insulation attic', '1', 'lookup gfi');
    expect(said).toMatch(/Type a number:/);
    expect(said).toMatch(/bot: GFCI: Ground-fault circuit interrupter/);
  });
});
