import { describe, expect, it, test } from 'vitest';
import type { Chart } from '#findings/reply.ts';
import { chartText } from '#pictures/chart-text.ts';
import { ductInColdAttic, fanAgainstDuct, fourSettings, humidityAfterShower } from './invented-charts.ts';

it('sketches a fan against its duct', () => {
  expect(`\n${chartText(fanAgainstDuct)}\n`).toMatchInlineSnapshot(`
    "
    Fan against 22 ft of 4 in duct: 68 cfm delivered, 80 cfm needed
    Static pressure, in. w.g.
    0.6 ┤                                   ░|░░░oo░░░░░░░
        │                                 ░░░|░░oo░░░░░░
    0.5 ┤************                    ░░░░|oo░░░░░░░
        │           *********           ░░░░ooo░░░░░░
        │                   *****     ░░░░░oo|░░░░░
    0.4 ┤                        ****░░░░ooo░|░░░
        │                          ░░**@*o░░░|░
        │                         ░░░ooo****░|
    0.3 ┤.............          ░░░ooo░░░░ ***
        │             ......  ░░░ooo░░░░     |***
    0.2 ┤                  ....ooo░░░        |  ***
        │                 ░░ooo....          |    ***
        │               ░oooo░░   ....       |       **
    0.1 ┤            ooooo░           ...    |         **
        │       oooooo                  ...  |          ***
    0.0 ┤oooooooo                          ..|            **
        └┬────────┬────────┬────────┬────────┬────────┬────────┬────
         0       20       40       60       80       100      120
                                                        Airflow, cfm
      * Fan, high setting
      . Fan, low setting
      o Duct
      ░ Duct, best to worst case
      @ Works here: 68 cfm at 0.35 in. w.g.
      | Airflow needed, 80 cfm
    "
  `);
});

it('sketches in ASCII for a plain terminal, smaller when asked', () => {
  expect(`\n${chartText(ductInColdAttic, { width: 50, height: 10, ascii: true })}\n`).toMatchInlineSnapshot(`
    "
    Duct in a 20 deg F attic: water forms from 9 ft on
    Temperature, deg F
    80 +                                         |
       |ooooooooooooo                            |
       |******......ooooooooooooooooooooooooooooooo
    60 +   ::**********:.............            |oooo
       |xxxxxxxxxxxxxx***@********xxxxxxxxxxxxxxxxxxxx
    40 +                     ::::****************|:...
       |-----------------------------------------*****
       |                                         |
    20 +                                         |
       |                                         |
       ++--------+---------+--------+---------+-------
        0        5        10       15        20
                             Distance from the fan, ft
      * Inside of the duct wall
      . Air in the duct
      x Dew point of the air
      o Wall with R-8 wrap
      : Wall, likely range
      @ Condensation starts, 9 ft
      - Freezing, 32 deg F
      | Roof cap, 22 ft
    "
  `);
});

it('numbers the marks when there are several', () => {
  expect(`\n${chartText(humidityAfterShower, { height: 12 })}\n`).toMatchInlineSnapshot(`
    "
    Bathroom humidity: leave the fan on 35 minutes after the shower
    Relative humidity, %
    100 ┤        |
        │        |
        │       **.
        │     *****.......
     80 ┤---***---***----.........----------------------------------
        │  **    |  **           ..........
        │  *     |   ***                  ............
     60 ┤ **     |      ***                           ..............
        │ *      |         *1***
        │**      |             ********2**
        │*oooooooooooooooooooooooooooooooo**************************
     40 ┤        |
        └┬─────┬──────┬─────┬──────┬─────┬──────┬─────┬──────┬─────┬
         0    10     20    30     40    50     60    70     80    90
                                Minutes from the start of the shower
      * Fan on
      . Fan off
      o House air
      1 Mirror clears, 29 min
      2 Surfaces dry, 47 min
      | Shower ends
      - Mould grows above 80 %
    "
  `);
});

it('gives every further curve of a kind its own letter', () => {
  const key = chartText(fourSettings).split('\n').slice(-10);
  expect(key.map((line) => line.slice(2, 3))).toEqual(['.', 'a', 'b', '*', 'o', 'c', 'x', '░', '@', '|']);
});

describe('awkward sketches', () => {
  const bare: Chart = { ...fanAgainstDuct, lines: [], bands: [], marks: [], levels: [] };

  it('says what is off the chart and what is hidden', () => {
    const key = chartText({
      ...bare,
      lines: [
        {
          label: 'Under',
          role: 'other',
          points: [
            [0, 0.3],
            [130, 0.3],
          ],
        },
        {
          label: 'Over',
          role: 'main',
          points: [
            [0, 0.3],
            [130, 0.3],
          ],
        },
      ],
      levels: [{ label: 'Airflow needed', axis: 'x', at: 180 }],
    });
    expect(key.split('\n').slice(-3)).toEqual([
      '  . Under (behind the others)',
      '  * Over',
      '  | Airflow needed (off the chart)',
    ]);
  });

  it('sketches an empty chart as empty axes', () => {
    expect(`\n${chartText(bare, { width: 40, height: 6 })}\n`).toMatchInlineSnapshot(`
      "
      Fan against 22 ft of 4 in duct: 68 cfm
      delivered, 80 cfm needed
      Static pressure, in. w.g.
          │
      0.5 ┤
          │
          │
          │
      0.0 ┤
          └┬────┬────┬─────┬────┬────┬────┬───
           0   20   40    60   80   100  120
                                  Airflow, cfm
      "
    `);
  });

  test.each<[string, Chart]>([
    ['one point', { ...bare, lines: [{ label: 'a', role: 'main', points: [[50, 0.3]] }] }],
    ['no width', { ...fanAgainstDuct, x: { label: 'x', min: 5, max: 5 }, y: { label: 'y', min: 1, max: 1 } }],
    [
      'no numbers',
      { ...fanAgainstDuct, x: { label: 'x', min: Number.NaN, max: 0 }, y: { label: 'y', min: 0, max: Number.NaN } },
    ],
    [
      'huge',
      {
        ...bare,
        x: { label: 'x', min: -1e200, max: 1e200 },
        lines: [
          {
            label: 'a',
            role: 'main',
            points: [
              [0, 1e90],
              [1e99, -1e99],
            ],
          },
        ],
      },
    ],
    [
      'long',
      {
        ...fanAgainstDuct,
        title: 'word '.repeat(60),
        levels: [{ label: 'long label '.repeat(18), axis: 'x', at: 80 }],
      },
    ],
  ])('%s: keeps within its width and prints no missing numbers', (_, chart) => {
    const lines = chartText(chart, { width: 60, height: 8 }).split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(60);
    expect(lines.join('\n')).not.toMatch(/NaN|Infinity|undefined/);
    expect(lines.some((line) => line.endsWith(' '))).toBe(false);
  });

  it('holds nothing but ASCII when asked, and never a control character', () => {
    const odd = { ...ductInColdAttic, title: 'מאוורר \u001b[31m 🔥 ½ in' };
    expect(chartText(odd, { ascii: true })).toMatch(/^[\x20-\x7e\n]*$/);
    expect(chartText(odd)).not.toContain('\u001b');
  });

  it('stays usable when asked for next to no room', () => {
    expect(chartText(fanAgainstDuct, { width: 1, height: 1 }).split('\n').length).toBeGreaterThan(8);
  });
});
