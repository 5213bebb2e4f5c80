import { cardsOfLead, lastDay } from './demo-job.ts';
import type { Place, Sight } from './sight.ts';

/** The lead and the apprentice, as the place they work in names them. */
export interface Crew {
  readonly lead: string;
  readonly apprentice: string;
}

/** Takes both into the crew, the lead with every card, and opens the demo job. */
export async function hired<Seen extends Sight>(place: Place<Seen>, { lead, apprentice }: Crew): Promise<void> {
  await place.type(lead, 'crew add', { person: lead, as: 'lead', name: 'Ann' });
  await place.type(lead, 'crew add', { person: apprentice, as: 'apprentice', name: 'Ben' });
  for (const [what, number] of cardsOfLead) {
    await place.type(lead, 'crew qualify', { person: lead, what, number, expires: lastDay });
  }
  await place.type(lead, 'job open', { name: '1 Demo Lane (invented)' });
}
