import { randomBytes } from 'node:crypto';
import type { Queries } from './queries.ts';
import { hasRoom, needRoom } from './room.ts';
import { existingSheet } from './sheets.ts';

/** A conversation in progress, kept so that its buttons still work after a restart. */
export interface Talk {
  /** Ten small letters and digits, not to be guessed; safe inside the id of a button. */
  readonly id: string;
  readonly channel: string;
  readonly sheet: number;
  readonly command: string;
  readonly who: string;
  /** JSON text that only the conversation understands. */
  readonly state: string;
  /** 0 at the start; goes up by one with every save. */
  readonly revision: number;
  readonly startedAt: string;
  readonly savedAt: string;
  /** Set once it is over; a button that still points here is out of date. */
  readonly endedAt: string | null;
}

export interface Talks {
  /** Where there is no room, lets go of talks that are long over first. @throws SheetTrouble when the sheet is not there or the records are full. */
  startTalk(starting: { channel: string; sheet: number; command: string; who: string; state: string }): Talk;
  /** Talks that have ended are found too. */
  talk(id: string): Talk | undefined;
  /** False, and nothing is kept, when the talk is over or was saved since `revision` was read. */
  saveTalk(id: string, saving: { revision: number; state: string }): boolean;
  /** False when it was over already or is not there. */
  endTalk(id: string): boolean;
  /** The talk a person touched last in a channel, if one is still going. */
  latestTalk(looking: { channel: string; who: string }): Talk | undefined;
}

const columns = `id, channel, sheet, command, who, state, revision, started_at AS startedAt, saved_at AS savedAt,
  ended_at AS endedAt`;
const nextTurn = '(SELECT coalesce(max(turn), 0) + 1 FROM talks WHERE scope = @scope)';

/** No i, l, o or u: an id read aloud or copied by hand comes out right, and spells nothing. */
const letters = '0123456789abcdefghjkmnpqrstvwxyz';

const freshId = (): string => [...randomBytes(10)].map((byte) => letters[byte % letters.length]).join('');

const day = 24 * 60 * 60 * 1000;
/** How long a talk can explain itself once it is over, and how long one is waited for that nobody goes on with. */
const daysKept = { ended: 30, leftAlone: 180 } as const;

/** Deletes the talks that are long over; what was answered in them stays on the sheets. How many they were. */
export function pruneTalks(kept: Queries): number {
  const daysAgo = (days: number) => new Date(Date.parse(kept.now()) - days * day).toISOString();
  return kept.change('DELETE FROM talks WHERE scope = @scope AND (ended_at < @ended OR saved_at < @leftAlone)', {
    ended: daysAgo(daysKept.ended),
    leftAlone: daysAgo(daysKept.leftAlone),
  });
}

export function talks(kept: Queries): Talks {
  const talk = (id: string): Talk | undefined =>
    kept.first<Talk>(`SELECT ${columns} FROM talks WHERE scope = @scope AND id = @id`, { id });

  return {
    startTalk: (starting) =>
      kept.together(() => {
        existingSheet(kept, starting.sheet);
        if (!hasRoom(kept, 'talks', 1)) pruneTalks(kept);
        needRoom(kept, 'talks', { sheet: starting.sheet, adding: 1 });
        const id = freshId();
        const at = kept.now();
        kept.change(
          `INSERT INTO talks (id, scope, channel, sheet, command, who, state, revision, turn, started_at, saved_at)
           VALUES (@id, @scope, @channel, @sheet, @command, @who, @state, 0, ${nextTurn}, @at, @at)`,
          { ...starting, id, at },
        );
        return { ...starting, id, revision: 0, startedAt: at, savedAt: at, endedAt: null };
      }),

    talk,

    saveTalk: (id, { revision, state }) =>
      kept.change(
        `UPDATE talks SET state = @state, revision = revision + 1, turn = ${nextTurn}, saved_at = @at
         WHERE scope = @scope AND id = @id AND revision = @revision AND ended_at IS NULL`,
        { id, revision, state, at: kept.now() },
      ) === 1,

    endTalk: (id) =>
      kept.change('UPDATE talks SET ended_at = @at WHERE scope = @scope AND id = @id AND ended_at IS NULL', {
        id,
        at: kept.now(),
      }) === 1,

    latestTalk: ({ channel, who }) =>
      kept.first<Talk>(
        `SELECT ${columns} FROM talks
         WHERE scope = @scope AND channel = @channel AND who = @who AND ended_at IS NULL ORDER BY turn DESC LIMIT 1`,
        { channel, who },
      ),
  };
}
