import { describe, expect, it } from 'vitest';
import type { Limit, Part, PartOf } from '#knowledge/checklist-evidence.ts';
import type { StepEntry } from '#knowledge/checklist-steps.ts';
import { checklistSteps } from '#knowledge/checklists.ts';
import {
  ductDiameterRules,
  ductDistances,
  ductInsulation,
  ductSlopes,
  terminationClearances,
} from '#knowledge/duct-rules.ts';
import { siteHazardFigures } from '#knowledge/site-hazards.ts';
import { toSi } from '#quantity/unit-factors.ts';

const stepOf = (id: string): StepEntry => {
  const step = checklistSteps[id];
  if (!step) throw new Error(`there is no step ${id}`);
  return step;
};
const numberOf = (id: string, part: string): PartOf<'number'> => {
  const found = stepOf(id).evidence.find((each) => each.id === part);
  if (found?.kind !== 'number') throw new Error(`${id} has no number ${part}`);
  return found;
};
const optionsOf = ({ evidence }: StepEntry) =>
  evidence.flatMap((part) => (part.kind === 'choice' ? part.options.map((option) => ({ part, option })) : []));

describe('figures on the lists', () => {
  const at = (limit: Limit | undefined, fact: string): number | undefined =>
    (limit?.values[fact] ?? limit?.otherwise)?.si;
  const figure = (id: keyof typeof siteHazardFigures) => siteHazardFigures[id]?.value;

  it('keep the three distances of a hood in every edition (IRC M1506.3 in 2015, M1504.3 from 2018)', () => {
    for (const [edition, rule] of Object.entries(terminationClearances)) {
      const fact = `irc-${edition}`;
      expect(at(numberOf('hood-property-line', 'distance').least, fact)).toBe(rule.propertyLine);
      expect(at(numberOf('hood-openings', 'distance').least, fact)).toBe(rule.openings);
      expect(at(numberOf('hood-intake', 'distance').least, fact)).toBe(rule.mechanicalIntake);
      expect(at(numberOf('hood-intake', 'higher').least, fact)).toBe(rule.intakeExceptionAbove);
      const offered = optionsOf(stepOf('hood-openings')).find(({ option }) => option.id === 'above')?.option
        .onlyWhen?.[0]?.is;
      expect(offered?.includes(fact)).toBe(rule.openingExceptionAbove !== undefined);
      if (rule.openingExceptionAbove)
        expect(at(numberOf('hood-openings', 'higher').least, fact)).toBe(rule.openingExceptionAbove);
    }
  });

  it('are never milder for an unknown edition than for the strictest', () => {
    for (const step of ['hood-property-line', 'hood-openings', 'hood-intake']) {
      const { least } = numberOf(step, 'distance');
      const known = Object.values(least?.values ?? {}).map(({ si }) => si);
      expect(at(least, 'unknown'), step).toBe(Math.max(...known));
    }
  });

  it('agree with the lead rule (40 CFR 745.83: 6 sq ft in a room) and assisted housing (2 sq ft, second-hand)', () => {
    const { most } = numberOf('lead-paint-area', 'area');
    expect(at(most, 'no')).toBeCloseTo(toSi(figure('lead-inside') ?? 0, 'ft^2', 'm^2'), 10);
    expect(at(most, 'yes')).toBeCloseTo(toSi(figure('lead-inside-assisted') ?? 0, 'ft^2', 'm^2'), 10);
    expect(at(most, 'unknown')).toBe(at(most, 'yes'));
  });

  it('agree with the duct rules: flex every 4 ft, sag 1/2 in for each foot, metal every 10 ft, one width straight, R-8', () => {
    expect(numberOf('flex-support', 'spacing').most?.otherwise.si).toBe(ductDistances['support-flex'].distance);
    expect(numberOf('flex-support', 'sag').most?.otherwise.si).toBeCloseTo(ductSlopes['sag-flex'].slope, 12);
    expect(numberOf('metal-support', 'spacing').most?.otherwise.si).toBe(ductDistances['support-rigid'].distance);
    expect(numberOf('slope', 'fall').least?.otherwise.si).toBeCloseTo(ductSlopes['pitch-least'].slope, 12);
    expect(numberOf('straight-start', 'widths').least?.otherwise.si).toBe(
      ductDiameterRules['straight-at-collar'].diameters,
    );
    expect(numberOf('wrap', 'resistance').advised?.least?.si).toBeCloseTo(ductInsulation.programme.resistance, 10);
    expect(numberOf('wrap', 'resistance').least?.otherwise.si).toBeCloseTo(
      ductInsulation['washington-2021'].resistance,
      10,
    );
  });

  it('take 6 in of free wire (NEC 300.14), mold to 10 sq ft (EPA), and noise over 45 dBA as advice', () => {
    expect(numberOf('free-wire', 'length').least?.otherwise).toEqual({ si: 0.1524, shown: '6 in' });
    expect(numberOf('mold', 'area').most?.otherwise.shown).toBe('10 sq ft');
    expect(numberOf('sound', 'level').advised?.most?.shown).toBe('45 dBA');
    expect(numberOf('sound', 'level').outsideStops).toBeUndefined();
  });

  it('ask tape and mastic for metal and flex by their 181B marks (IRC M1601.4.1), and no 181A', () => {
    const offered = optionsOf(stepOf('seal')).map(({ option }) => option.id);
    expect(offered).toEqual(['181b-fx', '181b-m', 'accepted', 'cloth-or-none']);
  });

  it('pass a door by the drop, with no gap to pass by', () => {
    const parts: readonly Part[] = stepOf('door-test').evidence;
    expect(parts.map((part) => (part.kind === 'pair' ? part.dropUnder : part.kind))).toEqual([10]);
  });
});
