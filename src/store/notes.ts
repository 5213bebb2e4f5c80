import type { Queries } from './queries.ts';

/** What the program keeps for itself, whichever crew it serves. */
export interface Notes {
  /**
   * Records an event by its id. True when it was recorded before: the platform sometimes delivers one twice. Ids are
   * forgotten after a day.
   */
  seenBefore(interaction: string): boolean;
  note(key: string): string | undefined;
  saveNote(key: string, value: string): void;
}

const day = 24 * 60 * 60 * 1000;
/** Forgetting at every event would be a second write each time for nothing. */
const eventsBetweenSweeps = 200;

export function notes(kept: Queries): Notes {
  let events = 0;
  const sweep = (now: string): void => {
    const before = new Date(Date.parse(now) - day).toISOString();
    kept.change('DELETE FROM seen WHERE at < @before', { before });
  };

  return {
    seenBefore: (interaction) =>
      kept.together(() => {
        const at = kept.now();
        if (events % eventsBetweenSweeps === 0) sweep(at);
        events += 1;
        return (
          kept.change('INSERT INTO seen (interaction, at) VALUES (@interaction, @at) ON CONFLICT DO NOTHING', {
            interaction,
            at,
          }) === 0
        );
      }),

    note: (key) => kept.first<{ value: string }>('SELECT value FROM notes WHERE key = @key', { key })?.value,

    saveNote(key, value) {
      kept.change(
        `INSERT INTO notes (key, value, at) VALUES (@key, @value, @at)
         ON CONFLICT (key) DO UPDATE SET value = excluded.value, at = excluded.at`,
        { key, value, at: kept.now() },
      );
    },
  };
}
