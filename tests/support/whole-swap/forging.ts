import type { ChecklistStep } from '#knowledge/checklist.ts';
import type { Person } from '../stand-in/person.ts';
import { honestCrew } from './demo-job.ts';
import { type DiscordSight, discordPlace } from './discord-place.ts';

/** A press offered to a lead for a hold, or one made up after it. */
export interface Forged {
  readonly id: string;
  readonly sight: DiscordSight;
  readonly step: ChecklistStep;
}

const signing = /:do:swap:sign:/;

/** Anybody may stop a job, so the presses that do are none of a forger's. */
const stops = ({ evidence }: ChecklistStep, id: string): boolean =>
  evidence.some(
    (part) =>
      part.kind === 'choice' &&
      part.options.some((option) => option.stops !== undefined && id.endsWith(`:value=${option.id}`)),
  );

/** What a forger tries on a page that offers a hold to a lead: each press as it is, ticked, passed over, and confirmed. */
export const forgedFrom = (sight: DiscordSight, step: ChecklistStep): readonly Forged[] =>
  (sight.message?.buttons ?? [])
    .flatMap(({ customId }) => (customId && signing.test(customId) && !stops(step, customId) ? [customId] : []))
    .flatMap((id) => [
      id,
      id.replace(signing, ':do:swap:done:'),
      `${id.replace(signing, ':do:swap:override:').replace(/:value=[^:]*/, '')}:reason=hurry`,
      `${id}:confirm=yes`,
    ])
    .filter((id) => id.length <= 100)
    .map((id) => ({ id, sight, step }));

/** Presses what was forged as somebody else, answers whatever form comes up, and says what of it was not refused. */
export async function notRefused(forger: Person, forged: readonly Forged[]): Promise<readonly string[]> {
  const who = `<@${forger.id}>`;
  const place = discordPlace(new Map([[who, forger]]), (_, answer) => answer);
  const taken: string[] = [];
  for (const { id, sight, step } of forged) {
    const first = await place.pressRaw(who, sight, id);
    const last = first.form ? await place.fill(who, first, honestCrew().fill(step, first.form)) : first;
    if (!last.refused) taken.push(`${id}: ${last.text}`);
  }
  return taken;
}
