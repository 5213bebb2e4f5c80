import { happenings, type Standing, type WalkEvent } from '#walkthrough/walk-event.ts';

const holding = (...kinds: string[]): Standing['qualifications'] =>
  kinds.map((kind) => ({ kind, number: `no. ${kind.length}`, expires: '2027-12-31', lapsed: false }));

/** A made-up crew: who each of them is on the day of the job, 1 March 2027. */
export const crew = {
  lead: { name: 'Ana', kinds: ['lead'], qualifications: [] },
  apprentice: { name: 'Ben', kinds: ['apprentice'], qualifications: [] },
  qualified: { name: 'Cleo', kinds: ['lead'], qualifications: holding('electrically-qualified') },
  electrician: { name: 'Dov', kinds: [], qualifications: holding('electrically-qualified', 'licensed-electrician') },
  renovator: { name: 'Eva', kinds: [], qualifications: holding('certified-renovator') },
  tester: { name: 'Finn', kinds: [], qualifications: holding('combustion-tester') },
  office: { name: 'Gus', kinds: ['office'], qualifications: [] },
  stranger: { name: null, kinds: [], qualifications: [] },
  /** Everything but the last day. */
  expired: {
    name: 'Hal',
    kinds: [],
    qualifications: holding('electrically-qualified', 'licensed-electrician').map((each) => ({
      ...each,
      expires: '2027-02-28',
    })),
  },
  /** A card nobody has seen. */
  unseen: {
    name: 'Ida',
    kinds: [],
    qualifications: holding('licensed-electrician').map((each) => ({ ...each, number: '' })),
  },
  /** An apprentice with every card there is stays an apprentice. */
  carded: {
    name: 'Jo',
    kinds: ['apprentice', 'lead'],
    qualifications: holding(
      'electrically-qualified',
      'licensed-electrician',
      'certified-renovator',
      'combustion-tester',
    ),
  },
} as const satisfies Record<string, Standing>;

export type Role = keyof typeof crew;
export const roles = Object.keys(crew) as readonly Role[];

/** The person named by a role, on site or not. */
export const person = (role: Role) => ({ who: role, name: crew[role].name ?? role });

const start = Date.parse('2027-03-01T13:00:00Z');

/** Seconds into the job as an instant. */
export const instant = (seconds: number): string => new Date(start + seconds * 1000).toISOString();

/** An event as the records would hold it. */
export function event(
  id: string,
  role: Role,
  seconds: number,
  rest: Pick<WalkEvent, 'what' | 'step'> & { readonly value?: unknown; readonly at?: number },
): WalkEvent {
  const { what, step, value = null, at = seconds } = rest;
  return { id, step, what, value, who: role, standing: crew[role], at: instant(at), enteredAt: instant(seconds) };
}

export { happenings };
