import { describe, expect, it, onTestFinished } from 'vitest';
import crew from '#commands/crew.ts';
import handoff from '#commands/handoff.ts';
import job from '#commands/job.ts';
import swap from '#commands/swap.ts';
import type { Paper } from '#findings/paper.ts';
import type { Reply } from '#findings/reply.ts';
import { paperPdf } from '#pictures/paper-pdf.ts';
import { openStore } from '#store/store.ts';
import { answer } from '../store/workbench.ts';
import { done } from './at-a-desk.ts';
import { walkedHouse } from './walked-house.ts';

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
    expect(record).toContain('Mar 1, 2027, 22:30');
    expect(record).not.toContain('Mar 2');
    expect(record).toContain('["Tester on truck (B03)","Tester proved on: 120 V","Ben","Mar 1, 2027, 22:30"]');
    expect(record).toContain('["Truck checked (B09), hold","SIGNED","Ana","Mar 1, 2027, 22:30"]');
    expect(record).toContain('Ring first: the dog. (Ben');
  });

  it('tell the newest minutes on the sheet, whom to call, and one order where people are in danger', () => {
    const store = openStore(':memory:', { now: () => new Date('2027-03-02T05:30:00Z') });
    onTestFinished(() => store.close());
    const speaking = { store: store.scoped('test'), commands };
    done(job, 'open', { name: '14 Maple' }, speaking);
    for (const minutes of [30, 45]) {
      speaking.store.addFact(1, answer('run-time-set', minutes * 60, { typed: `${minutes} min` }));
    }
    const page = (options: Readonly<Record<string, string>> = {}) =>
      textOf(papersOf(done(handoff, '', options, speaking)).occupant);
    expect(page()).toContain('the control is set to 45 min');
    expect(page()).toContain('"kind":"blanks","labels":["Your crew","Phone"]');
    done(crew, 'set', { 'crew-name': 'Maple Street Fans', 'crew-phone': '(303) 555-0100' }, speaking);
    expect(page()).toContain('Your crew: Maple Street Fans. Phone: (303) 555-0100');
    expect(page()).not.toContain('blanks');
    // Headache, dizziness, weakness and an upset stomach are the commonest signs of carbon monoxide (CDC, from memory).
    expect(page()).toMatch(/Everyone outside now, if".*dizzy, sick, weak or has a headache, alarm or no alarm/);
    const spanish = page({ language: 'spanish' });
    expect(spanish).toContain('Su cuadrilla: Maple Street Fans. Teléfono: (303) 555-0100');
    expect(spanish).toMatch(/Todos afuera ya, si".*mareo, náusea, debilidad o dolor de cabeza/);
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
    expect(textOf(occupant)).toMatch(/Everyone outside now, if.*Call the fire service from outside\./);
  });
});

