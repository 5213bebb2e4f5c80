import { describe, expect, it } from 'vitest';
import { checklists } from '#knowledge/checklists.ts';
import type { Box } from '#walkthrough/walk-event.ts';
import { factsFromSheet, type WalkFacts } from '#walkthrough/walk-facts.ts';
import { kitFor, walkList } from '#walkthrough/walk-list.ts';
import { crew, person } from './crew.ts';
import { plainHouse } from './day.ts';

const people = [person('qualified'), person('apprentice')];
const idsFor = (facts: WalkFacts, boxes: readonly Box<'fan' | 'switch-box' | 'junction-box'>[] = []): string[] =>
  walkList({ checklist: checklists.swap, facts, boxes, crew: people }).steps.map(({ id }) => id);

describe('the list a job needs', () => {
  it('is short for a plain house and long where nobody knows', () => {
    expect(idsFor(plainHouse).length).toBeLessThan(idsFor({}).length - 25);
  });

  it('asks a spillage test of every appliance that can spill, and where nobody knows', () => {
    for (const appliance of ['natural-draft', 'unvented', 'solid-fuel', 'induced-draft', 'power-vented', 'unknown']) {
      expect(idsFor({ ...plainHouse, 'fuel-appliances': appliance }), appliance).toContain('spillage-test');
    }
    expect(idsFor({ ...plainHouse, 'fuel-appliances': undefined })).toContain('spillage-test');
    expect(idsFor({ ...plainHouse, 'fuel-appliances': ['sealed', 'natural-draft'] })).toContain('spillage-test');
    expect(idsFor({ ...plainHouse, 'fuel-appliances': ['unknown'] })).toContain('spillage-test');
    expect(idsFor({ ...plainHouse, 'fuel-appliances': [] })).not.toContain('spillage-test');
    expect(idsFor({ ...plainHouse, 'fuel-appliances': 'misspelt' })).toContain('spillage-test');
  });

  it('hands aluminium, knob-and-tube and wiring nobody could name to a licensed electrician', () => {
    for (const wiring of ['aluminium', 'knob-and-tube', 'unknown', undefined]) {
      expect(idsFor({ ...plainHouse, 'wiring-kind': wiring }), wiring).toContain('electrician-takes-wiring');
    }
    expect(idsFor(plainHouse)).not.toContain('electrician-takes-wiring');
  });

  it('asks the GFCI test only over water, and there unless the label does without', () => {
    const over = { ...plainHouse, 'fan-place': 'over-tub-or-shower' };
    expect(idsFor({ ...over, 'tub-shower-marking': 'allowed' })).not.toContain('gfci-test');
    expect(idsFor({ ...over, 'tub-shower-marking': 'allowed-with-gfci' })).toContain('gfci-test');
    expect(idsFor(over)).toContain('gfci-test');
    expect(idsFor({ ...plainHouse, 'tub-shower-marking': 'allowed-with-gfci' })).not.toContain('gfci-test');
  });

  it('takes the strict lead step wherever an old ceiling is cut, whatever the area', () => {
    const old = { ...plainHouse, 'house-built': 'before-1978' };
    expect(idsFor({ ...old, 'ceiling-opening': 'enlarged' })).toContain('lead-paint-cut');
    expect(idsFor({ ...old, 'ceiling-opening': undefined })).toContain('lead-paint-cut');
    expect(idsFor({ ...old, 'ceiling-opening': undefined })).not.toContain('lead-paint-area');
    expect(idsFor(old)).toContain('lead-paint-area');
    expect(idsFor({ ...plainHouse, 'house-built': undefined })).toContain('lead-pamphlet');
    expect(idsFor({ ...plainHouse, 'house-built': '1978-to-1980' })).toContain('asbestos');
  });

  it('sends a soffit fitting to the lead, and every other doubtful ending outdoors', () => {
    expect(idsFor({ ...plainHouse, 'duct-ending': 'soffit-fitting' })).toContain('soffit-ending');
    for (const ending of ['attic', 'inside-soffit', 'not-found', undefined]) {
      expect(idsFor({ ...plainHouse, 'duct-ending': ending }), ending).toContain('end-outdoors');
    }
  });

  it('proves every opened box dead by itself, and asks a lock of every person', () => {
    const boxes = [
      { id: 'fan', kind: 'fan', name: 'fan' },
      { id: 'door', kind: 'switch-box', name: 'switch by the door' },
      { id: 'attic', kind: 'junction-box', name: 'box in the attic' },
    ] as const;
    const ids = idsFor(plainHouse, boxes);
    for (const { id } of boxes) {
      for (const link of [
        'prove-tester-before',
        'test-dead-controls-on',
        'test-dead-controls-off',
        'prove-tester-after',
        'sign-dead',
      ]) {
        expect(ids).toContain(`${link}@${id}`);
      }
    }
    expect(ids.filter((id) => id.startsWith('lock-on@'))).toEqual(['lock-on@qualified', 'lock-on@apprentice']);
    expect(ids.filter((id) => id.startsWith('lock-off@'))).toHaveLength(2);
  });

  it('puts in a box that the steps open and nobody named', () => {
    expect(idsFor({ ...plainHouse, 'control-wanted': 'countdown-timer' })).toContain('sign-dead@switch-box');
    expect(idsFor(plainHouse)).not.toContain('sign-dead@switch-box');
    expect(idsFor({ ...plainHouse, 'control-wanted': undefined })).toContain('sign-dead@switch-box');
    const odd = [{ id: 'switch-box', kind: 'junction-box', name: 'odd name' }] as const;
    const ids = idsFor({ ...plainHouse, 'control-wanted': 'plain-switch' }, odd);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toContain('sign-dead@switch-box-unnamed');
  });

  it('leaves the wiring to the licensed alone where the law does, or nobody knows', () => {
    const signersOf = (facts: WalkFacts) =>
      walkList({ checklist: checklists.swap, facts, boxes: [], crew: people }).byId.get('join-wires')?.signers;
    expect(signersOf(plainHouse)).toEqual(['electrically-qualified', 'licensed-electrician']);
    expect(signersOf({ ...plainHouse, 'who-wires': 'licensed-electrician' })).toEqual(['licensed-electrician']);
    expect(signersOf({ ...plainHouse, 'who-wires': undefined })).toEqual(['licensed-electrician']);
    expect(signersOf({ ...plainHouse, 'wiring-kind': 'aluminium' })).toEqual(['licensed-electrician']);
  });

  it('offers the exception for a higher hood only in the edition that has it', () => {
    const options = (edition: string | undefined) =>
      walkList({ checklist: checklists.swap, facts: { 'building-code-edition': edition }, boxes: [], crew: people })
        .byId.get('hood-openings')
        ?.parts.flatMap((part) => (part.kind === 'choice' ? part.options.map(({ id }) => id) : []));
    expect(options('irc-2024')).toContain('above');
    expect(options('irc-2015')).not.toContain('above');
    expect(options(undefined)).not.toContain('above');
  });

  it('halves the painted area and more in assisted housing, or where nobody knows', () => {
    const most = (assisted: string | undefined) => {
      const facts = { ...plainHouse, 'house-built': 'before-1978', 'assisted-housing': assisted };
      const list = walkList({ checklist: checklists.swap, facts, boxes: [], crew: people });
      const part = list.byId.get('lead-paint-area')?.parts[0];
      return part?.kind === 'number' ? part.most?.shown : undefined;
    };
    expect([most('no'), most('yes'), most(undefined)]).toEqual(['6 sq ft', '2 sq ft', '2 sq ft']);
  });

  it('names the tools and the gear its steps ask for', () => {
    const { tools, gear } = kitFor(
      walkList({ checklist: checklists.swap, facts: plainHouse, boxes: [], crew: people }),
    );
    expect(tools).toContain('proving-unit');
    expect(gear).toContain('insulated-gloves');
    expect(tools).not.toContain('cord');
  });
});

describe('what the sheet knows', () => {
  const day = '2027-03-01';
  const said = (value: string | readonly string[], standing: (typeof crew)[keyof typeof crew]) =>
    factsFromSheet([{ fact: 'fuel-appliances', value, standing }], checklists.swap, day)['fuel-appliances'];

  it('clears a hazard only by a lead', () => {
    expect(said('none', crew.lead)).toBe('none');
    expect(said([], crew.lead)).toEqual([]);
    expect(said('none', crew.apprentice)).toBe('unknown');
    expect(said([], crew.office)).toBe('unknown');
    expect(said('sealed', crew.carded)).toBe('unknown');
  });

  it('believes a danger from anybody', () => {
    expect(said('natural-draft', crew.office)).toBe('natural-draft');
    expect(said(['sealed', 'unvented'], crew.apprentice)).toEqual(['sealed', 'unvented']);
  });

  it('leaves alone what no list reads', () => {
    expect(factsFromSheet([{ fact: 'room-length', value: '3', standing: crew.lead }], checklists.swap, day)).toEqual(
      {},
    );
  });
});
