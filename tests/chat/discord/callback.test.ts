import { describe, expect, it } from 'vitest';
import { answer, labels, question, stage } from './stage.ts';

const play = stage();
const said = 'loud hum since Tuesday and the mirror stays fogged';

describe('/callback hears a complaint', () => {
  it('shows what it understood, and one press puts it right', async () => {
    const { ann } = play.crew();
    const first = await ann.slash('callback');
    const heard = await answer(ann, first, { complaint: said });
    expect(question(heard)).toContain('I understood: a steady hum or buzz while it turns; a mirror that stays fogged.');
    expect(question(heard)).toContain('Not understood: “since Tuesday”.');
    const choices = [...labels(heard), ...heard.menus.flatMap(({ options }) => options.map(({ label }) => label))];
    expect(choices).toContain('Not: a steady hum or buzz while it turns');
    const after = await ann.press(heard, 'Not: a steady hum or buzz while it turns');
    expect(question(after)).toContain('I understood: a mirror that stays fogged. Is that right?');
    const situation = await ann.press(after, 'That is right');
    expect(question(situation)).toContain('What is true of this job?');
  });

  it('asks a value again that could not be read, before there is an answer', async () => {
    const { ann } = play.crew();
    const given = { seen: 'whoosh, small', 'confirmed-cause': 'smallduct', 'measured-airflow': 'plenty' };
    const asked = await ann.slash('callback', given);
    expect(asked.embeds).toEqual([]);
    expect(asked.content).toContain('“plenty”');
    const told = await answer(ann, asked, { 'measured-airflow': '40 cfm' });
    expect(told.embeds[0]?.title).toMatch(/^Closed: /);
  });

  it('says a danger at once', async () => {
    const { ann } = play.crew();
    const reply = await ann.slash('callback', { complaint: 'there is a burning smell from the fan' });
    expect(reply.embeds[0]?.title).toBe('Stop. Deal with the danger first.');
    expect(JSON.stringify(reply.embeds)).toContain('Said because of: a hot or burning smell.');
  });
});

describe('/callback for another customer in the same channel', () => {
  it('asks by buttons which job a line is about, and keeps the first one’s sheet as it was', async () => {
    const { ann } = play.crew();
    await ann.slash('callback', { complaint: '14 Maple St: mirror still fogged' });
    const asked = await ann.slash('ask', { text: '9 Oak Ave, fan hums' });
    expect(question(asked)).toContain('The line names 9 Oak Ave. Open here is Job 1, 14 Maple St.');
    const on = await ann.press(asked, 'New sheet: 9 Oak Ave');
    expect(on.id).toBe(asked.id);
    expect(on.content).toContain('Job 2, 9 Oak Ave');
    expect((await ann.slash('job show', { name: '1' })).text).toContain('14 Maple St: mirror still fogged');
    expect((await ann.slash('job show', { name: '2' })).text).toContain('9 Oak Ave, fan hums');
  });

  it('says beside an earlier complaint where it goes, and one press gives it a sheet of its own', async () => {
    const { ann } = play.crew();
    await ann.slash('callback', { complaint: 'mirror still fogged' });
    const second = await ann.slash('callback', { complaint: 'fan hums' });
    expect(second.content).toContain('which holds a complaint already');
    const on = await ann.press(second, 'Another job');
    expect(on.content).toContain('This is on Job 2, no name yet now.');
    expect(labels(on)).not.toContain('Another job');
    expect((await ann.slash('job show', { name: '1' })).text).toContain('mirror still fogged');
  });
});
