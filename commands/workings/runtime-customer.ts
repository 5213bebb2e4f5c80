import { runTimeAdvice } from '#engine/moisture/run-time-advice.ts';
import type { Finding } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { moistureMethods, runTimeSteps } from '#knowledge/moisture.ts';
import { minutes } from '#quantity/kinds.ts';
import type { Seconds } from '#quantity/units.ts';
import { citations } from './citations.ts';
import type { FollowedRoom } from './runtime-working.ts';

/** "25 minutes", as it is said aloud. */
const spoken = (time: Seconds, units: UnitSystem): string =>
  minutes
    .showShort(time, units)
    .replace(/\bmin$/, 'minutes')
    .replace(/^1 h$/, 'an hour');

/** The run time as it is read out to the customer. The door is spoken of as on the page for the occupant. */
export function customerFinding({ result }: FollowedRoom, units: UnitSystem): Finding {
  const advice = runTimeAdvice(result.fanMayStop, runTimeSteps);
  const says = {
    run: () =>
      `leave the fan on for ${spoken(advice.kind === 'run' ? advice.for : runTimeSteps.least, units)} after each shower, with the bathroom door shut and the gap under it clear: that gap is where the fresh air comes in.`,
    'more air': () =>
      'leave the fan on for more than an hour after each shower for now, with the bathroom door shut and the gap under it clear; the fan seems to move too little air, and we come back to you about that.',
    never: () =>
      advice.kind === 'never' && advice.why === 'house air too humid'
        ? 'the air of the whole house is too damp for any bathroom fan to dry the room with; air or dry the house first, and wipe the walls after each shower.'
        : 'the fan moves no air; wipe the walls and mop the floor after each shower, and we come back to you about it.',
  };
  return {
    id: 'tell-customer',
    weight: 'advice',
    says: `Tell the customer: ${says[advice.kind]()}`,
    working: [],
    sources: citations(moistureMethods['run-time'].citation),
  };
}
