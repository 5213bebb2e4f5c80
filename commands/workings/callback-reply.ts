import type { Diagnosis, Push, RankedCause } from '#diagnosis/diagnose.ts';
import type { NextCheck } from '#diagnosis/next-check.ts';
import type { NumberEvidence, NumberShown } from '#diagnosis/numbers.ts';
import type { Finding, Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import {
  type CallbackFindingId,
  callbackFindings,
  callbackVariables,
  isCallbackFinding,
  isVariable,
} from '#knowledge/callback-findings.ts';
import {
  type CallbackTrade,
  callbackContexts,
  callbackScale,
  callbackSentences,
  isContext,
} from '#knowledge/callback-scale.ts';
import { type Cause, type CauseId, causes } from '#knowledge/causes.ts';
import { airflow, minutes, smallLength, staticPressure, temperature } from '#quantity/kinds.ts';
import { celsius, cubicMetresPerSecond, metres, pascals, seconds } from '#quantity/units.ts';
import { citations } from './citations.ts';

const bandWords = {
  'very-likely': 'Very likely',
  likely: 'Likely',
  possible: 'Possible',
  unlikely: 'Unlikely',
} as const;

const trades: Readonly<Record<CallbackTrade, string>> = {
  'apprentice-under-lead': 'an apprentice under the lead',
  lead: 'the lead',
  'licensed-electrician': 'a licensed electrician',
  roofer: 'a roofer',
  plumber: 'a plumber',
  'fuel-gas-trade': 'the fuel-gas trade',
};

/** A finding, a variable or a context in a few words. */
export const inWords = (id: string): string => {
  if (isCallbackFinding(id)) return callbackFindings[id].short;
  if (isVariable(id)) return callbackVariables[id].short;
  return isContext(id) ? callbackContexts[id].name : id;
};

const pushStep =
  (way: string) =>
  ({ id, kind, strength }: Push): Step => ({
    what: `${inWords(id)}${kind === 'not seen' ? ' not seen' : ''}`,
    value: `${way} it ${strength}`,
  });

function causeFinding(ranked: RankedCause, surely: boolean): Finding {
  const cause: Cause = causes[ranked.cause];
  const { band } = ranked;
  const reasons = ranked.raised.slice(0, 3).map(({ id }) => inWords(id));
  const against = ranked.lowered.slice(0, 2).map(({ id }) => inWords(id));
  const why = reasons.length > 0 ? ` Speaks for it: ${reasons.join('; ')}.` : '';
  const not = against.length > 0 ? ` Speaks against it: ${against.join('; ')}.` : '';
  return {
    id: 'likely-cause',
    weight: 'advice',
    cause: ranked.cause,
    says: `${surely ? bandWords[band] : 'Only possible so far'}: ${cause.name}.${why}${not}`,
    working: [
      ...ranked.raised.map(pushStep('raised')),
      ...ranked.lowered.map(pushStep('lowered')),
      {
        what: 'Band',
        value: `${bandWords[band].toLowerCase()}: ${Math.round(callbackScale.bands[band].from * 100)} of 100 such jobs or more`,
        source: callbackScale.bands[band].citation,
      },
    ],
    sources: citations(cause.citation),
  };
}

/** Beside a danger nothing is ranked for the crew: it is for whoever comes to mend it. */
const behindDanger = (ranked: RankedCause): Finding => ({
  ...causeFinding(ranked, false),
  says: `For whoever mends it: ${bandWords[ranked.band].toLowerCase()}, ${lower(causes[ranked.cause].name)}.`,
});

/** "98 cfm predicted, 86 to 99 cfm", "62 Pa", each number with what it is. */
function shownNumber({ what, number, low, high, unit }: NumberShown, units: UnitSystem): string {
  const told = {
    'm3/s': () => airflow.showShort(cubicMetresPerSecond(number), units),
    Pa: () => staticPressure.showShort(pascals(number), units),
    s: () => minutes.showShort(seconds(number), units),
    m: () => smallLength.showShort(metres(number), units),
    '°C': () => temperature.showShort(celsius(number), units),
  }[unit]();
  const at = cubicMetresPerSecond;
  const range =
    low === undefined || high === undefined || low === high
      ? ''
      : ` (${airflow.showRangeShort({ low: at(low), high: at(high) }, units)})`;
  return placed(what, `${told}${range}`);
}

function placed(what: NumberShown['what'], amount: string): string {
  switch (what) {
    case 'pressure at the collar':
      return `${amount} at the collar`;
    case 'door gap':
      return `${amount} under the door`;
    case 'attic':
      return `${amount} in the attic`;
    case 'low under':
    case 'high over':
      return `${what} ${amount}`;
    default:
      return `${amount} ${what}`;
  }
}

const numberFinding = ({ finding, seen, numbers }: NumberEvidence, units: UnitSystem): Finding => ({
  id: 'by-the-numbers',
  weight: 'advice',
  check: finding,
  says: `By the numbers: ${seen ? '' : 'not '}${inWords(finding)}: ${numbers.map((each) => shownNumber(each, units)).join(', ')}.`,
  working: numbers.map((each) => ({ what: each.what, value: shownNumber(each, units) })),
  sources: citations({ source: 'own-working', verified: false }),
});

function remedyFinding(id: CauseId): Finding {
  const cause = causes[id];
  return {
    id: 'remedy',
    weight: cause.lifeSafety ? 'caution' : 'advice',
    cause: id,
    says: `${cause.name}: prove it first. ${cause.confirm} Then: ${cause.refer ?? cause.remedy} By ${trades[cause.who]}.${cause.caution ? ` ${cause.caution}` : ''}`,
    working: cause.parts.map((part) => ({ what: 'Part', value: part })),
    sources: citations(cause.citation),
  };
}

const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

function nextFinding(next: NextCheck): Finding {
  const sources = citations({ source: 'own-working', verified: false });
  if (next.kind === 'check') {
    const { id, answers } = next.check;
    const wording = isVariable(id) ? callbackVariables[id] : callbackFindings[id as CallbackFindingId];
    return {
      id: 'next-check',
      weight: 'advice',
      check: isVariable(id) ? (answers[0] ?? id) : id,
      says: `Check next: ${wording.question} ${wording.how}`,
      working: [
        { what: 'Seen from', value: next.check.from },
        { what: 'Power', value: next.check.power },
        {
          what: 'Why this one',
          value: next.because === 'danger' ? 'the answer may call for a stop' : 'it tells most for the effort',
        },
        ...next.others.map((other) => ({ what: 'Also worth a look', value: inWords(other.id) })),
      ],
      sources,
    };
  }
  if (next.kind === 'stopped') {
    return {
      id: 'next-check',
      weight: 'stop',
      says: 'Check nothing more until the danger is dealt with. Heard or typed wrongly? Change that answer.',
      working: [],
      sources,
    };
  }
  const changes = next.mindChangers.map(
    ({ finding, answer, leads }) =>
      `${answer === 'seen' ? 'with' : 'without'} ${inWords(finding)}, rather ${lower(causes[leads].name)}`,
  );
  const waits =
    next.waiting.length > 0
      ? ` Once the circuit is proven dead: ${next.waiting.map(({ id }) => inWords(id)).join('; ')}.`
      : '';
  return {
    id: 'next-check',
    weight: 'good',
    says: `${next.kind === 'clear' ? callbackSentences.clear.says : callbackSentences['nothing-left'].says}${changes.length > 0 ? ` What would change it: ${changes.join('; ')}.` : ''}${waits}`,
    working: [],
    sources,
  };
}

const ruleOutFinding = ({ cause }: RankedCause): Finding => ({
  id: 'rule-out',
  weight: 'caution',
  cause,
  says: `Rule this out first: ${lower(causes[cause].name)}. ${causes[cause].confirm}`,
  working: [],
  sources: citations(causes[cause].citation),
});

/** More causes than this on a phone are not read. */
const mostCauses = 4;

/** Everything a callback tells: dangers first, then what it most likely is and what to check next. */
export function callbackFindingsTold(
  diagnosis: Diagnosis,
  next: NextCheck,
  { numbers, units }: { numbers: readonly NumberEvidence[]; units: UnitSystem },
): readonly Finding[] {
  const surely = diagnosis.outcome === 'clear' || diagnosis.outcome === 'leaning';
  const named = diagnosis.ranking.filter(({ band }, index) => index === 0 || band !== 'unlikely').slice(0, mostCauses);
  const listed = new Set<string>([...diagnosis.ruleOutFirst.map(({ cause }) => cause)]);
  return [
    ...diagnosis.dangers.map(
      ({ says, findings }): Finding => ({
        id: 'danger',
        weight: 'stop',
        ...(findings[0] ? { check: findings[0] } : {}),
        says: `${says} Said because of: ${findings.map(inWords).join('; ')}.`,
        working: findings.map((finding) => ({ what: 'Because of', value: inWords(finding) })),
        sources: citations({ source: 'common-practice', verified: false }),
      }),
    ),
    ...(diagnosis.outcome === 'stopped' ? [] : diagnosis.ruleOutFirst.map(ruleOutFinding)),
    ...(surely || diagnosis.outcome === 'stopped'
      ? []
      : [
          {
            id: 'not-enough',
            weight: 'advice',
            says: callbackSentences['not-enough'].says,
            working: [],
            sources: citations(callbackSentences['not-enough'].citation),
          } as const,
        ]),
    ...numbers.map((each) => numberFinding(each, units)),
    ...named.map((ranked) => (diagnosis.outcome === 'stopped' ? behindDanger(ranked) : causeFinding(ranked, surely))),
    ...(surely && named[0] ? [remedyFinding(named[0].cause)] : []),
    ...(diagnosis.outcome === 'stopped' ? [] : diagnosis.together.slice(0, 1)).map(
      ({ causes: [one, other] }): Finding => ({
        id: 'two-causes',
        weight: 'advice',
        says: `Two things may be wrong at once: ${lower(causes[one].name)}, and ${lower(causes[other].name)}.`,
        working: [],
        sources: citations(causes[one].citation, causes[other].citation),
      }),
    ),
    ...diagnosis.repairs
      .filter(({ cause }) => cause !== named[0]?.cause && !listed.has(cause))
      .map(
        ({ finding, cause }): Finding => ({
          id: 'repair',
          weight: 'advice',
          cause,
          says: `Mend what was seen whatever the cause: ${inWords(finding)}. ${causes[cause].remedy}`,
          working: [],
          sources: citations(causes[cause].citation),
        }),
      ),
    nextFinding(next),
  ];
}
