import type { Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { eitherOf, isLead } from '#walkthrough/signing.ts';
import { remark } from './plain-replies.ts';
import { kept, type Scene } from './swap-answering.ts';
import { stepKey } from './swap-steps.ts';
import { tokenOf } from './swap-walk.ts';

const mostNames = 5;

/** Notes that somebody cannot go on at a step, and says who can help and what may be done. */
export function stuckAt(desk: Desk, at: Scene, listed: ListedStep, says: string | undefined): Reply {
  const { walk, walker } = at;
  if (says === undefined || says.trim() === '') {
    return {
      headline: `What keeps you at ${listed.title}?`,
      findings: [],
      asks: {
        title: `Stuck: ${listed.title}`,
        command: 'swap',
        action: 'stuck',
        given: { job: tokenOf(walk), step: stepKey(listed), ...(walker.as ? { as: walker.as } : {}) },
        fields: [{ id: 'says', label: 'What keeps you', accepts: 'in a few words', optional: false }],
      },
    };
  }
  const entry = { what: 'noted', step: listed, value: { says: `Stuck: ${says.trim()}` } };
  const reply = kept(desk, at, entry, `Noted, and in the status: stuck at ${listed.title}`);
  if (reply.refused) return reply;
  return { ...reply, findings: [...reply.findings, remark('who-can-help', 'advice', helpSays(desk, walk, listed))] };
}

function helpSays(desk: Desk, { state }: Scene['walk'], { signers, step }: ListedStep): string {
  const leads = desk.store
    .members()
    .filter(({ who }) => isLead(desk.store.standing(who)))
    .map(({ name }) => name)
    .slice(0, mostNames);
  const call = leads.length > 0 ? `Ask a lead: ${leads.join(', ')}.` : 'The crew has no lead on its roster yet.';
  const who = signers.includes('anyone') ? '' : ` It takes ${eitherOf(signers, state.list.checklist.words.signers)}.`;
  const passes = step.overridable
    ? 'A lead may pass it over with a reason: /swap override.'
    : 'It cannot be passed over: it is done, or the job stops. Stopping is always right when in doubt.';
  return `${call}${who} ${passes}`;
}
