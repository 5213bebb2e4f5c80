import type { Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { eitherOf, isLead } from '#walkthrough/signing.ts';
import { remark } from './plain-replies.ts';
import { kept, type Scene } from './swap-answering.ts';
import { stepKey } from './swap-steps.ts';
import { tokenOf, toldOf } from './swap-walk.ts';

const mostNames = 5;

/** Notes that somebody cannot go on at a step, and says who can help and what may be done. */
export function stuckAt(desk: Desk, at: Scene, listed: ListedStep, says: string | undefined): Reply {
  const { walk, walker } = at;
  const told = toldOf(walk);
  if (says === undefined || says.trim() === '') {
    return {
      headline: told.whatKeepsYouAt(listed.title),
      findings: [],
      asks: {
        title: told.stuckAt(listed.title),
        command: 'swap',
        action: 'stuck',
        given: { job: tokenOf(walk), step: stepKey(listed), ...(walker.as ? { as: walker.as } : {}) },
        fields: [{ id: 'says', label: told.whatKeepsYou, accepts: told.inFewWords, optional: false }],
      },
    };
  }
  const entry = { what: 'noted', step: listed, value: { says: told.stuckNote(says.trim()) } };
  const reply = kept(desk, at, entry, told.stuckNoted(listed.title));
  if (reply.refused) return reply;
  return { ...reply, findings: [...reply.findings, remark('who-can-help', 'advice', helpSays(desk, walk, listed))] };
}

function helpSays(desk: Desk, walk: Scene['walk'], { signers, step }: ListedStep): string {
  const told = toldOf(walk);
  const leads = desk.store
    .members()
    .filter(({ who }) => isLead(desk.store.standing(who)))
    .map(({ name }) => name)
    .slice(0, mostNames);
  const call = leads.length > 0 ? told.askLead(leads.join(', ')) : told.noLead;
  const who = signers.includes('anyone') ? '' : told.itTakes(eitherOf(signers, walk.checklist));
  const passes = step.overridable ? told.leadMayPass : told.cannotPass;
  return [call, who, passes].filter((says) => says !== '').join(' ');
}
