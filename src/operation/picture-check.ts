import { type Check, fix, good } from './check.ts';

/** An invented fan, drawn to see whether pictures and their letters can be drawn here. */
const chart = {
  title: 'A picture to try',
  x: { label: 'Airflow, cfm', min: 0, max: 100 },
  y: { label: 'Pressure, in. w.g.', min: 0, max: 0.5 },
  lines: [
    {
      label: 'an invented fan',
      role: 'main',
      points: [
        [0, 0.5],
        [100, 0],
      ],
    },
  ],
  bands: [],
  marks: [],
  levels: [],
  alt: 'A straight line.',
} as const;

export async function pictureCheck(): Promise<Check> {
  try {
    const { chartPng } = await import('#pictures/chart-png.ts');
    const { length } = await chartPng(chart);
    return good('pictures', `A chart is drawn, ${Math.ceil(length / 1024)} kB, with the fonts that came along.`);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return fix('pictures', `Install the packages again, with: npm ci. A chart could not be drawn: ${why}`);
  }
}
