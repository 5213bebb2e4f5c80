import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import boxfill from '#commands/boxfill.ts';
import { gauges } from '#engine/electrical/gauge.ts';
import { standardBoxes } from '#knowledge/box-rules.ts';
import { findingOf, once, talked } from './talked.ts';

interface Wires {
  readonly count: number;
  readonly awg: number;
  readonly kind: 'spliced-or-terminated' | 'through' | 'loop' | 'pigtail' | 'fixture-wire';
}
interface Row {
  readonly id: string;
  readonly title: string;
  readonly conductors: readonly Wires[];
  readonly grounds: { readonly count: number; readonly largestAwg: number };
  readonly devices: readonly { readonly count: number; readonly largestAwg: number; readonly gangs: number }[];
  readonly internalClamps: boolean;
  readonly supportFittings: readonly string[];
  readonly terminalBlocks: readonly { readonly count: number; readonly largestAwg: number }[];
  readonly expected: Readonly<
    Record<string, { readonly needed: number; readonly available?: number; readonly fits?: boolean }>
  >;
  readonly smallest?: { readonly kind: string; readonly size: string };
  readonly further14?: number;
  readonly source: string;
}
const figures: { readonly rows: readonly Row[]; readonly canadian: readonly Canadian[] } = JSON.parse(
  readFileSync(join(import.meta.dirname, '../worked-examples/figures/box-fill.json'), 'utf8'),
);
interface Canadian {
  readonly id: string;
  readonly title: string;
  readonly conductors: readonly Wires[];
  readonly connectors: { readonly count: number; readonly largestAwg: number };
  readonly needed: { readonly value: number };
  readonly source: string;
}

const list = (items: readonly string[]): string => (items.length === 0 ? 'none' : items.join(', '));
const wires = (row: { readonly conductors: readonly Wires[] }, kind: Wires['kind']): string =>
  list(row.conductors.filter((each) => each.kind === kind).map(({ count, awg }) => `${count}x${awg}`));

/** A published example in the words of the command. */
const wordsOf = (row: Row, edition: string, room: number): string[] => [
  `box=${room} in3`,
  `conductors=${wires(row, 'spliced-or-terminated')}`,
  `fixture-wires=${wires(row, 'fixture-wire')}`,
  `pass-through=${wires(row, 'through')}`,
  `loops=${wires(row, 'loop')}`,
  `pigtails=${wires(row, 'pigtail')}`,
  `grounds=${row.grounds.count}x${row.grounds.largestAwg}`,
  `devices=${list(row.devices.map(({ count, largestAwg, gangs }) => `${count}x${largestAwg}${gangs > 1 ? ' wide' : ''}`))}`,
  `clamps=${row.internalClamps ? 'internal' : 'none'}`,
  `support-fittings=${list(row.supportFittings)}`,
  `terminal-blocks=${list(row.terminalBlocks.map(({ count, largestAwg }) => `${count}x${largestAwg}`))}`,
  `code-edition=${edition}`,
];

describe('published box examples, in the words of the command', () => {
  for (const row of figures.rows) {
    for (const [edition, { needed, available, fits }] of Object.entries(row.expected)) {
      it(`${row.id}, NEC ${edition}: ${row.title} (${row.source})`, () => {
        const room = available ?? needed;
        const answer = once(boxfill, ...wordsOf(row, edition, room));
        expect(findingOf(answer, 'fill-needed').value).toMatchObject({ number: needed, unit: 'in3' });
        expect(findingOf(answer, 'box-volume').value?.number).toBe(room);
        expect(findingOf(answer, 'volume-left').value?.number).toBeCloseTo(room - needed, 9);
        expect(answer.status).toBe((fits ?? true) ? 'answered' : 'stopped');
      });
    }
  }

  it('names the smallest standard box of the shape that is there (EC&M quiz)', () => {
    for (const row of figures.rows.filter(({ smallest }) => smallest !== undefined)) {
      const { kind, size } = row.smallest as NonNullable<Row['smallest']>;
      const words = [`box=4 x 1-1/4 ${kind}`, ...wordsOf(row, '2017', 1).slice(1)];
      const { value, table } = findingOf(once(boxfill, ...words), 'box-that-fits');
      const box = standardBoxes.find((each) => each.kind === kind && each.size === size);
      expect(value?.number, row.id).toBe(box?.volume);
      expect(value?.shown).toContain(size);
      expect(table?.rows.flat()).toContain(size);
    }
  });

  it('says how many more wires go in (exam guide: ten more of 14 AWG)', () => {
    const row = figures.rows.find(({ further14 }) => further14 !== undefined) as Row;
    const { working, says } = findingOf(once(boxfill, ...wordsOf(row, '2023', 42)), 'volume-left');
    expect(working.find(({ what }) => what === 'Room for more of 14 AWG')?.value).toBe(String(row.further14));
    expect(says).toContain(`${row.further14} more of 14 AWG`);
  });

  for (const { id, title, conductors, connectors, needed, source } of figures.canadian) {
    it(`${id}, Canada: ${title} (${source})`, () => {
      const { value, working } = findingOf(
        once(
          boxfill,
          'box=30 in3',
          `conductors=${wires({ conductors }, 'spliced-or-terminated')}`,
          `pass-through=${wires({ conductors }, 'through')}`,
          `wire-connectors=${connectors.count}x${connectors.largestAwg}`,
          'code-edition=canada',
        ),
        'fill-needed',
      );
      // 1 cu in is 16.387064 cm³ exactly (NIST SP 811): 451 mL printed.
      expect(value?.number).toBeCloseTo(needed.value / 16.387064, 9);
      expect(working.find(({ what }) => what === 'Needed')?.value).toBe(`${needed.value} mL`);
    });
  }

  it('charges a deep Canadian timer by its depth: 1-3/4 in is 4.445 cm at 32 mL a centimetre (CEC 12-3034(3))', () => {
    const words = ['box=30 in3', 'conductors=4x14', 'devices=1x14', 'wire-connectors=none', 'code-edition=canada'];
    const deep = findingOf(once(boxfill, ...words, 'device-depth=1-3/4 in'), 'fill-needed');
    expect(deep.value?.number).toBeCloseTo((4 * 24.6 + 32 * 4.445) / 16.387064, 9);
    const answer = once(boxfill, ...words);
    expect(findingOf(answer, 'device-depth').weight).toBe('caution');
  });
});

