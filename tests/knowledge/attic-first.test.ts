import { expect, it } from 'vitest';
import { checklists } from '#knowledge/checklists.ts';

it('nobody is sent up before the attic is checked: what is asked there is seen from the hatch', () => {
  const { steps } = checklists.swap;
  const before = steps
    .slice(
      0,
      steps.findIndex(({ id }) => id === 'attic-air'),
    )
    .filter(({ id, do: task, lookFor }) => /\b(?:attic|hatch)\b/i.test(`${task} ${lookFor}`) && id !== 'way-in');
  expect(before.map(({ id }) => id)).toEqual(
    expect.arrayContaining(['grille-and-joists', 'insulation-look', 'wiring-look']),
  );
  for (const { id, caution } of before) {
    expect(caution, id).toContain('From the hatch only. Stay out of the attic until it has been checked');
  }
});
