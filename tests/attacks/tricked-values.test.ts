import { describe, expect, it } from 'vitest';
import { readFilled } from '#commands/workings/swap-values.ts';
import { checklists } from '#knowledge/checklists.ts';
import { judged } from '#walkthrough/evidence.ts';
import type { ListedPart, ListedStep } from '#walkthrough/listed-step.ts';
import { walkList } from '#walkthrough/walk-list.ts';
import { walkWords } from '#words/walkthrough.ts';

/** Texts that are no number, or not the number they begin with. Invented for this purpose. */
const tricks = [
  ...[
    'O',
    'O V',
    'NaN',
    'Infinity',
    '-Infinity',
    '1e3',
    '1e-9',
    '1e400',
    '0x10',
    '.',
    '..5',
    '1.5.9',
    '1/0',
    '0/0',
    '1/4/5',
  ],
  ...[
    '3 of 4',
    '3 hundred',
    '5 maybe',
    '4 missing',
    '4 screws short',
    '0 or 120',
    '0 to 120',
    '0-120',
    '0 not tested',
    '0?',
    '<1',
  ],
  ...['less than 1', 'dead', 'no voltage', 'yes', '120 kV', '0 ohm', '10 V/m', '5 psi', '100000000'],
];

const list = walkList({
  checklist: checklists.swap,
  facts: {},
  boxes: [{ id: 'fan', kind: 'fan', name: 'fan' }],
  crew: [{ who: 'ana', name: 'Ana' }],
});

const numbers = list.steps.flatMap((step) =>
  step.parts.flatMap((part) => (part.kind === 'number' && !part.worked ? [{ step, part }] : [])),
);

const read = (step: ListedStep, part: ListedPart, text: string, units: 'inch-pound' | 'metric' = 'inch-pound') => {
  const reading = readFilled(step, { [part.id]: text }, units);
  return 'rejected' in reading ? undefined : reading.value[part.id];
};
const named = (step: string, part: string) => {
  const found = numbers.find((each) => each.step.id === step && each.part.id === part);
  if (!found) throw new Error(`there is no ${part} at ${step}`);
  return found;
};

describe('a value that is not what it looks like', () => {
  it.each(numbers.map(({ step, part }) => [step.id, part.id, { step, part }] as const))(
    'closes nothing at %s, %s',
    (_, __, { step, part }) => {
      const taken = tricks.filter((text) => {
        const value = read(step, part, text);
        return (
          value !== undefined &&
          judged([part], { [part.id]: value }, { told: walkWords.english, photos: 0, recorded: () => 0 }).outside
            .length === 0
        );
      });
      expect(taken).toEqual([]);
    },
  );

  it('is never below nothing where nothing is the least', () => {
    for (const { step, part } of numbers.filter(({ part: { least } }) => least !== undefined && least.si >= 0)) {
      for (const text of ['-1', '- 1', '−1', '-1/4']) {
        const value = read(step, part, text);
        const outside =
          value === undefined ||
          judged([part], { [part.id]: value }, { told: walkWords.english, photos: 0, recorded: () => 0 }).outside
            .length > 0;
        expect(outside, `${step.id} ${part.id} ${text}`).toBe(true);
      }
    }
  });
});

describe('a fall of the duct', () => {
  const { step, part } = named('slope', 'fall');
  it('is read in the unit it is written in', () => {
    // 1 in for each foot is one in twelve: by arithmetic.
    for (const text of ['1/4', '1/4 in', '1/4"/ft', '0,25', '¼ in per foot', '0.25 in for each foot', '１/４']) {
      expect(read(step, part, text), text).toBeCloseTo(1 / 48, 9);
    }
    expect(read(step, part, '0.5 %')).toBeCloseTo(0.005, 9);
    expect(read(step, part, '5 mm/m')).toBeCloseTo(0.005, 9);
    expect(read(step, part, '1 cm per m')).toBeCloseTo(0.01, 9);
  });
  it('needs its unit from a crew that works in millimetres', () => {
    expect(read(step, part, '10', 'metric')).toBeUndefined();
    expect(read(step, part, '20 mm/m', 'metric')).toBeCloseTo(0.02, 9);
  });
});

it('a count is whole words of a number and nothing else', () => {
  const { step, part } = named('housing-fixed', 'screws');
  expect(['4', 'four', ' 4 ', '４'].map((text) => read(step, part, text))).toEqual([4, 4, 4, 4]);
});
