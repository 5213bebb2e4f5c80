import { describe, expect, it } from 'vitest';
import handoff from '#commands/handoff.ts';
import type { Paper } from '#findings/paper.ts';
import { paperPdf } from '#pictures/paper-pdf.ts';
import { done } from './at-a-desk.ts';
import { walkedHouse } from './walked-house.ts';

/** Words that no Spanish sentence holds and hardly an English one lacks. */
const englishWords = /\b(?:the|is|are|and|of|with|not|it|this|that|fan|air)\b/i;

/** Everything a page says, without the names of its blocks. */
const saidOn = (paper: Paper | undefined): string =>
  JSON.stringify(paper, (key, value) => (['kind', 'made', 'name'].includes(key) ? undefined : value)).replaceAll(
    /"\w+":/g,
    '',
  );

const papersIn = (until: string | undefined, language: string) => {
  const { store } = walkedHouse(until === undefined ? {} : { until });
  const { papers = [] } = done(handoff, '', { job: '1', language }, { store, commands: [handoff] });
  return { occupant: papers[0]?.paper, record: papers[1]?.paper };
};

describe('the page for the occupant in Spanish', () => {
  it('is Spanish from its title to its foot, and the record for the file stays English', () => {
    const { occupant, record } = papersIn(undefined, 'spanish');
    expect(saidOn(occupant)).not.toMatch(englishWords);
    expect(saidOn(occupant)).toMatch(/Terminado el 1 de marzo de 2027\./);
    expect(saidOn(occupant)).toMatch(/Todos afuera ya, si.*Llame a los bomberos desde afuera\./);
    expect(saidOn(record)).toContain('Survey checked (S12), hold');
    expect(saidOn(papersIn(undefined, 'english').occupant)).toContain('Your bathroom fan');
  });

  it('warns in Spanish while the work is not finished, and fits on one page', async () => {
    const { occupant } = papersIn('sound', 'spanish');
    expect(saidOn(occupant)).toContain('El trabajo no está terminado');
    expect(saidOn(occupant)).not.toMatch(englishWords);
    if (!occupant) throw new Error('there is no page for the occupant');
    const pdf = Buffer.from(await paperPdf(occupant)).toString('latin1');
    expect(pdf.match(/\/Type \/Page\b/g)).toHaveLength(1);
  });
});
