import { describe, expect, it } from 'vitest';
import { stage } from './stage.ts';

const play = stage();

/** Words that no Spanish sentence holds and hardly an English one lacks. */
const englishWords = /\b(?:the|is|are|and|of|with|not|it|this|that|waits|first)\b/i;

describe('a list in Discord, for somebody whose platform speaks Spanish', () => {
  it('speaks Spanish to that person and English to the other, over the same records', async () => {
    const crew = play.crew();
    const max = play.standIn.user({ name: 'Max', ...crew, permissions: ['ManageGuild'] });
    const eva = play.standIn.user({ ...crew, name: 'Eva', locale: 'es-419' });
    await max.slash('crew add', { person: `<@${eva.id}>`, as: 'lead', name: 'Eva' });
    await max.slash('crew add', { person: `<@${crew.ann.id}>`, as: 'lead', name: 'Ann' });
    const started = await eva.slash('swap start', { list: 'control-only' });
    expect(started.text).toContain('Solo control nuevo');
    const first = await eva.press(started, 'Primer paso');
    expect(first.text).toContain('Pruebe cada interruptor de pared');
    expect(first.text).not.toMatch(englishWords);
    const status = await eva.slash('swap status');
    expect(status.text).toContain('Altos por firmar');
    expect(status.text).not.toMatch(englishWords);
    expect((await crew.ann.slash('swap status')).text).toContain('Holds still to sign');
  });
});
