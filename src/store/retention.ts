import type { Queries } from './queries.ts';
import { settings } from './settings.ts';
import { pruneTalks } from './talks.ts';

/** How long a closed job is kept. */
export interface Retention {
  /** In months after its closing; `null` keeps it for good. */
  retention(): number | null;
  saveRetention(months: number | null, saving: { who: string }): void;
  /** The closed jobs whose time is over, which the next tidying erases. */
  expiredSheets(): number[];
}

const key = 'retention-months';

/** The same day of the month, some months earlier; the last day where that month is shorter. */
function monthsBefore(moment: Date, months: number): Date {
  const earlier = new Date(moment);
  earlier.setUTCDate(1);
  earlier.setUTCMonth(earlier.getUTCMonth() - months);
  const lastDay = new Date(Date.UTC(earlier.getUTCFullYear(), earlier.getUTCMonth() + 1, 0)).getUTCDate();
  earlier.setUTCDate(Math.min(moment.getUTCDate(), lastDay));
  return earlier;
}

export function retention(kept: Queries): Retention {
  const months = (): number | null => {
    const set = Number(settings(kept).setting(key) ?? Number.NaN);
    return Number.isInteger(set) && set > 0 ? set : null;
  };

  return {
    retention: months,

    saveRetention(wanted, saving) {
      settings(kept).saveSetting(key, { value: wanted === null ? null : String(wanted), who: saving.who });
    },

    expiredSheets() {
      const wanted = months();
      if (wanted === null) return [];
      const before = monthsBefore(new Date(kept.now()), wanted).toISOString();
      return kept
        .all<{ number: number }>(
          "SELECT number FROM sheets WHERE scope = @scope AND state = 'closed' AND closed_at < @before ORDER BY number",
          { before },
        )
        .map(({ number }) => number);
    },
  };
}

/** Lets go of what a crew no longer wants kept. How many jobs and talks that were. */
export const tidyScope = (kept: Queries): { sheets: number; talks: number } =>
  kept.together(() => {
    const expired = retention(kept).expiredSheets();
    for (const sheet of expired) kept.change('DELETE FROM sheets WHERE scope = @scope AND number = @sheet', { sheet });
    return { sheets: expired.length, talks: pruneTalks(kept) };
  });