describe('the papers of a whole swap', () => {
  it('put first what somebody looks for, then every step by stage with who signed and when', () => {
    const { papers } = walkedHouse();
    const record = textOf(papers()[1]?.paper);
    expect(record).not.toContain('Not closed');
    expect(record).toContain('{"number":"85 of 85","says":"steps closed or passed over"}');
    expect(record).toMatch(/\["Survey checked \(S12\), hold","SIGNED","Cleo","Mar 1, 2027, 06:\d\d"\]/);
    expect(record).toMatch(/"Photos: \d+"/);
    expect(record).toMatch(/\["Room length","9 ft","measured","Ana","Mar 1, 2027, 05:00"\]/);
    const occupant = textOf(papers()[0]?.paper);
    expect(occupant).toContain('Finished March 1, 2027.');
    expect(occupant).toContain('The air leaves at: Wall cap.');
    expect(occupant).not.toContain('not finished');
  });

  it('name a lead’s reason for passing a step over, what is out of range, and a photo by its checksum', () => {
    const { say, papers, store } = walkedHouse({ until: 'straight-start' });
    say('done', { step: 'D07', value: '0.2', as: 'apprentice' });
    expect(textOf(papers()[1]?.paper)).toContain('"Out of range"');
    say('override', { step: 'D07', reason: 'The joist leaves no room.', as: 'lead' });
    store.addWalkEvent(1, {
      id: 'photo-1',
      list: 'swap',
      step: 'clean-up',
      what: 'photo',
      value: { reference: 'thread-1/900', checksum: 'f00dfeed'.repeat(8) },
      who: 'apprentice',
    });
    const record = textOf(papers()[1]?.paper);
    expect(record).toContain('Passed over by a lead, with the reason');
    expect(record).toMatch(/Straight start \(D07\): The joist leaves no room\. \(Ana, Mar 1, 2027/);
    expect(record).toMatch(/\["Clean up \(C01\)","thread-1\/900","f00dfeedf00d","Ben"/);
    expect(record).toContain('"title":"Not closed"');
    expect(textOf(papers()[0]?.paper)).toContain('The work is not finished');
  });

  it('keep to one page for the occupant with every warning there can be', async () => {
    const { papers } = walkedHouse({ until: 'sound' });
    const occupant = papers()[0]?.paper;
    if (!occupant) throw new Error('there is no page for the occupant');
    const line = 'It may pull exhaust gas from a fuel-burning appliance back into the home.';
    const warned: Paper = {
      ...occupant,
      blocks: [
        ...[1, 2].map((each) => ({ kind: 'warning', title: `Warning ${each}`, lines: [line, line] }) as const),
        ...occupant.blocks,
      ],
    };
    const pages = async (paper: Paper) =>
      Buffer.from(await paperPdf(paper))
        .toString('latin1')
        .match(/\/Type \/Page\b/g)?.length;
    expect(await pages(warned)).toBe(1);
    // Of the same words in the usual type, more than a page: it is the type that gives way.
    const { onePage: _, ...usual } = warned;
    expect(await pages({ ...usual, blocks: [...usual.blocks, ...usual.blocks] })).toBeGreaterThan(1);
  });

  it('tell the occupant to keep hands off after a failed dead test, and never to find a source', () => {
    const { store } = walkedHouse({ until: 'test-dead-controls-on@fan' });
    store.addWalkEvent(1, {
      id: 'live',
      list: 'swap',
      step: 'test-dead-controls-on@fan',
      what: 'done',
      value: { controls: 'on', 'hot-neutral': 120, 'hot-ground': 120, 'neutral-ground': 0, 'other-legs': 0 },
      who: 'qualified',
    });
    const page = (language: string) => textOf(papersOf(done(handoff, '', { language }, { store, commands })).occupant);
    expect(page('english')).toContain('Do not touch the fan, the switches or the wires. They may be live. Call us.');
    expect(page('spanish')).toContain(
      'No toque el extractor, los apagadores ni los cables. Puede haber corriente. Llámenos.',
    );
    expect(page('english')).not.toContain('Find the other source');
    expect(page('spanish')).not.toContain('Encuentre la otra fuente');
  });

  it('call a target that was only agreed no need of the room', () => {
    const { papers } = walkedHouse();
    const page = textOf(papers()[0]?.paper);
    expect(page).toContain('is what was asked for; whether the room needs more was not worked out');
    expect(page).not.toContain('is what the room needs');
  });

  it('tell the occupant where the fan moves less than the room needs', () => {
    const { store, papers } = walkedHouse();
    expect(textOf(papers()[0]?.paper)).not.toContain('less air than this room needs');
    store.openSheet({ channel: 'thread-1', who: 'office', name: 'Elm' });
    const before = papers()[0]?.paper;
    expect(textOf(before)).not.toContain('less air than this room needs');
    store.addFacts(2, [answer('airflow-needed', '50 cfm'), answer('measured-airflow', '31 cfm', { how: 'measured' })]);
    expect(textOf(papers()[0]?.paper)).toContain('It moves less air than this room needs');
    expect(textOf(papers()[0]?.paper)).toContain('31 cfm');
  });
});
