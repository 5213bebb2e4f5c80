import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { PressOffer, Reply } from '#findings/reply.ts';
import { cite } from '#knowledge/sources.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { nextSteps } from '#walkthrough/next-steps.ts';
import { eitherOf } from '#walkthrough/signing.ts';
import { valueWords } from '../words/swap-values.ts';
import { remark } from './plain-replies.ts';
import { besideStep, workedOut } from './swap-beside.ts';
import { partsLeft, photosOn } from './swap-photo-kept.ts';
import { restsOn } from './swap-rests-on.ts';
import { nextFor, stepKey } from './swap-steps.ts';
import { rangeOf, saidIn } from './swap-values.ts';
import { type OpenWalk, tokenOf, toldOf, type Walker } from './swap-walk.ts';

const progressText = (walk: OpenWalk): string => {
  const { done, of, nextHold } = walk.state.progress;
  return toldOf(walk).progress(done, of, nextHold?.title);
};

const signersText = ({ state }: OpenWalk, { signers }: ListedStep): string => eitherOf(signers, state.list.checklist);

/** Something to press about a step, carrying where the list stood when it was shown. */
function press(walk: OpenWalk, walker: Walker, offer: Omit<PressOffer, 'command'>): PressOffer {
  const given = { job: tokenOf(walk), ...(walker.as === undefined ? {} : { as: walker.as }), ...offer.given };
  return { command: 'swap', ...offer, given };
}

/** Buttons for a step: one for each answer where it asks one thing, else a form. */
function pressesFor(walk: OpenWalk, walker: Walker, listed: ListedStep): readonly PressOffer[] {
  const { step, parts } = listed;
  const action = step.hold ? 'sign' : 'done';
  const told = toldOf(walk);
  const verb = told.press[action];
  const own = { step: stepKey(listed) };
  const [only] = parts;
  const others = [
    press(walk, walker, { label: told.stuck, action: 'stuck', given: own }),
    press(walk, walker, { label: told.whereItStands, action: 'status', given: {} }),
  ];
  if (!only) return [press(walk, walker, { label: `${verb}: ${step.code}`, action, given: own }), ...others];
  if (parts.length === 1 && only.kind === 'tick') {
    return [
      press(walk, walker, { label: `${verb}: ${only.label}`, action, given: { ...own, value: 'yes' } }),
      ...others,
    ];
  }
  if (parts.length === 1 && only.kind === 'choice') {
    const answers = only.options.map(({ id, label }) =>
      press(walk, walker, { label: step.hold ? `${verb}: ${label}` : label, action, given: { ...own, value: id } }),
    );
    return [...answers, ...others];
  }
  const left = partsLeft(walk, listed);
  if (left.length === 0)
    return [press(walk, walker, { label: `${verb}: ${step.code}`, action, given: own }), ...others];
  const photo = left.every(({ kind }) => kind === 'photo');
  const label = told.fill(step.code, { photo, sign: step.hold });
  return [press(walk, walker, { label, action, given: own }), ...others];
}

const recordText = (walk: OpenWalk, listed: ListedStep): readonly string[] =>
  listed.parts.flatMap((part) => {
    if (part.kind === 'number' && part.worked) return [];
    if (part.kind === 'choice') return `${part.label}: ${part.options.map(({ label }) => label).join(' / ')}`;
    if (part.kind === 'text' && part.neededBelow) return `${part.label}: ${toldOf(walk).onlyWhereLess}`;
    const range = rangeOf(part, valueWords[walk.checklist.language]);
    return range === ''
      ? `${part.label}${part.kind === 'photo' ? ` ${toldOf(walk).photo}` : ''}`
      : `${part.label}: ${range}`;
  });

/** Which list, and who looks at it. */
export interface Standpoint {
  readonly walk: OpenWalk;
  readonly walker: Walker;
}

/** Said in place of a value: record what was worked out. */
export const workedOutWord = 'as-worked-out';