describe('what the verdict rests on', () => {
  const plain = [
    'box=18 in3',
    'serves=switch',
    'conductors=4x14',
    'grounds=2x14',
    'devices=1x14',
    'clamps=none',
    'code-edition=2023',
  ];
  const changed = (...changes: readonly string[]) => {
    const names = changes.map((word) => word.split('=')[0]);
    return once(boxfill, ...plain.filter((word) => !names.includes(word.split('=')[0])), ...changes);
  };

  it('stops an overfull box with what to do, first', () => {
    // 3 x 2 x 2-1/2 in holds 12.5 cu in (NEC table 314.16(A)); two 14-2 and a device need 14 (forum thread 377340).
    const answer = changed('box=3 x 2 x 2-1/2 device');
    expect(answer.status).toBe('stopped');
    const left = findingOf(answer, 'volume-left');
    expect(left).toMatchObject({ weight: 'stop', value: { number: -1.5, unit: 'in3' } });
    expect(left.says).toMatch(/^Do not close this box/);
    expect(answer.reply?.findings[0]?.id).toBe('volume-left');
  });

  it('lets exactly full be full and no more (NEC 314.16)', () => {
    expect(findingOf(changed('box=14 in3'), 'volume-left')).toMatchObject({ weight: 'good', value: { number: 0 } });
    expect(changed('box=13.99 in3').status).toBe('stopped');
  });

  it('takes the edition that asks for the most room when nobody knows it, and says so', () => {
    // Eight grounds of 12 AWG: one allowance to 2017, two from 2020 (NEC 314.16(B)(5)).
    const words = ['box=42 in3', 'conductors=8x14, 8x12', 'grounds=8x12', 'clamps=none', 'devices=none'];
    const unknown = once(boxfill, ...words);
    expect(findingOf(unknown, 'fill-needed').value?.number).toBe(38.5);
    expect(findingOf(unknown, 'code-edition').says).toContain('strictest');
    expect(findingOf(once(boxfill, ...words, 'code-edition=2017'), 'fill-needed').value?.number).toBe(36.25);
    const both = once(boxfill, ...words, 'code-edition=2017', 'electrical-code-edition=2020');
    expect(findingOf(both, 'fill-needed').value?.number).toBe(38.5);
    expect(findingOf(both, 'code-edition').weight).toBe('caution');
  });

  it('takes either name of the edition', () => {
    const words = ['box=20 in3', 'conductors=4x12', 'terminal-blocks=1x12'];
    const by = (word: string) => findingOf(once(boxfill, ...words, word), 'fill-needed').value?.number;
    // Terminal blocks count from 2023 (NEC 314.16(B)(6)).
    expect([by('code-edition=2020'), by('electrical-code-edition=NEC 2020')]).toEqual([9, 9]);
    expect([by('code-edition=2023'), by('electrical-code-edition=2023')]).toEqual([11.25, 11.25]);
  });

  it('counts the leads of a fan, and leaves thin leads out under a light’s canopy only (NEC 314.16(B)(1))', () => {
    const needed = (...words: string[]) => findingOf(changed(...words), 'fill-needed').value?.number;
    const without = needed() ?? 0;
    expect(needed('fixture-wires=2x18')).toBe(without + 3);
    expect(needed('fixture-wires=2x18', 'canopy=yes', 'serves=light')).toBe(without);
    expect(needed('fixture-wires=2x14', 'canopy=yes')).toBe(without + 4);
    const fan = changed('fixture-wires=2x18', 'canopy=yes', 'serves=fan');
    expect(findingOf(fan, 'fill-needed').value?.number).toBe(without + 3);
    expect(findingOf(fan, 'canopy-refused').weight).toBe('caution');
  });

  it('takes cables apart and says how', () => {
    const cables = changed('conductors=2 x 14/2 with ground', 'grounds=2x14');
    expect(findingOf(cables, 'fill-needed').value?.number).toBe(findingOf(changed(), 'fill-needed').value?.number);
    expect(findingOf(cables, 'fill-needed').working[0]).toEqual({
      what: '2 x 14/2 with ground',
      how: '2 × 2 insulated, and 2 bare',
      value: '4 wires and 2 ground wires',
    });
    const differ = changed('conductors=5 x 14/2 with ground', 'grounds=1x14');
    expect(findingOf(differ, 'grounds-differ').says).toContain('the cables bring 5');
    expect(findingOf(differ, 'fill-needed').value?.number).toBe(20 + 2.5 + 4);
  });

  it('never passes what is not known', () => {
    expect(findingOf(changed('box=?'), 'volume-left')).toMatchObject({ weight: 'stop', value: { number: null } });
    expect(findingOf(changed("conductors=don't know"), 'volume-left').weight).toBe('stop');
    const untold = once(boxfill, 'box=15 in3', 'conductors=4x14', 'grounds=2x14', 'code-edition=2023');
    expect(findingOf(untold, 'volume-left')).toMatchObject({ weight: 'caution', value: { number: 5, low: -4 } });
    expect(findingOf(untold, 'volume-left').says).toContain('clamps inside (2 cu in)');
    expect(untold.reply?.assumed?.join(' ')).toContain('Cable clamps');
  });

  it('takes a plastic barrier from a two-gang box: 34 less 1 (2018 IRC E3905.12.1)', () => {
    const answer = changed('box=34 cu in with a plastic barrier, 2-gang');
    expect(findingOf(answer, 'box-volume').value?.number).toBe(33);
    expect(findingOf(changed('box=34 cu in, 2-gang', 'devices=1x14 wide, 1x14'), 'gangs').says).toContain('3 gangs');
  });

  it('needs the box and the wires, and nothing else', () => {
    const empty = once(boxfill);
    expect(empty.status).toBe('needs-answers');
    expect(empty.missing.map(({ id }) => id)).toEqual(['box', 'conductors']);
    expect(once(boxfill, 'box=18 in3', 'conductors=4x14').status).toBe('answered');
  });

  it('says in every reply that room is not all, and who decides', () => {
    for (const answer of [changed(), changed('box=5.5 in3'), changed('box=?')]) {
      expect(findingOf(answer, 'fill-alone').says).toMatch(/Prove the box dead.*inspector.*electrician/);
    }
  });

  it('works when its example is pasted', () => {
    const words = [...boxfill.example.matchAll(/[\w-]+=(?:"[^"]*"|\S+)/g)].map(([word]) => word.replaceAll('"', ''));
    expect(once(boxfill, ...words).reply?.headline).toContain('21 cu in');
  });
});

describe('laws of the count', () => {
  it('adding a wire, a device or a clamp never frees space', () => {
    const gauge = fc.constantFrom(...gauges);
    const some = fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), gauge), { minLength: 1, maxLength: 3 });
    const text = (items: readonly (readonly [number, number])[]) => items.map(([n, awg]) => `${n}x${awg}`).join(', ');
    const names = ['conductors', 'pass-through', 'loops', 'pigtails', 'grounds', 'fixture-wires', 'terminal-blocks'];
    const editions = ['2014', '2017', '2020', '2023', '2026', 'canada', '?'];
    fc.assert(
      fc.property(
        some,
        fc.constantFrom(...names),
        gauge,
        fc.constantFrom(...editions),
        (contents, name, awg, edition) => {
          const words = names
            .filter((each) => each !== 'pigtails' || name === 'pigtails')
            .map((each) => [each, text(contents)] as const);
          const left = (pairs: readonly (readonly [string, string])[], ...more: string[]) =>
            findingOf(
              once(boxfill, 'box=200 in3', `code-edition=${edition}`, ...pairs.map((pair) => pair.join('=')), ...more),
              'volume-left',
            ).value?.number ?? Number.NaN;
          const before = left(words);
          const after = left(words.map(([each, had]) => [each, each === name ? `${had}, 1x${awg}` : had]));
          expect(after).toBeLessThanOrEqual(before + 1e-9);
          expect(left(words, 'clamps=internal')).toBeLessThanOrEqual(before + 1e-9);
          expect(left(words, 'devices=1x14')).toBeLessThanOrEqual(before + 1e-9);
        },
      ),
      { seed: 1, numRuns: 60 },
    );
  });
});

