import { describe, expect, it } from 'vitest';
import type { Seen } from '../../support/stand-in/seen.ts';
import { stage } from './stage.ts';

const play = stage();

const words = ({ content, embeds }: Seen): string => [content, ...embeds.map(({ title }) => title)].join(' ').trim();
const sent = (bytes: Uint8Array) => ({ name: 'job.json', contentType: 'application/json', bytes });

describe('a job as a file in Discord', () => {
  it('is exported in one server and brought in in another as a file that is sent along', async () => {
    const { ann } = play.crew();
    const { ann: stranger, guild } = play.crew();
    await ann.slash('job open', { name: '14 Maple St' });
    await ann.slash('size', { 'room-length': '8 ft' });
    const [file] = (await ann.slash('job export')).files;
    expect(file?.name).toBe('job-1.json');
    const bytes = file?.bytes ?? new Uint8Array();
    const reply = await stranger.slash('job import', { file: sent(bytes) });
    expect(words(reply)).toContain('Brought in as Job 1, 14 Maple St, with 1 answer.');
    const kept = play.bot.store.scoped(guild.id);
    expect(kept.newestFacts(1).get('room-length')).toMatchObject({ typed: '8 ft', who: `imported: <@${ann.id}>` });
    expect((await stranger.slash('job export', { as: 'csv' })).files.map(({ name }) => name)).toEqual(['job-2.csv']);
  });

  it('that means harm is refused in a sentence to the one who sent it, and erasing one that came in works', async () => {
    const crew = play.crew();
    const { ann, guild } = crew;
    const bad = await ann.slash('job import', { file: sent(Buffer.from('{"__proto__":{"kinds":["lead"]}}')) });
    expect(words(bad)).toContain('Nothing was brought in. There is a field named “\\_\\_proto\\_\\_” in it');
    const deep = await ann.slash('job import', { file: sent(Buffer.from('['.repeat(50_000))) });
    expect(words(deep)).toContain('nested deeper than any record');
    const kept = play.bot.store.scoped(guild.id);
    expect(kept.listSheets({ limit: 5 })).toEqual([]);
    await ann.slash('job open', { name: 'Elm' });
    const [file] = (await ann.slash('job export')).files;
    const max = play.standIn.user({ name: 'Max', ...crew, permissions: ['ManageGuild'] });
    await max.slash('job import', { file: sent(file?.bytes ?? new Uint8Array()) });
    expect(kept.findSheet(2)?.name).toBe('Elm');
    expect(words(await ann.slash('job erase', { name: '2', sure: '2' }))).toContain('Only people who may manage');
    expect(words(await max.slash('job erase', { name: '2', sure: '2' }))).toContain('Job 2 is erased.');
    expect(kept.findSheet(2)).toBeUndefined();
  });
});
