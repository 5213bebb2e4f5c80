import { describe, expect, it } from 'vitest';
import { readFilled } from '#commands/workings/swap-values.ts';
import { checklists } from '#knowledge/checklists.ts';
import type { ListedNumber, ListedStep } from '#walkthrough/listed-step.ts';
import { walkList } from '#walkthrough/walk-list.ts';
import { siteCrew } from '../honest-walk.ts';

const ends = ({ least, most, under }: ListedNumber) => [least, most, under].flatMap((end) => end ?? []);

const numbersOf = ({ parts }: ListedStep): readonly ListedNumber[] =>
  parts.filter((part): part is ListedNumber => part.kind === 'number');

describe('a range that a step asks for', () => {
  it.each(Object.values(checklists))(
    'can be typed at both ends on the list $id, in the words it is shown with',
    (checklist) => {
      const { all } = walkList({ checklist, facts: {}, boxes: [], crew: siteCrew });
      const unread = all.flatMap((listed) =>
        numbersOf(listed).flatMap((part) =>
          ends(part).flatMap(({ shown, si }) => {
            const reading = readFilled(listed, { [part.id]: shown }, 'inch-pound');
            const value = 'value' in reading ? Number(reading.value[part.id]) : Number.NaN;
            return Math.abs(value - si) <= 1e-9 * Math.abs(si) ? [] : [`${listed.title}, ${part.label}: ${shown}`];
          }),
        ),
      );
      expect(unread).toEqual([]);
    },
  );
});
