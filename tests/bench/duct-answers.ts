import duct, { type DuctInputs, ductFindings, ductInterview } from '#commands/duct.ts';
import { replay } from '#interview/replay.ts';
import { median, quantile, type Section } from './rows.ts';

/** Inputs of a demo house, read from text as a person would type it; no two alike, so that nothing is answered twice. */
function inputs(feet: number, elbows: number): DuctInputs {
  const typed: Readonly<Record<string, string>> = {
    'fan-curve': '96@0 84@0.1 66@0.25 0@0.5',
    collar: '5 in',
    'duct-run': `reducer 5 to 4 in; ${feet} ft 4 in flex; ${elbows} x elbow 90; wall cap`,
    'airflow-needed': '80 cfm',
    'fan-settings': '50, 80, 110',
    'rated-sones': '1.5',
  };
  const outcome = replay(
    ductInterview(),
    ({ id, read }) => {
      const text = typed[id];
      const reading = text === undefined ? undefined : read(text, 'inch-pound');
      return reading && 'value' in reading ? { value: reading.value, known: true } : undefined;
    },
    'one-shot',
  );
  if (!outcome.complete) throw new Error(`${duct.name} asks for more than the bench gives`);
  return outcome.inputs;
}

const houses = Array.from({ length: 40 }, (_, index) => inputs(5 + index / 2, 1 + (index % 3)));
const warmUps = 5;
const rounds = 20;

export const ductAnswers: Section = {
  title: 'A full /duct answer, remedies and range included, worked out without the picture',
  async measure() {
    const telling = { units: 'inch-pound' } as const;
    const times: number[] = [];
    for (let round = -warmUps; round < rounds; round += 1) {
      for (const house of houses) {
        const start = performance.now();
        ductFindings(house, telling);
        if (round >= 0) times.push(performance.now() - start);
      }
    }
    const middle = median(times);
    const mean = times.reduce((sum, time) => sum + time, 0) / times.length;
    return [
      { what: 'median', measured: `${middle.toFixed(2)} ms`, aim: { says: 'under 1 ms', met: middle < 1 } },
      { what: '95 of 100 within', measured: `${quantile(times, 0.95).toFixed(2)} ms` },
      { what: 'answers a second', measured: (1000 / mean).toFixed(0) },
    ];
  },
};
