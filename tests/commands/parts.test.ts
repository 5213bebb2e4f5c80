import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import parts from '#commands/parts.ts';
import { readSides, sidesText } from '#commands/questions/size-reading.ts';
import { csvText } from '#commands/workings/shelf-csv.ts';
import { findingOf, once, talked } from './talked.ts';

const inch = 0.0254;
const foot = 0.3048;
const smooth = 'duct-run=14 ft 4 in smooth; 2 x elbow 90; wall cap';
const list = (...words: readonly string[]) => findingOf(once(parts, ...words), 'take-off').table?.rows ?? [];
const row = (rows: readonly (readonly string[])[], item: string) => rows.find(([what]) => what?.startsWith(item));
const fileOf = (...words: readonly string[]) => once(parts, ...words).reply?.files?.[0];

describe('the list of a run', () => {
  it('holds duct, fittings, cap and joints by size (own working from the allowances of the knowledge)', () => {
    // Three 5 ft sticks make 14 ft; five pieces and six joints of 4 in; three screws in each (NREL 6.6002.4).
    const rows = list(smooth);
    expect(row(rows, 'Rigid duct')).toEqual(['Rigid duct', '4 in', '3 sticks', '5 ft each']);
    expect(row(rows, '90° elbow')?.slice(1, 3)).toEqual(['4 in', '2']);
    expect(row(rows, 'Wall cap')?.slice(1, 3)).toEqual(['4 in', '1']);
    expect(row(rows, 'Sheet-metal screws')?.[2]).toBe('18');
    // Every 10 ft of rigid duct, between its ends: one for 14 ft.
    expect(row(rows, 'Hangers')?.[2]).toBe('1');
  });

  it('bands flex duct, hangs it every 4 ft and cuts it 6 in long at each end (NREL 6.6002.4, BASC)', () => {
    const rows = list('duct-run=12 ft 4 in flex; wall cap');
    expect(row(rows, 'Flex duct')?.[2]).toBe('13 ft');
    expect(row(rows, 'Bands')?.[2]).toBe('4');
    expect(row(rows, 'Hangers')?.[2]).toBe('2');
    expect(row(rows, 'Sheet-metal screws')).toBeUndefined();
  });

  it('buys for the long end of a length that is only guessed', () => {
    expect(row(list('duct-run=12 to 16 ft 4 in flex; wall cap'), 'Flex duct')?.[2]).toBe('17 ft');
  });

  it('does not buy bends of the duct itself, nor a bare end', () => {
    const rows = list('duct-run=12 ft 4 in flex; 2 x flex bend; bare end');
    expect(rows.map(([what]) => what).join()).not.toMatch(/bend|end/i);
    expect(findingOf(once(parts, 'duct-run=12 ft 4 in flex'), 'no-end').weight).toBe('caution');
  });

  it('puts a reducer on the list for a wide collar, said or not', () => {
    const run = 'duct-run=10 ft 4 in smooth; wall cap';
    expect(row(list(run, 'collar=6 in'), 'Reducer')?.[1]).toBe('6 in to 4 in');
    expect(row(list('duct-run=reducer 6 to 4 in; 10 ft smooth; wall cap', 'collar=6 in'), 'Reducer')?.[2]).toBe('1');
    expect(row(list(run, 'collar=4 in'), 'Reducer')).toBeUndefined();
  });

  it('asks before a soffit fitting is ordered', () => {
    expect(findingOf(once(parts, 'duct-run=10 ft 4 in flex; soffit vent'), 'soffit-end').weight).toBe('caution');
  });

  it('needs the run and nothing else', () => {
    expect(once(parts).missing.map(({ id }) => id)).toEqual(['duct-run']);
    expect(once(parts, smooth).status).toBe('answered');
  });

  it('works when its example is pasted', () => {
    const words = [...parts.example.matchAll(/[\w-]+=(?:"[^"]*"|\S+)/g)].map(([word]) => word.replaceAll('"', ''));
    expect(once(parts, ...words).status).toBe('answered');
  });
});

describe('tape', () => {
  it('goes once around each joint and an inch over, with a tenth for waste', () => {
    // Six joints of 4 in: 6 × (π × 4 + 1) in = 81.4 in; × 1.1 = 89.5 in.
    const { value, working } = findingOf(once(parts, smooth), 'duct-tape');
    expect(value?.number).toBeCloseTo(6 * (Math.PI * 4 + 1) * inch * 1.1, 9);
    expect(working.map((step) => step.value)).toEqual(['81 3/8 in', '89 1/2 in, 7 ft 6 in', '1']);
    expect(row(list(smooth), 'Foil tape')?.[2]).toBe('8 ft');
  });

  it('is foil tape, never cloth', () => {
    expect(findingOf(once(parts, smooth), 'duct-tape').says).toContain('Cloth duct tape is not for ducts');
  });
});

describe('insulation', () => {
  it('is bought by what it is worth once it is on: R-8 takes 3 in, cut 17 in over the girth (Everett, wrap data)', () => {
    const { value, says } = findingOf(once(parts, smooth, 'insulation-wanted=R-8'), 'insulation');
    expect(value?.number).toBeCloseTo((Math.PI * 4 + 17) * inch * 14 * foot, 9);
    expect(says).toContain('3 in blanket');
    // 34.5 sq ft are bought as 35.
    expect(row(list(smooth, 'insulation-wanted=R-8'), 'Duct wrap')?.[2]).toBe('35 sq ft');
    expect(findingOf(once(parts, smooth, 'duct-insulation=R-5'), 'insulation').says).toContain('2 in blanket');
  });

  it('is R-8 where nobody said (NREL 6.6002.4), and says so', () => {
    const { weight, says } = findingOf(once(parts, smooth), 'insulation');
    expect(weight).toBe('advice');
    expect(says).toContain('taken as R-8');
  });

  it('lets nobody leave the duct bare without a word', () => {
    const bare = once(parts, smooth, 'insulation-wanted=none');
    expect(findingOf(bare, 'insulation')).toMatchObject({ weight: 'caution' });
    expect(row(findingOf(bare, 'take-off').table?.rows ?? [], 'Duct wrap')).toBeUndefined();
    // A duct that is bare now is wrapped to the standard all the same.
    expect(findingOf(once(parts, smooth, 'duct-insulation=none'), 'insulation').value?.number).toBeGreaterThan(1);
  });

  it('owns up when no listed wrap is enough', () => {
    expect(findingOf(once(parts, smooth, 'insulation-wanted=R-20'), 'insulation').says).toMatch(/^No wrap listed/);
  });
});

describe('opening and bay', () => {
  const housing = 'housing-size=10-1/4 x 10-1/2 x 7-5/8 in';
  const told = (id: string, ...words: readonly string[]) => findingOf(once(parts, smooth, ...words), id);

  it('cuts an eighth larger on each side (common practice), the leaflet first', () => {
    const { value, says } = told('opening', housing);
    expect(value).toMatchObject({ unit: 'm', shown: '10 1/2 in x 10 3/4 in' });
    expect(says).toContain('unless the leaflet says otherwise');
  });

  it('sees whether the new grille covers the old hole, a quarter inch on each side', () => {
    expect(told('opening', housing, 'old-opening=10 x 10 in').says).toContain('no larger');
    expect(told('opening', housing, 'old-opening=11 x 11 in').weight).toBe('caution');
    expect(told('opening', housing, 'old-opening=11 x 11 in', 'grille-size=13 x 14 in').weight).toBe('good');
    expect(told('opening', housing, 'old-opening=12 x 13.6 in', 'grille-size=13 x 14 in').says).toContain('patch');
  });

  it('leaves 14-1/2 in between sawn joists at 16 in, and 12-1/2 in between truss chords', () => {
    const bay = (...words: string[]) => told('joist-bay', housing, 'joist-spacing=16 in oc', ...words);
    expect(bay('joist-kind=2x8').value?.number).toBeCloseTo(14.5 * inch, 9);
    expect(bay('joist-kind=truss').value?.number).toBeCloseTo(12.5 * inch, 9);
    expect(bay().working[0]?.what).toContain('truss chords');
    expect(bay('joist-kind=2x8')).toMatchObject({ weight: 'good' });
  });

  it('stops a housing wider than the bay, and never cuts a joist', () => {
    const wide = once(parts, smooth, 'housing-size=15 x 15 in', 'joist-spacing=16 in', 'joist-kind=2x8');
    expect(wide.status).toBe('stopped');
    expect(findingOf(wide, 'joist-bay').says).toContain('No joist, truss or flange is ever cut');
    const doubtful = told('joist-bay', 'housing-size=13 x 13 in', 'joist-spacing=16 in');
    expect(doubtful.weight).toBe('caution');
  });

  it('turns the narrow side across the bay', () => {
    const { weight, says } = told('joist-bay', 'housing-size=20 x 14 in', 'joist-spacing=16 in', 'joist-kind=2x8');
    expect(weight).toBe('good');
    expect(says).toContain('14 in side across');
  });

  it('keeps a 7-5/8 in housing out from under a floor on 2x8, 7-1/4 in deep', () => {
    const depth = (...words: string[]) => told('housing-depth', housing, ...words);
    expect(depth('joist-kind=2x8', 'above-ceiling=floor').weight).toBe('stop');
    expect(depth('joist-kind=2x10', 'above-ceiling=floor').weight).toBe('good');
    expect(depth('joist-kind=2x8').weight).toBe('caution');
    expect(() => depth('joist-kind=2x8', 'above-ceiling=attic')).toThrow('no finding housing-depth');
  });
});

describe('wiring on the list', () => {
  it('brings a connector for each splice and two to spare (common practice)', () => {
    const connectors = (...words: string[]) => row(list(smooth, ...words), 'Wire connectors')?.[2];
    expect(connectors('unit-kind=fan-only', 'control-wanted=keep')).toBe('5');
    expect(connectors('unit-kind=fan-light-and-heater', 'control-wanted=countdown-timer')).toBe('9');
    expect(connectors()).toBe('9');
  });

  it('brings the control that is wanted, the box that is there and the cable that is new', () => {
    const rows = list(
      smooth,
      'control-wanted=humidity-sensor',
      'box=18 in3',
      'cable-work=new-run-open',
      'cable-length=20 ft',
      'breaker=20',
      'unit-kind=fan-only',
    );
    expect(row(rows, 'Humidity sensor')?.[2]).toBe('1');
    expect(row(rows, 'Box')?.[1]).toBe('18 cu in');
    // 12 AWG on 20 A (NEC 240.4(D)); a foot more at each end (common practice).
    expect(row(rows, 'Cable')?.slice(1, 3)).toEqual(['12/2 with ground', '22 ft']);
    expect(row(list(smooth, 'control-wanted=keep'), 'Humidity')).toBeUndefined();
  });
});

describe('the file', () => {
  it('holds the same lines as the table', () => {
    const file = fileOf(smooth);
    expect(file).toMatchObject({ name: 'parts.csv', type: 'text/csv' });
    const lines = file?.text.replace('\ufeff', '').trimEnd().split('\r\n') ?? [];
    expect(lines[0]).toBe('group,item,size,quantity,note');
    expect(lines).toHaveLength(list(smooth).length + 1);
    expect(lines).toContain('Duct,Rigid duct,4 in,3 sticks,5 ft each');
  });

  it('never lets a cell be a formula, whatever is in it', () => {
    expect(csvText([['=1+1', '+1', '-1', '@sum', 'plain']]).slice(1)).toBe("'=1+1,'+1,'-1,'@sum,plain\r\n");
    expect(csvText([['a,b', 'say "hi"']]).slice(1)).toBe('"a,b","say ""hi"""\r\n');
    fc.assert(
      fc.property(fc.string(), (text) => {
        const bare = csvText([[text]])
          .slice(1)
          .replace(/^"/, '');
        expect(bare).not.toMatch(/^[=+\-@]/);
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});

describe('sizes are read as they are written', () => {
  const read = (text: string) => readSides(text, 'inch-pound', { counts: [2, 3], example: '10 x 11 in' });

  it.each([
    ['10-1/4 x 10-1/2 x 7-5/8 in', '10 1/4 in x 10 1/2 in x 7 5/8 in'],
    ['10.25 by 10.5', '10 1/4 in x 10 1/2 in'],
    ['260 x 267 x 194 mm', '10 1/4 in x 10 1/2 in x 7 5/8 in'],
    ['10 1/4" x 10 1/2"', '10 1/4 in x 10 1/2 in'],
    ['10-1/4 in square', '10 1/4 in x 10 1/4 in'],
    ['ten by ten and a half', '10 in x 10 1/2 in'],
  ])('%s', (text, back) => {
    const reading = read(text);
    if ('rejected' in reading) throw new Error(reading.rejected);
    expect(sidesText(reading.value, 'inch-pound')).toBe(back);
    expect(read(back)).toHaveProperty('value');
  });

  it.each(['', '10', 'x', '10 x', '-10 x 10', '0 x 10', '10x10x10x10', '10 x 10 teapot', '1000 x 10'])(
    'answers “%s” with a sentence',
    (text) => {
      const reading = read(text);
      expect('rejected' in reading && reading.rejected.length > 20).toBe(true);
    },
  );
});

describe('slips are answered with a sentence', () => {
  it.each([
    ['duct-run=teapot', /not understood/],
    ['housing-size=big', /numbers with x between/],
    ['joist-spacing=wide', /.+/],
    ['joist-kind=4x4', /2x6/],
    ['insulation-wanted=lots', /.+/],
    ['cable-length=-3', /.+/],
    ['teapot=1', /no “teapot”/],
  ])('%s', (word, says) => {
    const answer = once(parts, ...[smooth].filter((each) => !word.startsWith('duct-run') || each !== smooth), word);
    expect(answer.status).toBe('needs-answers');
    expect(answer.problems[0]?.says).toMatch(says);
  });
});

describe('laws of the list', () => {
  it('more duct never takes less tape', () => {
    const tape = (feet: number) =>
      findingOf(once(parts, `duct-run=${feet} ft 4 in smooth; wall cap`), 'duct-tape').value?.number ?? 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 60 }), (feet, more) => {
        expect(tape(feet + more)).toBeGreaterThanOrEqual(tape(feet));
      }),
      { seed: 1, numRuns: 60 },
    );
  });
});

describe('a talk about the van', () => {
  it('goes from the run to the list', async () => {
    expect(
      await talked(
        parts,
        'parts',
        '14 ft 4 in smooth; 2 x elbow 90; wall cap',
        '5 in',
        'why',
        'R-8',
        'fan only',
        'timer',
        'big',
        '10-1/4 x 10-1/2 in',
        'back',
        '10-1/4 x 10-1/2 in',
        '16 in on center',
        "don't know",
      ),
    ).toMatchInlineSnapshot(`
      "
      you: parts
      bot: What is the duct, from the fan to outdoors? One part at a time, or all of it: 14 ft 4 in flex; 2 x
           elbow 90; wall cap.
             1  5 ft 4 in flex
             2  10 ft 4 in flex
             3  5 ft 4 in smooth
             4  10 ft 4 in smooth
      you: 14 ft 4 in smooth; 2 x elbow 90; wall cap
      bot: Duct from fan to outdoors, part by part: 14 ft 4 in smooth; 2 x elbow 90; wall cap.
           What is the diameter of the fan’s outlet collar?
      you: 5 in
      bot: Diameter of the fan’s outlet collar: 5 in (127 mm).
           To what R is the duct to be wrapped? None where it stays inside the warm part of the house.
      you: why
      bot: A bare duct in the cold sweats. The number counts once the wrap is on, not as it lies on the roll.
           To what R is the duct to be wrapped? None where it stays inside the warm part of the house.
      you: R-8
      bot: Insulation wanted on the duct, or none: R-8 (RSI 1.41).
           What is going in?
             1  Fan only
             2  Fan with light
             3  Fan with heater
             4  Fan with light and heater
             5  Paddle fan or hanging light
      you: fan only
      bot: What kind of fan is going in: Fan only.
           What should work the fan?
             1  Keep the control that is there
             2  Plain switch
             3  Spring-wound timer
             4  Electronic countdown timer
             5  Humidity sensor
             6  Occupancy sensor
             7  Low speed all day with boost
             8  Dimmer or speed control
      you: timer
      bot: The control that is wanted for the fan: Electronic countdown timer.
           How large is the housing of the new fan: length, width and height?
      you: big
      bot: “big” is not understood. Give 2 or 3 numbers with x between, such as 10-1/4 x 10-1/2 x 7-5/8 in.
           How large is the housing of the new fan: length, width and height?
      you: 10-1/4 x 10-1/2 in
      bot: Housing of the new fan, length x width x height: 10 1/4 in x 10 1/2 in.
           How far apart are the joists, center to center?
      you: back
      bot: Took back: Housing of the new fan, length x width x height.
           How large is the housing of the new fan: length, width and height?
      you: 10-1/4 x 10-1/2 in
      bot: Housing of the new fan, length x width x height: 10 1/4 in x 10 1/2 in.
           How far apart are the joists, center to center?
      you: 16 in on center
      bot: Joist spacing, center to center: 16 in (406 mm).
           What are the joists?
             1  2x6
             2  2x8
             3  2x10
             4  2x12
             5  Truss (chord laid flat)
             6  I-joist
      you: don't know
      bot: What the joists are: taken as Truss. Taken as truss chords, the widest, until somebody looks.

           12 lines to load for this job.

           Fine:    12 lines for 14 ft (4.27 m) of duct with 7 joints. The list is below.
           Advice:  Cut the opening 10 1/2 in x 10 3/4 in, unless the leaflet says otherwise. Measure the old
                    opening too.
           Fine:    The housing goes between the joists, either way round, with 1 1/8 in on each side.
           Fine:    Bring 9 ft 3 in (2.83 m) of foil tape, waste included: 1 roll of 150 ft. Cloth duct tape is
                    not for ducts: it was the one kind that failed when aged.
           Fine:    Wrap the rigid duct with 3 in blanket, 35 sq ft: R-8.3 (RSI 1.46) once it is on.
           Advice:  Hang a level run so that it falls 3 1/2 in (89 mm) to the outside, and cut the hood opening
                    that much lower.
           Advice:  Check sizes against the fan’s leaflet and the hole in the wall before anything is ordered.
                    Wiring parts are for whoever may do the wiring here.
      "
    `);
  });
});
