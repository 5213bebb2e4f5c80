import { isImported } from './imported.ts';
import { jsonText } from './json.ts';
import type { Queries } from './queries.ts';
import { hasRoom } from './room.ts';
import { settings } from './settings.ts';
import { enrol } from './sheets.ts';

type MemberKind = 'lead' | 'apprentice' | 'office';

type QualificationKind =
  | 'electrically-qualified'
  | 'licensed-electrician'
  | 'certified-renovator'
  | 'combustion-tester';

/** What a person may do by training or by law, as opposed to what the crew calls them. */
interface Qualification {
  readonly kind: QualificationKind;
  /** Of the licence, the certificate or the training record. */
  readonly number: string;
  /** The last day it holds, such as 2027-03-31. */
  readonly expires: string;
}

/** What somebody is in the crew at one moment, as a signature rests on it. A stranger is nothing and may do nothing. */
export interface Standing {
  readonly name: string | null;
  readonly kinds: readonly MemberKind[];
  /** `lapsed`: its last day was over. */
  readonly qualifications: readonly (Qualification & { readonly lapsed: boolean })[];
}

interface Member extends Standing {
  /** As events name the person: a mention, or a name in the terminal. */
  readonly who: string;
  readonly name: string;
  readonly enteredBy: string;
  readonly at: string;
}

export interface NewMember {
  readonly who: string;
  readonly name: string;
  readonly kinds: readonly MemberKind[];
  readonly qualifications: readonly Qualification[];
}

export interface Members {
  member(who: string): Member | undefined;
  /** In the order of their names. */
  members(): Member[];
  /** In place of what was kept about the person. False, and nothing is kept, when the crew's records are full. */
  saveMember(member: NewMember, saving: { who: string }): boolean;
  /** False when there is no such member. */
  removeMember(who: string, removing: { who: string }): boolean;
  /** What somebody is and may do at this moment. */
  standing(who: string): Standing;
}

type Stored = { readonly who: string; readonly entry: string; readonly enteredBy: string; readonly at: string };

/** The day at a moment, in a time zone: 2027-03-31. */
function dayIn(timeZone: string, moment: Date): string {
  const parts = new Intl.DateTimeFormat('en', {
    timeZone,
    calendar: 'gregory',
    numberingSystem: 'latn',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  }).formatToParts(moment);
  const part = (type: string) => parts.find((each) => each.type === type)?.value ?? '';
  return `${part('year')}-${part('month')}-${part('day')}`;
}

/** Where a day begins first on earth. */
const earliest = 'Pacific/Kiritimati';

/**
 * The day it is where the crew works. Where nobody has said, or this machine does not know the zone, it is the day that
 * begins first on earth: a qualification rather ends a day early than holds a day too long.
 */
function today(kept: Queries): string {
  const now = new Date(kept.now());
  try {
    return dayIn(settings(kept).setting('time-zone') ?? earliest, now);
  } catch (error) {
    if (error instanceof RangeError) return dayIn(earliest, now);
    throw error;
  }
}

export function members(kept: Queries): Members {
  const newest = `FROM crew_members AS m WHERE m.scope = @scope AND m.entry IS NOT NULL AND m.id =
    (SELECT max(id) FROM crew_members WHERE scope = @scope AND who = m.who)`;
  const columns = 'm.who, m.entry, m.entered_by AS enteredBy, m.at';

  const read = ({ entry, ...row }: Stored): Member => {
    const day = today(kept);
    const { name, kinds, qualifications } = JSON.parse(entry) as Omit<NewMember, 'who'>;
    return {
      ...row,
      name,
      kinds,
      qualifications: qualifications.map((each) => ({ ...each, lapsed: each.expires < day })),
    };
  };

  const member: Members['member'] = (who) => {
    const row = kept.first<Stored>(`SELECT ${columns} ${newest} AND m.who = @person`, { person: who });
    return row && read(row);
  };

  const append = (person: string, entry: string | null, by: string): void => {
    kept.change(
      'INSERT INTO crew_members (scope, who, entry, entered_by, at) VALUES (@scope, @person, @entry, @by, @at)',
      { person, entry, by, at: kept.now() },
    );
  };

  return {
    member,

    members: () =>
      kept
        .all<Stored>(`SELECT ${columns} ${newest}`)
        .map(read)
        .sort((one, other) => one.name.localeCompare(other.name, 'en') || (one.who < other.who ? -1 : 1)),

    saveMember: ({ who, ...entry }, saving) =>
      kept.together(() => {
        if (!hasRoom(kept, 'crew_members', 1)) return false;
        enrol(kept);
        append(who, jsonText(entry), saving.who);
        return true;
      }),

    removeMember: (who, removing) =>
      kept.together(() => {
        if (!member(who)) return false;
        append(who, null, removing.who);
        return true;
      }),

    standing(who) {
      // A file says what it likes: whoever it names is nobody here, even where a member is called so.
      const known = isImported(who) ? undefined : member(who);
      const { name, kinds, qualifications } = known ?? { name: null, kinds: [], qualifications: [] };
      return { name, kinds, qualifications };
    },
  };
}
