import { describe, expect, it } from 'vitest';
import boxfill from '#commands/boxfill.ts';
import { fromSheet } from '#commands/workings/from-sheet.ts';
import { againstNeededFinding } from '#commands/workings/measure-comparison.ts';
import { boxRetold, enoughRetold } from '#commands/workings/swap-retold.ts';
import type { Finding } from '#findings/finding.ts';
import { airflow } from '#quantity/kinds.ts';

const told = { language: 'spanish', units: 'inch-pound' } as const;

/** What /boxfill makes of a box, and the same retold beside a step. */
function counted(answers: Readonly<Record<string, string>>) {
  const worked = fromSheet(boxfill.interview, (question) => {
    const text = answers[question.id];
    const reading = text === undefined ? undefined : question.read(text, 'inch-pound');
    return reading && 'value' in reading
      ? { value: reading.value, known: true }
      : { value: question.whenUnknown.value, known: false };
  });
  if ('lacks' in worked) throw new Error('the box was not told whole');
  const { findings } = boxfill.answer(worked.inputs, { units: 'inch-pound' });
  return { findings, spanish: boxRetold(findings, told) };
}

const saying = (findings: readonly Finding[], id: string) => findings.find((each) => each.id === id)?.says;

const whole = {
  grounds: '1x14',
  devices: 'none',
  clamps: 'none',
  'fixture-wires': '2x18',
  serves: 'fan',
  'box-extras': 'none',
};

describe('what another command found, retold in Spanish', () => {
  it('keeps every weight and every value', () => {
    const { findings, spanish } = counted({ box: '8 in3', conductors: '4x14', ...whole });
    expect(spanish.map(({ id, weight, value }) => ({ id, weight, value }))).toEqual(
      findings.map(({ id, weight, value }) => ({ id, weight, value })),
    );
  });

  it('says of an overfull box that it is not closed', () => {
    const { spanish } = counted({ box: '8 in3', conductors: '4x14', ...whole });
    expect(saying(spanish, 'volume-left')).toMatch(/^No cierre esta caja: está pasada por \d/);
  });

  it('says of wires nobody counted that none is added and the box stays open', () => {
    const { spanish } = counted({ box: '18 in3', ...whole });
    expect(saying(spanish, 'volume-left')).toMatch(
      /^No agregue ningún alambre ni cierre esta caja antes de que una persona/,
    );
    expect(saying(spanish, 'fill-needed')).toContain('en una caja comprobada sin tensión');
  });

  it('says of a box nobody measured how much it has to have', () => {
    const { spanish } = counted({ conductors: '4x14', ...whole });
    expect(saying(spanish, 'volume-left')).toMatch(
      /^No cierre esta caja antes de saber su volumen: tiene que tener por lo menos \d/,
    );
  });

  it('says what is only there if nobody looked', () => {
    const { spanish } = counted({ box: '18 in3', conductors: '4x14', serves: 'fan' });
    expect(saying(spanish, 'volume-left')).toMatch(/^Mire antes de cerrar: con lo dicho cabe/);
  });

  it('points at a caution it has no words for, rather than leave it out', () => {
    const strange: Finding = {
      id: 'never-heard-of',
      weight: 'caution',
      says: 'Something new.',
      working: [],
      sources: [],
    };
    expect(boxRetold([strange], told)).toMatchObject([
      { weight: 'caution', says: expect.stringContaining('/boxfill antes de cerrarla') },
    ]);
  });

  it('never calls too little enough', () => {
    const cfm = (number: number) => airflow.from(number, 'cfm');
    const moved = { low: cfm(40), typical: cfm(50), high: cfm(60) };
    const says = (needed: number) => {
      const finding = againstNeededFinding(
        { airflow: moved, readings: { method: 'hood', powered: true, airflows: [moved.typical] }, limits: [] },
        cfm(needed),
        'inch-pound',
      );
      return enoughRetold(finding, moved, { needed: cfm(needed), ...told });
    };
    expect(says(40)).toMatchObject({ weight: 'good', says: expect.stringMatching(/^Suficiente/) });
    expect(says(55)).toMatchObject({ weight: 'caution', says: expect.stringMatching(/^No está mostrado que baste/) });
    expect(says(70)).toMatchObject({ weight: 'caution', says: expect.stringMatching(/^Muy poco/) });
  });
});
