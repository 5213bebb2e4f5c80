import type { Finding } from '#findings/finding.ts';
import { type Interview, take } from '#interview/interview.ts';
import type { UnitSystem } from '#interview/question.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { airflow, minutes } from '#quantity/kinds.ts';
import type { CubicMetresPerSecond, Seconds } from '#quantity/units.ts';
import { airflowAtSwap, leftAtSwap, runTimeSet, swapDay } from '../questions/callback-measured.ts';
import { ductRun } from '../questions/duct.ts';
import { fanCurve, fanSetting } from '../questions/fan.ts';
import { callbackWords } from '../words/callback.ts';
import type { CallbackTelling } from './callback-reply.ts';
import { citations } from './citations.ts';

/** What is known of the day the fan was fitted. */
export interface ThenFitted {
  readonly day: string | null;
  readonly airflow: Estimate<CubicMetresPerSecond> | null;
  readonly runTime: Seconds | null;
  readonly left: string;
  shown(units: UnitSystem): {
    readonly fan: string | null;
    readonly setting: string | null;
    readonly duct: string | null;
  };
}

/** What was recorded when the fan was fitted; nothing where neither its day nor its airflow is known. */
export function* thenFitted(): Interview<ThenFitted | null> {
  const day = yield* take(swapDay);
  const moved = yield* take(airflowAtSwap);
  const set = yield* take(runTimeSet);
  const left = yield* take(leftAtSwap);
  const fan = yield* take(fanCurve);
  const setting = yield* take(fanSetting);
  const duct = yield* take(ductRun);
  if (!day.known && !moved.known) return null;
  return {
    day: day.value,
    airflow: moved.known ? moved.value : null,
    runTime: set.value,
    left: left.value,
    shown: (units) => ({
      fan: fan.known ? fanCurve.show(fan.value, units) : null,
      setting: setting.known ? fanSetting.show(setting.value, units) : null,
      duct: duct.known ? ductRun.show(duct.value, units) : null,
    }),
  };
}

const inWords = (day: string, locale: string): string =>
  new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(`${day}T00:00:00Z`));

/** "At the swap, March 3, 2026: 82 cfm measured at the grille; run-on set to 20 min. Left then: …" */
export function thenFinding(then: ThenFitted, { units, language }: CallbackTelling): Finding {
  const texts = callbackWords[language];
  const { fan, setting, duct } = then.shown(units);
  const moved =
    then.airflow === null ? texts.noAirflow : texts.atGrille(airflow.showShort(then.airflow.typical, units));
  const facts = [
    moved,
    ...(then.runTime === null ? [] : [texts.runOn(minutes.showShort(then.runTime, units))]),
    ...(fan === null ? [] : [texts.fanWas(fan, setting)]),
    ...(duct === null ? [] : [texts.ductWas(duct)]),
  ];
  return {
    id: 'at-the-swap',
    weight: then.left === '' ? 'good' : 'advice',
    says: texts.atTheSwap(then.day === null ? null : inWords(then.day, texts.dateLocale), facts.join('; '), then.left),
    ...(then.airflow === null
      ? {}
      : {
          value: {
            number: then.airflow.typical,
            unit: airflow.siUnit,
            low: then.airflow.low,
            high: then.airflow.high,
            shown: airflow.show(then.airflow.typical, units),
          },
        }),
    working: [],
    sources: citations({ source: 'common-practice', verified: false }),
  };
}
