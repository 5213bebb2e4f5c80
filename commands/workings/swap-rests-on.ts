import type { UnitSystem } from '#interview/question.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { factText, openFacts } from './swap-facts.ts';
import { saidIn } from './swap-values.ts';
import { type OpenWalk, toldOf } from './swap-walk.ts';

/** What somebody signs for: the answers this hold needs, or what was reported where the signature makes it count. */
export function restsOn(walk: OpenWalk, listed: ListedStep, units: UnitSystem): string {
  if (listed.step.confirms) return reportedSoFar(walk);
  return listed.step.closes ? passedOver(walk) : answersBehind(walk, listed, units);
}

/** The steps a hold needs; behind a proof of being dead every test of that box, in the order they were made. */
function behind({ state }: OpenWalk, listed: ListedStep): readonly string[] {
  const tests = ({ step, box, needs }: ListedStep): readonly string[] =>
    needs.flatMap((id) => {
      const need = state.list.byId.get(id);
      const ofSameBox = step.isolation && box !== null && need?.box?.id === box.id;
      return need && ofSameBox ? [...tests(need), id] : [];
    });
  return [...new Set([...tests(listed), ...listed.needs])];
}

function answersBehind(walk: OpenWalk, listed: ListedStep, units: UnitSystem): string {
  return behind(walk, listed)
    .flatMap((id) => {
      const view = walk.state.steps.get(id);
      if (!view?.answer) return [];
      const said = saidIn(view.listed, view.answer.value, units, walk.checklist.language);
      return [`${view.listed.step.code}${said === '' ? '' : ` ${said}`} (${view.answer.name})`];
    })
    .join('. ');
}

/** What a lead's signature makes count, and how much stays not known. */
function reportedSoFar(walk: OpenWalk): string {
  const told = toldOf(walk);
  const said = walk.state.reported
    .filter(({ fact }) =>
      Object.entries(walk.checklist.facts).some(([id, { clearedBy }]) => id === fact && clearedBy.includes('lead')),
    )
    .map(({ fact, value, name }) => `${factText(walk, fact, value)} (${name})`);
  const open = openFacts(walk).length - said.length;
  return [
    said.length === 0 ? told.nothingReported : told.reportedSoFar(said.join('. ')),
    ...(open > 0 ? [told.moreNotKnown(open)] : []),
  ].join('. ');
}

/** What is closed with the list though it was not done. */
function passedOver(walk: OpenWalk): string {
  const told = toldOf(walk);
  const passed = [...walk.state.steps.values()].flatMap(({ status, listed, because, answer }) =>
    status === 'skipped' ? [`${listed.title}: ${because ?? told.noReason} (${answer?.name ?? told.nobodyNamed})`] : [],
  );
  return passed.length === 0 ? told.nonePassed : told.passed(passed.join('. '));
}