describe('a talk about a box', () => {
  it('goes from the box to the verdict', async () => {
    expect(
      await talked(
        boxfill,
        'boxfill',
        '4 x 1-1/2',
        '4 x 1-1/2 square',
        'why',
        '2 x 12/2 with ground, 2x14',
        'switch',
        '1x12',
        "don't know",
        'back',
        'internal',
        'none',
        '2021',
        '2023',
      ),
    ).toMatchInlineSnapshot(`
      "
      you: boxfill
      bot: Which box is it? The cubic inches marked inside it, or its size and shape.
      you: 4 x 1-1/2
      bot: There is more than one of that size: say which, 4 x 1-1/2 in octagon (15.5 cu in) or 4 x 1-1/2 in
           square (21 cu in).
           Which box is it? The cubic inches marked inside it, or its size and shape.
      you: 4 x 1-1/2 square
      bot: Box (its cubic inches, or its size and shape): 4 x 1-1/2 in square.
           Which insulated wires come in and end in this box? Count only in a box proven dead.
      you: why
      bot: Each hot, neutral or switch wire that comes in counts one, by its size. Grounds and wires that run
           through are asked apart.
           Which insulated wires come in and end in this box? Count only in a box proven dead.
      you: 2 x 12/2 with ground, 2x14
      bot: Insulated wires ending in the box (count x size): 2x14, 2 x 12/2 with ground.
           What is the box for?
             1  The fan (its own leads come into this box)
             2  A switch, timer or sensor
             3  A light on the box
             4  Splices only, or other
      you: switch
      bot: What the box serves: A switch, timer or sensor.
           Which switches, timers or receptacles sit in the box? Count them by the thickest wire on each.
      you: 1x12
      bot: Switches, timers, receptacles (count x thickest wire): 1x12.
           Do clamps inside the box hold the cables?
             1  Yes, inside
             2  None inside (or connectors that clamp outside)
      you: don't know
      bot: Cable clamps inside the box: taken as None inside. Counted without clamps; look, since clamps inside
           take the room of one more wire.
           Is anything else in the box?
             1  Wires running through
             2  Long loops of wire (12 in or more, unbroken)
             3  Stud or hickey
             4  Terminal block
             5  Pigtails
      you: back
      bot: Took back: Cable clamps inside the box.
           Do clamps inside the box hold the cables?
             1  Yes, inside
             2  None inside (or connectors that clamp outside)
      you: internal
      bot: Cable clamps inside the box: Yes, inside.
           Is anything else in the box?
             1  Wires running through
             2  Long loops of wire (12 in or more, unbroken)
             3  Stud or hickey
             4  Terminal block
             5  Pigtails
      you: none
      bot: What else is in the box: none.
           Which edition of the electrical code does the town go by?
             1  NEC 2014
             2  NEC 2017
             3  NEC 2020
             4  NEC 2023
             5  NEC 2026
             6  Canada (Canadian Electrical Code)
      you: 2021
      bot: “2021” is the building code’s, which says nothing of box fill. The electrical code has its own
           editions: NEC 2014, 2017, 2020, 2023, 2026, or Canada.
           Which edition of the electrical code does the town go by?
             1  NEC 2014
             2  NEC 2017
             3  NEC 2020
             4  NEC 2023
             5  NEC 2026
             6  Canada (Canadian Electrical Code)
      you: 2023
      bot: Electrical code edition: NEC 2023.

           This box needs 22 cu in (360.5 cm³) and has 21 cu in (344.1 cm³).

           STOP:    Do not close this box: it is overfull by 1 cu in (16.4 cm³). Take a larger box or an
                    extension ring, or take wires out.
           Caution: The contents need 22 cu in (360.5 cm³) by NEC 2023.
           Advice:  The box has 21 cu in (344.1 cm³): 4 x 1-1/2 in square.
           Advice:  Take the 4-11/16 x 1-1/4 in square, 25.5 cu in, or larger: any box marked 22 cu in or more.
           Advice:  Room is one rule of many: it says nothing of what the wires are fit for. Prove the box dead
                    before a hand goes in; local code, the inspector and a licensed electrician decide.
      "
    `);
  });
});
