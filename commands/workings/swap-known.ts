import type { Desk } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { FormOffer, Reply } from '#findings/reply.ts';
import { plain } from '#interview/words.ts';
import type { WalkFactId } from '#knowledge/checklist-facts.ts';
import { remark } from './plain-replies.ts';
import type { Given, Scene } from './swap-answering.ts';
import { allOrNothing, enter, refusedReply } from './swap-entering.ts';
import { factText, openFacts, whoClears } from './swap-facts.ts';
import { nextPage } from './swap-page.ts';
import { type OpenWalk, tokenOf, toldOf, type Walker } from './swap-walk.ts';

/** A form holds five. */
const mostAsked = 5;

/** The few questions that take most off the list, or put most on it. What is left out stays not known. */
function formOf(walk: OpenWalk, walker: Walker, facts: readonly WalkFactId[]): FormOffer {
  return {
    title: toldOf(walk).knownOfJob,
    command: 'swap',
    action: 'known',
    given: { job: tokenOf(walk), ...(walker.as ? { as: walker.as } : {}) },
    fields: facts.slice(0, mostAsked).map((fact) => ({
      id: `fact-${fact}`,
      label: walk.checklist.facts[fact].prompt.replace(/^¿|\?$/g, ''),
      accepts: walk.checklist.facts[fact].whenUnknown,
      optional: true,
      choices: optionsOf(walk, fact),
    })),
  };
}

const optionsOf = (walk: OpenWalk, fact: WalkFactId) => [
  ...walk.checklist.facts[fact].options.map(({ id, label }) => ({ id, label })),
  { id: 'unknown', label: toldOf(walk).notKnown },
];

/** The answer meant, by its id or as it is shown. What is neither is handed on, so that the list says what would do. */
const valueMeant = (walk: OpenWalk, fact: WalkFactId, said: string): string =>
  optionsOf(walk, fact).find(({ id, label }) => id === said.trim() || plain(label) === plain(said))?.id ?? said.trim();

/** Asks the few facts that decide the list, and records what is said of them by the name of whoever says it. */
export function knownReply(desk: Desk, at: Scene, given: Given): Reply {
  const open = openFacts(at.walk);
  const words = toldOf(at.walk);
  const said = (Object.keys(at.walk.checklist.facts) as WalkFactId[]).flatMap((fact) => {
    const value = given[`fact-${fact}`];
    return value === undefined || value.trim() === '' ? [] : [{ fact, value: valueMeant(at.walk, fact, value) }];
  });
  if (said.length === 0) {
    if (open.length === 0) return nextPage(desk, at, [remark('all-known', 'good', words.allKnown)]);
    return {
      headline: words.sayOrLeave,
      findings: [],
      asks: formOf(at.walk, at.walker, open),
    };
  }
  return allOrNothing(desk, () => {
    let { walk } = at;
    const told: Finding[] = [];
    for (const value of said) {
      const entry = { what: 'fact', step: null, value, shownAt: at.shownAt };
      const entered = enter(desk, walk, at.walker, entry);
      if ('refused' in entered) return refusedReply(entered.refused);
      walk = entered.walk;
      const counts = entered.says === null;
      const said = factText(walk, value.fact, value.value);
      const heard = counts ? words.factRecorded(said) : words.factReported(said, whoClears(walk, value.fact));
      told.push(remark('fact', counts ? 'good' : 'advice', heard));
    }
    return nextPage(desk, { walk, walker: at.walker }, told);
  });
}
