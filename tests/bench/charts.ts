import type { AnswerCommand } from '#chat/command.ts';
import { oneShot } from '#chat/one-shot.ts';
import duct from '#commands/duct.ts';
import type { Chart } from '#findings/reply.ts';
import { median, quantile, type Section } from './rows.ts';

const count = 20;

function chartOf(feet: number): Chart {
  const { reply } = oneShot(
    duct as AnswerCommand<unknown>,
    [
      'fan-curve=96@0 84@0.1 66@0.25 0@0.5',
      'collar=4 in',
      `duct-run=${feet} ft 4 in flex; 2 x elbow 90; wall cap`,
      'airflow-needed=80 cfm',
    ],
    { units: 'inch-pound' },
  );
  if (!reply?.chart) throw new Error('/duct draws no chart');
  return reply.chart;
}

export const charts: Section = {
  title: `A chart as a picture (${count} different)`,
  async measure() {
    const drawings = Array.from({ length: count + 1 }, (_, index) => chartOf(5 + index));
    const [first, ...others] = drawings as [Chart, ...Chart[]];
    const start = performance.now();
    const { chartPng } = await import('#pictures/chart-png.ts');
    const bytes = (await chartPng(first)).length;
    const cold = performance.now() - start;
    const { chartSvg } = await import('#pictures/chart-svg.ts');
    const times: number[] = [];
    const layouts: number[] = [];
    for (const chart of others) {
      const begun = performance.now();
      chartSvg(chart);
      layouts.push(performance.now() - begun);
      const drawn = performance.now();
      await chartPng(chart);
      times.push(performance.now() - drawn);
    }
    return [
      { what: 'first, with loading what draws', measured: `${cold.toFixed(0)} ms, ${(bytes / 1000).toFixed(0)} kB` },
      { what: 'later, median', measured: `${median(times).toFixed(0)} ms` },
      { what: 'later, 95 of 100 within', measured: `${quantile(times, 0.95).toFixed(0)} ms` },
      { what: 'of which placing the labels, median', measured: `${median(layouts).toFixed(0)} ms` },
    ];
  },
};
