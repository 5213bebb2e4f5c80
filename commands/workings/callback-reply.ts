import type { Diagnosis, Push, RankedCause } from '#diagnosis/diagnose.ts';
import type { NextCheck } from '#diagnosis/next-check.ts';
import type { NumberEvidence, NumberShown } from '#diagnosis/numbers.ts';
import type { Finding, Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { type CallbackFindingId, isVariable } from '#knowledge/callback-findings.ts';
import { callbackDangers, callbackScale, callbackSentences } from '#knowledge/callback-scale.ts';
import { callbackTexts } from '#knowledge/callback-texts.ts';
import { type CauseId, causes } from '#knowledge/causes.ts';
import { airflow, minutes, smallLength, staticPressure, temperature } from '#quantity/kinds.ts';
import { celsius, cubicMetresPerSecond, metres, pascals, seconds } from '#quantity/units.ts';
import type { Language } from '#words/language.ts';
import { callbackWords } from '../words/callback.ts';
import { dangerFindings, findOutFinding } from './callback-danger.ts';
import { inWords } from './callback-in-words.ts';
import { citations } from './citations.ts';

/** In which units and which language a callback is told. */
export interface CallbackTelling {
  readonly units: UnitSystem;
  readonly language: Language;
}

const pushStep =
  (way: 'raised' | 'lowered', language: Language) =>
  ({ id, kind, strength }: Push): Step => {
    const texts = callbackWords[language];
    const sign = inWords(id, language);
    return {
      what: kind === 'not seen' ? texts.notSeenShort(sign) : sign,
      value: texts[way](texts.strengths[strength]),
    };
  };

function causeFinding(ranked: RankedCause, surely: boolean, language: Language): Finding {
  const texts = callbackWords[language];
  const { name } = callbackTexts[language].causes[ranked.cause];
  const { band, told } = ranked;
  const reasons = ranked.raised.slice(0, 3).map(({ id }) => inWords(id, language));
  const against = ranked.lowered.slice(0, 2).map(({ id }) => inWords(id, language));
  const why = reasons.length > 0 ? texts.speaksFor(reasons.join('; ')) : '';
  const not = against.length > 0 ? texts.speaksAgainst(against.join('; ')) : '';
  return {
    id: 'likely-cause',
    weight: 'advice',
    cause: ranked.cause,
    says: `${texts.likelyCause(surely ? texts.bands[told] : texts.onlyPossible, name)}${why}${not}`,
    working: [
      ...ranked.raised.map(pushStep('raised', language)),
      ...ranked.lowered.map(pushStep('lowered', language)),
      {
        what: texts.band,
        value: texts.ofHundred(texts.bands[band].toLowerCase(), Math.round(callbackScale.bands[band].from * 100)),
        source: callbackScale.bands[band].citation,
      },
      ...(told === band
        ? []
        : [
            {
              what: texts.saidAs,
              value: told === 'likely' ? texts.oneKindOfSign : texts.noSignForIt,
              source: callbackScale.figures['signs-for-very-likely'].citation,
            },
          ]),
    ],
    sources: citations(causes[ranked.cause].citation),
  };
}

/** Beside a danger, and beside one that is not known, nothing is ranked for the crew: it is for whoever comes to mend it. */
const behindDanger = (ranked: RankedCause, language: Language): Finding => ({
  ...causeFinding(ranked, false, language),
  says: callbackWords[language].forWhoeverMends(
    callbackWords[language].bands[ranked.told].toLowerCase(),
    lower(callbackTexts[language].causes[ranked.cause].name),
  ),
});

/** "98 cfm predicted, 86 to 99 cfm", "62 Pa", each number with what it is. */
function shownNumber({ what, number, low, high, unit }: NumberShown, { units, language }: CallbackTelling): string {
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
  return placed(what, `${told}${range}`, language);
}

function placed(what: NumberShown['what'], amount: string, language: Language): string {
  const { numbers, atCollar, underDoor, inAttic, limit, amountOf } = callbackWords[language];
  switch (what) {
    case 'pressure at the collar':
      return atCollar(amount);
    case 'door gap':
      return underDoor(amount);
    case 'attic':
      return inAttic(amount);
    case 'low under':
    case 'high over':
      return limit(numbers[what], amount);
    default:
      return amountOf(numbers[what], amount);
  }
}

const numberFinding = ({ finding, seen, numbers }: NumberEvidence, telling: CallbackTelling): Finding => ({
  id: 'by-the-numbers',
  weight: 'advice',
  check: finding,
  says: callbackWords[telling.language].byTheNumbers(
    inWords(finding, telling.language),
    seen,
    numbers.map((each) => shownNumber(each, telling)).join(', '),
  ),
  working: numbers.map((each) => ({
    what: callbackWords[telling.language].numbers[each.what],
    value: shownNumber(each, telling),
  })),
  sources: citations({ source: 'own-working', verified: false }),
});

function remedyFinding(id: CauseId, language: Language): Finding {
  const cause = causes[id];
  const texts = callbackWords[language];
  const told = callbackTexts[language].causes[id];
  return {
    id: 'remedy',
    weight: cause.lifeSafety ? 'caution' : 'advice',
    cause: id,
    says: texts.remedy(told.name, told.confirm, told.refer ?? told.remedy, texts.trades[cause.who], told.caution),
    working: told.parts.map((part) => ({ what: texts.part, value: part })),
    sources: citations(cause.citation),
  };
}

const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

function nextFinding(next: NextCheck, language: Language): Finding {
  const texts = callbackWords[language];
  const known = callbackTexts[language];
  const sources = citations({ source: 'own-working', verified: false });
  if (next.kind === 'check') {
    const { id, answers } = next.check;
    const wording = isVariable(id) ? known.variables[id] : known.findings[id as CallbackFindingId];
    return {
      id: 'next-check',
      weight: 'advice',
      check: isVariable(id) ? (answers[0] ?? id) : id,
      says: texts.checkNext(wording.question, wording.how),
      working: [
        { what: texts.from, value: texts.seenFrom[next.check.from] },
        { what: texts.power, value: texts.powerIs[next.check.power] },
        {
          what: texts.whyThisOne,
          value: next.because === 'danger' ? texts.callsForStop : texts.tellsMost,
        },
        ...next.others.map((other) => ({ what: texts.alsoWorth, value: inWords(other.id, language) })),
      ],
      sources,
    };
  }
  if (next.kind === 'stopped') {
    return {
      id: 'next-check',
      weight: 'stop',
      says: texts.nothingMore,
      working: [],
      sources,
    };
  }
  const changes = next.mindChangers.map(({ finding, answer, leads }) =>
    texts[answer === 'seen' ? 'with' : 'without'](inWords(finding, language), lower(known.causes[leads].name)),
  );
  const waits =
    next.waiting.length > 0 ? texts.onceDead(next.waiting.map(({ id }) => inWords(id, language)).join('; ')) : '';
  return {
    id: 'next-check',
    weight: 'good',
    says: `${known.sentences[next.kind === 'clear' ? 'clear' : 'nothing-left']}${changes.length > 0 ? texts.wouldChange(changes.join('; ')) : ''}${waits}`,
    working: [],
    sources,
  };
}

const ruleOutFinding = ({ cause }: RankedCause, isHeld: boolean, language: Language): Finding => ({
  id: 'rule-out',
  weight: 'caution',
  cause,
  says: isHeld
    ? callbackWords[language].ruleOutLater(lower(callbackTexts[language].causes[cause].name))
    : callbackWords[language].ruleOut(
        lower(callbackTexts[language].causes[cause].name),
        callbackTexts[language].causes[cause].confirm,
      ),
  working: [],
  sources: citations(causes[cause].citation),
});

/** More causes than this on a phone are not read. */
const mostCauses = 4;

/** The causes a crew calls somebody else in for. */
const tradesCalledIn: readonly string[] = ['licensed-electrician', 'roofer', 'plumber', 'fuel-gas-trade'];

const mayBeBurner = (cause: CauseId): boolean => {
  const { lifeSafety } = causes[cause];
  return lifeSafety !== undefined && (callbackDangers[lifeSafety]?.everyoneOut ?? false);
};

/** What whoever is on the phone tells the customer: who comes, and what nobody does meanwhile. Never that it is safe. */
function customerFinding(
  { outcome, dangers, open, ruleOutFirst }: Diagnosis,
  likeliest: CauseId | undefined,
  language: Language,
): Finding {
  const { toldToCustomer: texts, trades } = callbackWords[language];
  const who = likeliest === undefined ? undefined : causes[likeliest].who;
  const says =
    outcome === 'stopped'
      ? dangers.some(({ danger }) => callbackDangers[danger].everyoneOut)
        ? texts.everyoneOut
        : texts.stopped
      : ruleOutFirst.length > 0 || open.length > 0
        ? texts.ruleOutFirst(
            open.some(({ danger }) => callbackDangers[danger].everyoneOut) ||
              ruleOutFirst.some(({ cause }) => mayBeBurner(cause)),
          )
        : texts.comes(who !== undefined && tradesCalledIn.includes(who) ? trades[who] : texts.oneOfUs);
  return {
    id: 'tell-customer',
    weight: 'advice',
    says,
    working: [],
    sources: citations({ source: 'common-practice', verified: false }),
  };
}

/** Everything a callback tells: dangers first, then what it most likely is and what to check next. */
export function callbackFindingsTold(
  diagnosis: Diagnosis,
  next: NextCheck,
  { numbers, ...telling }: CallbackTelling & { readonly numbers: readonly NumberEvidence[] },
): readonly Finding[] {
  const { language } = telling;
  const texts = callbackWords[language];
  const known = callbackTexts[language];
  const surely = diagnosis.outcome === 'clear' || diagnosis.outcome === 'leaning';
  const named = diagnosis.ranking.filter(({ band }, index) => index === 0 || band !== 'unlikely').slice(0, mostCauses);
  // A proof or a remedy may have the fan run or opened: none is told while a danger is not known.
  const isHeld = diagnosis.open.length > 0;
  const listed = new Set<string>([...diagnosis.ruleOutFirst.map(({ cause }) => cause)]);
  return [
    ...dangerFindings(diagnosis, language),
    ...(diagnosis.outcome === 'stopped'
      ? []
      : diagnosis.ruleOutFirst.map((ranked) => ruleOutFinding(ranked, isHeld, language))),
    ...(surely || diagnosis.outcome === 'stopped'
      ? []
      : [
          {
            id: 'not-enough',
            weight: 'advice',
            says: known.sentences['not-enough'],
            working: [],
            sources: citations(callbackSentences['not-enough'].citation),
          } as const,
        ]),
    ...numbers.map((each) => numberFinding(each, telling)),
    ...named.map((ranked) =>
      diagnosis.outcome === 'stopped' || isHeld
        ? behindDanger(ranked, language)
        : causeFinding(ranked, surely, language),
    ),
    ...(surely && !isHeld && named[0] ? [remedyFinding(named[0].cause, language)] : []),
    ...(diagnosis.outcome === 'stopped' ? [] : diagnosis.together.slice(0, 1)).map(
      ({ causes: [one, other] }): Finding => ({
        id: 'two-causes',
        weight: 'advice',
        says: texts.twoCauses(lower(known.causes[one].name), lower(known.causes[other].name)),
        working: [],
        sources: citations(causes[one].citation, causes[other].citation),
      }),
    ),
    ...diagnosis.repairs
      .filter(({ cause }) => !isHeld && cause !== named[0]?.cause && !listed.has(cause))
      .map(
        ({ finding, cause }): Finding => ({
          id: 'repair',
          weight: 'advice',
          cause,
          says: texts.mendWhatWasSeen(inWords(finding, language), known.causes[cause].remedy),
          working: [],
          sources: citations(causes[cause].citation),
        }),
      ),
    diagnosis.dangers.length === 0 && isHeld ? findOutFinding(diagnosis, language) : nextFinding(next, language),
    customerFinding(diagnosis, surely ? named[0]?.cause : undefined, language),
  ];
}
