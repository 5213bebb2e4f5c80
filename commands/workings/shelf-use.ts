import type { Desk } from '#chat/command.ts';
import { howKnown } from '#interview/words.ts';
import { deliveredAirflow, measuredAirflow } from '../questions/airflow.ts';
import { fanSetting } from '../questions/fan.ts';
import { fanAmps, fanWattsLow, heaterWatts, lampWatts } from '../questions/loads.ts';
import { grilleSize } from '../questions/parts.ts';
import { labelQuestions } from '../questions/shelf.ts';
import { onLabel, type ShelfFan } from './shelf.ts';

type NewFact = Parameters<Desk['store']['addFacts']>[1][number];

/** What putting a fan on a sheet came to. */
export interface Used {
  /** The questions its label answered. */
  readonly noted: readonly string[];
  /** What the sheet knew of another fan and this label is silent about: not known now. */
  readonly cleared: readonly string[];
  /** What the sheet has that may be of another fan: what it moved, or what is built in with it. */
  readonly perhapsStale: readonly string[];
}

/** Answers about the fan that the shelf does not keep: those of another fan must not be taken for this one's. */
export const othersOfTheFan = [fanSetting, fanAmps, fanWattsLow, grilleSize] as const;
const perhapsOfTheFan = [deliveredAirflow, measuredAirflow, heaterWatts, lampWatts] as const;

/**
 * Notes what the label says on the sheet that lies open, as read off a label, in one step. Nothing of an earlier fan stays
 * beside it: what this label does not say counts as not known.
 */
export function useFan({ store, speaker }: Desk, fan: ShelfFan): Used {
  return store.together(() => {
    const sheet = store.currentSheet(speaker).number;
    const before = store.newestFacts(sheet);
    const stood = (id: string) => before.has(id) && before.get(id)?.how !== 'unknown';
    const said = labelQuestions.flatMap((question): NewFact[] => {
      const typed = fan.label[question.id];
      const value = onLabel<unknown>(fan, question);
      if (typed === undefined || value === undefined) return [];
      const { how } = howKnown(typed);
      const known = how === 'told' ? 'label' : how;
      return [{ fact: question.id, typed, units: fan.units, value, how: known, who: speaker.who }];
    });
    const noted = said.map(({ fact }) => fact);
    const cleared = [...labelQuestions, ...othersOfTheFan]
      .map(({ id }) => id)
      .filter((id) => !noted.includes(id) && stood(id));
    const silent = cleared.map(
      (fact): NewFact => ({
        fact,
        typed: "don't know",
        units: fan.units,
        value: null,
        how: 'unknown',
        who: speaker.who,
      }),
    );
    store.addFacts(sheet, [...said, ...silent]);
    const perhapsStale = perhapsOfTheFan.map(({ id }) => id).filter(stood);
    return { noted, cleared, perhapsStale };
  });
}
