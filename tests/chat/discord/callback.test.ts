import { describe, expect, it } from 'vitest';
import { answer, labels, question, stage } from './stage.ts';

const play = stage();
const said = 'loud hum since Tuesday and the mirror stays fogged';

describe('/callback hears a complaint', () => {
  it('shows what it understood, and one press puts it right', async () => {
    const { ann } = play.crew();
    const first = await ann.slash('callback');
    const heard = await answer(ann, first, { complaint: said });
    expect(question(heard)).toContain(
      'I understood: a steady hum or buzz while it turns; a mirror still fogged after 20 minutes.',
    );
    expect(question(heard)).toContain('Not understood: “since Tuesday”.');
    const choices = [...labels(heard), ...heard.menus.flatMap(({ options }) => options.map(({ label }) => label))];
    expect(choices).toContain('Not: a steady hum or buzz while it turns');
    const after = await ann.press(heard, 'Not: a steady hum or buzz while it turns');
    expect(question(after)).toContain('I understood: a mirror still fogged after 20 minutes. Is that right?');
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
