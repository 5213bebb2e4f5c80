import type { Verdict } from '#walkthrough/judgement.ts';
import type { ListedStep } from '#walkthrough/listed-step.ts';
import { recordOf, type Walk } from '#walkthrough/walk.ts';
import type { WalkEvent } from '#walkthrough/walk-event.ts';

const chain = [
  'prove-tester-before',
  'test-dead-controls-on',
  'test-dead-controls-off',
  'prove-tester-after',
  'sign-dead',
];
const endsProofs = ['lock-off', 'power-on'];
const beforeAnyBox = ['find-breaker', 'lock-on', 'breaker-locked'];
const hour = 3_600_000;

export interface SecondOpinion {
  readonly complaints: readonly string[];
  /** Looks at one event, and at the walk as it stood just before it. */
  readonly watch: (before: Walk, event: WalkEvent, verdict: Verdict) => void;
}

/**
 * A second opinion on what may count, reckoned from the accepted events alone and from the names of the steps, without any
 * of the code it watches. Hours and limits are written out here on purpose.
 */
export function secondOpinion(): SecondOpinion {
  const complaints: string[] = [];
  /** How far the proof of each box has got: 0 nothing … 5 signed dead. */
  const proofs = new Map<string, { links: number; signed: number }>();
  const signedHolds = new Set<string>();
  let lastOnSite: number | null = null;
  let today = '';

  const complain = ({ id, who, what }: WalkEvent, says: string) => complaints.push(`${id} (${who}, ${what}): ${says}`);

  function passTime(now: number, day: string): void {
    const quiet = lastOnSite !== null && now - lastOnSite > hour;
    if (quiet || (today !== '' && day !== today)) proofs.clear();
    today = day;
    for (const [box, { signed, links }] of proofs) if (links === 5 && now - signed > 4 * hour) proofs.delete(box);
  }

  function behindHolds(walk: Walk, { id, index }: ListedStep, event: WalkEvent): void {
    for (const hold of walk.list.steps) {
      if (!hold.step.hold || hold.index >= index || signedHolds.has(hold.id)) continue;
      complain(event, `${id} got past ${hold.id}`);
    }
  }

  function mayClose(walk: Walk, listed: ListedStep, event: WalkEvent): void {
    const { id, step, touches } = listed;
    for (const box of touches) {
      if (proofs.get(box)?.links !== 5) complain(event, `${id} touched ${box}, which is not proven dead`);
    }
    behindHolds(walk, listed, event);
    const { kinds, qualifications } = event.standing;
    const day = event.enteredAt.slice(0, 10);
    const cards = qualifications.filter((card) => card.number !== '' && card.expires >= day);
    if (step.hold && kinds.includes('apprentice')) complain(event, `an apprentice signed ${id}`);
    if (kinds.length === 0 && cards.length === 0) complain(event, `somebody without any standing closed ${id}`);
    if (step.hold && !kinds.includes('lead') && cards.length === 0) complain(event, `${id} was signed on nothing`);
    if (!step.closes) return;
    const open = walk.list.steps.filter((each) => each.step.hold && !each.step.closes && !signedHolds.has(each.id));
    if (open.length > 0) complain(event, `closed with ${open[0]?.id} open`);
  }

  function closed(walk: Walk, listed: ListedStep, event: WalkEvent): void {
    mayClose(walk, listed, event);
    const { step, id, box } = listed;
    if (step.hold) signedHolds.add(id);
    const link = chain.indexOf(step.id);
    if (box && link >= 0) {
      if ((proofs.get(box.id)?.links ?? 0) < link) complain(event, `${id} came before what proves it`);
      proofs.set(box.id, { links: link + 1, signed: Date.parse(event.enteredAt) });
    }
    if (endsProofs.includes(step.id)) proofs.clear();
  }

  function takenBack({ id, step, box }: ListedStep): void {
    signedHolds.delete(id);
    if ([...endsProofs, ...beforeAnyBox].includes(step.id)) proofs.clear();
    if (box && (chain.includes(step.id) || step.id === 'open-cover')) proofs.delete(box.id);
  }

  function passedOver(walk: Walk, listed: ListedStep, event: WalkEvent): void {
    const { id, step } = listed;
    if (step.risk !== 'none' || step.hold || step.touches.length > 0) complain(event, `${id} was passed over`);
    const { kinds } = event.standing;
    if (!kinds.includes('lead') || kinds.includes('apprentice')) complain(event, `${id} was passed over by no lead`);
    behindHolds(walk, listed, event);
  }

  return {
    complaints,
    watch(before, event, verdict) {
      const now = Date.parse(event.enteredAt);
      passTime(now, event.enteredAt.slice(0, 10));
      if (!('accepted' in verdict) || before.seen.has(event.id)) return;
      const listed = event.step === null ? undefined : before.list.byId.get(event.step);
      if (listed && (event.what === 'done' || event.what === 'signed')) {
        if (!verdict.closes) takenBack(listed);
        else if (!saidAlready(before, listed, event)) closed(before, listed, event);
      }
      if (listed && event.what === 'overridden') passedOver(before, listed, event);
      if (listed && event.what === 'undone') takenBack(listed);
      const wasThere = before.people.some(({ who }) => who === event.who);
      if (event.what === 'paused' || (event.what === 'joined' && !wasThere)) proofs.clear();
      if (wasThere || event.what === 'joined') lastOnSite = now;
    },
  };
}

function saidAlready(walk: Walk, { id }: ListedStep, event: WalkEvent): boolean {
  const { status, answer } = recordOf(walk, id);
  return status === 'closed' && JSON.stringify(answer?.value) === JSON.stringify(event.value ?? {});
}