/** One step on a page a phone can hold. */
export function stepPage(
  desk: Desk,
  { walk, walker }: Standpoint,
  listed: ListedStep,
  first: readonly Finding[] = [],
): Reply {
  const { step } = listed;
  const { units } = desk.telling;
  const { language } = walk.checklist;
  const told = toldOf(walk);
  const named = told.rows;
  const view = walk.state.steps.get(listed.id);
  const fields = recordText(walk, listed);
  const signs = nextSteps(walk.state, walker).yours.some(({ id }) => id === listed.id);
  const sent = photosOn(walk, listed).length;
  const earlier = view?.answer ? saidIn(listed, view.answer.value, units, language) : '';
  return {
    headline: `${step.code}: ${step.do}`,
    findings: saidOnce([
      ...first,
      ...(step.caution ? [{ ...remark('step-caution', 'caution', step.caution), sources: [cite(step)] }] : []),
      ...(view?.waitsFor ? [remark('waits', 'advice', view.waitsFor)] : []),
      ...(view?.because ? [remark('reopened', 'advice', view.because)] : []),
      ...(listed.touches.length + Number(step.treatAsLive) > 0 && view?.status !== 'closed'
        ? [remark('live', 'caution', told.liveUntilProven)]
        : []),
      ...besideStep(desk, walk, listed),
    ]),
    tables: [
      {
        title: listed.title,
        columns: ['', ''],
        rows: [
          [named.lookFor, step.lookFor],
          [named.why, step.why],
          ...fields.map((says, index) => [index === 0 ? named.record : '', says]),
          ...(earlier === '' ? [] : [[named.recorded, `${earlier} (${view?.answer?.name})`]]),
          ...(sent === 0 ? [] : [[named.photos, told.sent(sent)]]),
          ...(step.hold ? [[named.restsOn, restsOn(walk, listed, units)]] : []),
          [step.hold ? named.signedBy : named.doneBy, listed.person?.name ?? signersText(walk, listed)],
          [named.list, progressText(walk)],
        ].filter(([, says]) => says !== ''),
      },
    ],
    presses: signs
      ? [...asWorkedOut(desk, { walk, walker }, listed), ...pressesFor(walk, walker, listed)]
      : pressesFor(walk, walker, listed).slice(-1),
  };
}

/** What an answer has brought up is not said again by the page that follows it. */
const saidOnce = (findings: readonly Finding[]): readonly Finding[] =>
  [...new Map(findings.map((each) => [each.says, each] as const).reverse()).values()].reverse();

/** One press where all that a step records is worked out already. */
function asWorkedOut(desk: Desk, { walk, walker }: Standpoint, listed: ListedStep): readonly PressOffer[] {
  const value = workedOut(desk, walk, listed);
  const wanted = listed.parts.filter(({ optional }) => !optional);
  if (wanted.length === 0 || wanted.some(({ id }) => value[id] === undefined)) return [];
  const label = toldOf(walk).recordWorkedOut(saidIn(listed, value, desk.telling.units, walk.checklist.language));
  return [press(walk, walker, { label, action: 'done', given: { step: stepKey(listed), value: workedOutWord } })];
}

/** The next step for one person, or who is waited for. */
export function nextPage(desk: Desk, { walk, walker }: Standpoint, first: readonly Finding[] = []): Reply {
  const { state } = walk;
  const told = toldOf(walk);
  if (state.closed) {
    return {
      headline: told.listClosed(state.closed.name),
      findings: first,
      suggestions: [{ label: told.makePapers, command: 'handoff' }],
    };
  }
  const listed = nextFor(walk, walker);
  const stops = state.stops.map(({ listed: at, says }) => ({
    ...remark('stopped', 'stop', `${at.title}: ${says}`),
    sources: [cite(at.step)],
  }));
  const before = [...stops, ...first];
  if (listed) return stepPage(desk, { walk, walker }, listed, before);
  const [waiting] = nextSteps(state, walker).others;
  const says = waiting
    ? told.waits(waiting.listed.title, waiting.waitsFor)
    : state.paused
      ? told.pausedBy(state.paused.name)
      : told.nothingFree;
  return {
    headline: says,
    findings: before,
    tables: [{ title: walk.checklist.name, columns: ['', ''], rows: [[told.rows.list, progressText(walk)]] }],
    presses: [press(walk, walker, { label: told.lookAgain, action: 'next', given: {} })],
  };
}
