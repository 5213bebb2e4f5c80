import type { Chart, Point } from '#findings/reply.ts';

/** Charts such as the crew would see, with invented numbers: they exercise the drawing and prove nothing about fans. */

const every = (step: number, from: number, to: number): readonly number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step);

const curve = (xs: readonly number[], y: (x: number) => number): readonly Point[] => xs.map((x) => [x, y(x)]);

/** Invented: a fan at two settings against 22 ft of 4 in duct, short of the airflow needed. */
export const fanAgainstDuct: Chart = {
  title: 'Fan against 22 ft of 4 in duct: 68 cfm delivered, 80 cfm needed',
  x: { label: 'Airflow, cfm', min: 0, max: 130 },
  y: { label: 'Static pressure, in. w.g.', min: 0, max: 0.6 },
  lines: [
    {
      label: 'Fan, high setting',
      role: 'main',
      points: curve(every(2, 0, 112), (q) => 0.52 - 0.52 * (q / 112) ** 2.2),
    },
    { label: 'Fan, low setting', role: 'other', points: curve(every(2, 0, 78), (q) => 0.3 - 0.3 * (q / 78) ** 2) },
    { label: 'Duct', role: 'system', points: curve(every(2, 0, 130), (q) => 0.345 * (q / 68) ** 1.9) },
  ],
  bands: [
    {
      label: 'Duct, best to worst case',
      points: every(2, 0, 130).map((q) => [q, 0.25 * (q / 68) ** 1.9, 0.47 * (q / 68) ** 1.9] as const),
    },
  ],
  marks: [{ label: 'Works here: 68 cfm at 0.35 in. w.g.', at: [68, 0.345] }],
  levels: [{ label: 'Airflow needed, 80 cfm', axis: 'x', at: 80 }],
  alt: 'The fan on high meets the duct at 68 cfm and 0.35 in. w.g., 12 cfm short of the 80 cfm needed.',
};

const humidity = (rate: number) => (minute: number) =>
  minute <= 12 ? 46 + 46 * (1 - Math.exp(-minute / 5)) : 46 + 42 * Math.exp(-(minute - 12) / rate);

/** Invented: relative humidity after a shower, with the fan left on and with it switched off. */
export const humidityAfterShower: Chart = {
  title: 'Bathroom humidity: leave the fan on 35 minutes after the shower',
  x: { label: 'Minutes from the start of the shower', min: 0, max: 90 },
  y: { label: 'Relative humidity, %', min: 40, max: 100 },
  lines: [
    { label: 'Fan on', role: 'main', points: curve(every(1, 0, 90), humidity(13)) },
    { label: 'Fan off', role: 'other', points: curve(every(1, 0, 90), humidity(70)) },
    {
      label: 'House air',
      role: 'system',
      points: [
        [0, 46],
        [90, 46],
      ],
    },
  ],
  bands: [],
  marks: [
    { label: 'Mirror clears, 29 min', at: [29, humidity(13)(29)] },
    { label: 'Surfaces dry, 47 min', at: [47, humidity(13)(47)] },
  ],
  levels: [
    { label: 'Shower ends', axis: 'x', at: 12 },
    { label: 'Mould grows above 80 %', axis: 'y', at: 80 },
  ],
  alt: 'With the fan on, humidity falls below 80 % at 15 minutes; the mirror clears at 29 and surfaces are dry at 47.',
};

const cooling = (start: number, attic: number, reach: number) => (feet: number) =>
  attic + (start - attic) * Math.exp(-feet / reach);

/** Invented: the inside wall of a thinly insulated duct crossing a cold attic. */
export const ductInColdAttic: Chart = {
  title: 'Duct in a 20 °F attic: water forms from 9 ft on',
  x: { label: 'Distance from the fan, ft', min: 0, max: 24 },
  y: { label: 'Temperature, °F', min: 10, max: 80 },
  lines: [
    { label: 'Inside of the duct wall', role: 'main', points: curve(every(0.5, 0, 24), cooling(66, 20, 22)) },
    { label: 'Air in the duct', role: 'other', points: curve(every(0.5, 0, 24), cooling(74, 20, 30)) },
    {
      label: 'Dew point of the air',
      role: 'limit',
      points: curve(every(0.5, 0, 24), (feet) => 50.6 - Math.max(0, feet - 9) * 0.12),
    },
    { label: 'Wall with R-8 wrap', role: 'system', points: curve(every(0.5, 0, 24), cooling(72, 20, 90)) },
  ],
  bands: [
    {
      label: 'Wall, likely range',
      points: every(0.5, 0, 24).map((feet) => [feet, cooling(62, 20, 18)(feet), cooling(69, 20, 27)(feet)] as const),
    },
  ],
  marks: [{ label: 'Condensation starts, 9 ft', at: [9, 50.6] }],
  levels: [
    { label: 'Freezing, 32 °F', axis: 'y', at: 32 },
    { label: 'Roof cap, 22 ft', axis: 'x', at: 22 },
  ],
  alt: 'The duct wall falls below the 51 °F dew point 9 ft from the fan and stays above freezing to the roof cap at 22 ft.',
};

/** Invented: as crowded as a chart is likely to get. */
export const fourSettings: Chart = {
  ...fanAgainstDuct,
  title: 'Four fan settings',
  marks: [{ label: 'Works here: 66 cfm at 0.33 in. w.g.', at: [66, 0.327] }],
  lines: [
    ...[50, 70, 90, 110].map((top, index) => ({
      label: `${top} cfm setting`,
      role: index === 3 ? ('main' as const) : ('other' as const),
      points: curve(every(1, 0, top), (q) => (0.2 + top / 350) * (1 - (q / top) ** 2)),
    })),
    { label: 'Duct as found', role: 'system', points: curve(every(2, 0, 130), (q) => 0.345 * (q / 68) ** 1.9) },
    { label: 'Duct with a 6 in run', role: 'system', points: curve(every(2, 0, 130), (q) => 0.12 * (q / 68) ** 1.9) },
    {
      label: 'Lowest tested pressure',
      role: 'limit',
      points: [
        [0, 0.1],
        [130, 0.1],
      ],
    },
  ],
};
