import { describe, expect, it, onTestFinished } from 'vitest';
import crew from '#commands/crew.ts';
import handoff from '#commands/handoff.ts';
import job from '#commands/job.ts';
import swap from '#commands/swap.ts';
import type { Paper } from '#findings/paper.ts';
import type { Reply } from '#findings/reply.ts';
import { paperPdf } from '#pictures/paper-pdf.ts';
import { openStore } from '#store/store.ts';
import { done } from './at-a-desk.ts';

const commands = [swap, handoff, crew, job];

const textOf = (paper: Paper | undefined): string => JSON.stringify(paper);
const papersOf = ({ papers = [] }: Reply) => ({ occupant: papers[0]?.paper, record: papers[1]?.paper });

/** A shop list on record: loaded by Ben, signed by Ana, at ten at night in Denver, which is the next day in UTC. */
function loadedTruck({ signed }: { readonly signed: boolean }) {
  const store = openStore(':memory:', { now: () => new Date('2027-03-02T05:30:00Z') });
  onTestFinished(() => store.close());
  const speaking = { store: store.scoped('test'), commands };
  const say = (action: string, options: Readonly<Record<string, string>>) => done(swap, action, options, speaking);
  done(crew, 'set', { 'time-zone': 'America/Denver' }, speaking);
  done(crew, 'add', { person: 'Ana', as: 'lead' }, speaking);
  done(crew, 'add', { person: 'Ben', as: 'apprentice' }, speaking);
  done(job, 'open', { name: '14 Maple' }, speaking);
  say('start', { list: 'before-leaving-the-shop', as: 'Ben' });
  const answers = {
    B01: 'same',
    B02: 'yes',
    B03: '120 V',
    B04: '2',
    B05: 'sound',
    B06: 'yes',
    B07: 'coming',
    B08: 'yes',
  };
  for (const [step, value] of Object.entries(answers)) say('done', { step, value, as: 'Ben' });
  say('note', { says: 'Ring first: the dog.', as: 'Ben' });
  if (signed) say('sign', { step: 'B09', confirm: 'yes', as: 'Ana' });
  return { say, papers: () => done(handoff, '', {}, speaking) };
}

describe('the papers of a job', () => {
  it('record who did what and when, in the time zone of the crew', () => {
    const { papers } = loadedTruck({ signed: true });
    const record = textOf(papersOf(papers()).record);
    expect(record).toContain('Mar 1, 22:30');
    expect(record).not.toContain('Mar 2');
    expect(record).toContain('["Tester on truck (B03)","Tester proved on: 120 V","Ben","Mar 1, 22:30"]');
    expect(record).toContain('["Truck checked (B09), hold","signed","Ana","Mar 1, 22:30"]');
    expect(record).toContain('Ring first: the dog. (Ben');
  });

  it('never call a job finished because the truck was packed', () => {
    const { papers, say } = loadedTruck({ signed: true });
    expect(textOf(papersOf(papers()).occupant)).toContain('The work is not finished');
    say('start', { list: 'swap', as: 'Ben' });
    const both = papersOf(papers());
    expect(textOf(both.occupant)).toContain('The work is not finished');
    expect(textOf(both.occupant)).not.toContain('Finished March');
    expect(textOf(both.record)).toContain('Still open: ');
  });

  it('say in the reply what is not closed', () => {
    const { papers } = loadedTruck({ signed: false });
    expect(papers().findings.map(({ says }) => says)).toEqual([
      'Before leaving the shop is not closed: 8 of 9. Both papers say so.',
    ]);
  });

  it('give the occupant one page', async () => {
    const { papers } = loadedTruck({ signed: true });
    const { occupant } = papersOf(papers());
    if (!occupant) throw new Error('there is no page for the occupant');
    const pdf = Buffer.from(await paperPdf(occupant)).toString('latin1');
    expect(pdf.match(/\/Type \/Page\b/g)).toHaveLength(1);
    expect(textOf(occupant)).toContain('Everyone outside now. Call the fire service from outside.');
  });
});
