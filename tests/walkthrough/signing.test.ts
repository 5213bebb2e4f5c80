import { describe, expect, it } from 'vitest';
import { checklistWords, type Signer } from '#knowledge/checklist-facts.ts';
import { eitherOf, isLead, maySign } from '#walkthrough/signing.ts';
import { crew, type Role, roles } from './crew.ts';

const day = '2027-03-01';
const whoMay = (...signers: Signer[]): Role[] => roles.filter((role) => maySign(signers, crew[role], day));

describe('who may sign', () => {
  it('goes by the card, not by what somebody is called', () => {
    expect(whoMay('electrically-qualified', 'licensed-electrician')).toEqual(['qualified', 'electrician']);
    expect(whoMay('licensed-electrician')).toEqual(['electrician']);
    expect(whoMay('certified-renovator')).toEqual(['renovator']);
    expect(whoMay('combustion-tester')).toEqual(['tester']);
    expect(whoMay('lead')).toEqual(['lead', 'qualified']);
  });

  it('is never an apprentice, whatever cards and titles stand beside the name', () => {
    const everything: Signer[] = [
      'lead',
      'electrically-qualified',
      'licensed-electrician',
      'certified-renovator',
      'combustion-tester',
    ];
    expect(maySign(everything, crew.carded, day)).toBe(false);
    expect(maySign(everything, crew.apprentice, day)).toBe(false);
    expect(isLead(crew.carded)).toBe(false);
  });

  it('counts a card to its last day and not past it', () => {
    expect(maySign(['combustion-tester'], crew.tester, '2027-12-31')).toBe(true);
    expect(maySign(['combustion-tester'], crew.tester, '2028-01-01')).toBe(false);
  });

  it('does not count a card without number or last day, or one called lapsed', () => {
    const card = { kind: 'combustion-tester', number: '77', expires: '2027-12-31', lapsed: false };
    const holder = (change: Partial<typeof card>) => ({
      name: 'Kim',
      kinds: [],
      qualifications: [{ ...card, ...change }],
    });
    expect(maySign(['combustion-tester'], holder({}), day)).toBe(true);
    for (const change of [
      { number: ' ' },
      { expires: '' },
      { expires: 'unknown' },
      { expires: '2099' },
      { lapsed: true },
    ]) {
      expect(maySign(['combustion-tester'], holder(change), day), JSON.stringify(change)).toBe(false);
    }
  });

  it('is, for what anyone may do, anyone at work on jobs: not the office, not a stranger, not a card that does not count', () => {
    expect(whoMay('anyone')).toEqual([
      'lead',
      'apprentice',
      'qualified',
      'electrician',
      'renovator',
      'tester',
      'carded',
    ]);
  });

  it('is named in words', () => {
    expect(eitherOf(['lead', 'certified-renovator'], { words: checklistWords, language: 'english' })).toBe(
      'a lead or a certified renovator',
    );
  });
});
