import type { Queries } from './queries.ts';
import { enrol } from './sheets.ts';

/** One change of a setting. */
interface SettingChange {
  /** `null` where the setting was taken away. */
  readonly value: string | null;
  readonly who: string;
  readonly at: string;
}

/** What a crew has settled for all its jobs. Every change is kept with who made it; the newest counts. */
export interface Settings {
  /** `undefined` when it never was saved, or was taken away. */
  setting(key: string): string | undefined;
  /** `null` takes the setting away. */
  saveSetting(key: string, saving: { value: string | null; who: string }): void;
  /** Every change of a setting, oldest first. */
  settingHistory(key: string): SettingChange[];
}

export function settings(kept: Queries): Settings {
  return {
    setting(key) {
      const newest = kept.first<{ value: string | null }>(
        'SELECT value FROM settings WHERE scope = @scope AND key = @key ORDER BY id DESC LIMIT 1',
        { key },
      );
      return newest?.value ?? undefined;
    },

    saveSetting: (key, { value, who }) =>
      kept.together(() => {
        enrol(kept);
        const change = { key, value, who, at: kept.now() };
        kept.change(
          'INSERT INTO settings (scope, key, value, who, at) VALUES (@scope, @key, @value, @who, @at)',
          change,
        );
      }),

    settingHistory: (key) =>
      kept.all<SettingChange>('SELECT value, who, at FROM settings WHERE scope = @scope AND key = @key ORDER BY id', {
        key,
      }),
  };
}
