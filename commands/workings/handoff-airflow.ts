import type { UnitSystem } from '#interview/question.ts';
import { airflow } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond } from '#quantity/units.ts';
import { occupantWords } from '../words/occupant.ts';
import { type HandOff, numberRecorded, passedBecause, wordsRecorded } from './handoff-facts.ts';

/** The airflows of a job as its lists recorded them. */
export function airflowsRecorded(off: HandOff) {
  const at = (step: string, part: string): CubicMetresPerSecond | null => {
    const number = numberRecorded(off, step, part);
    return number === null ? null : cubicMetresPerSecond(number);
  };
  const needs = [at('target-airflow', 'need'), at('measured-airflow', 'need')].filter((each) => each !== null);
  return {
    agreed: at('target-airflow', 'airflow'),
    measured: at('measured-airflow', 'mean'),
    /** What the measurement shows for certain. */
    shown: at('measured-airflow', 'low-end'),
    /** What the room needs, the larger where the list recorded it twice. */
    need: needs.length === 0 ? null : cubicMetresPerSecond(Math.max(...needs)),
  };
}

/** What a lead decided about air that falls short, a sentence each: less agreed than needed, less shown than agreed. */
export function decidedShort(off: HandOff, units: UnitSystem): readonly string[] {
  const { agreed, need, measured } = airflowsRecorded(off);
  const why = wordsRecorded(off, 'target-airflow', 'why-less');
  const passed = passedBecause(off, 'measured-airflow');
  const shown = (flow: CubicMetresPerSecond) => airflow.showShort(flow, units);
  const told = occupantWords[off.language];
  const ended = (words: string) => (/[.!?]$/.test(words) ? words : `${words}.`);
  return [
    ...(agreed !== null && need !== null && !meets(agreed, need)
      ? [told.agreedLess(shown(agreed), shown(need), ended(why ?? told.noReason))]
      : []),
    ...(passed === null ? [] : [measured === null ? told.notMeasured(ended(passed)) : told.accepted(ended(passed))]),
  ];
}
