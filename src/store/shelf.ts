import type { OneSystem } from '#quantity/units.ts';
import { jsonText } from './json.ts';
import { containing, folded, tidied } from './names.ts';
import type { Queries } from './queries.ts';
import { hasRoom } from './room.ts';
import { enrol } from './sheets.ts';

/** A fan to put on the shelf. */
export interface NewShelfFan {
  readonly name: string;
  /** What its label says: for each question it answers, the answer as typed. */
  readonly label: Readonly<Record<string, string>>;
  /** The units the label was typed in, so that it can be read again. */
  readonly units: OneSystem;
  /** Invented, to try things with; it stands for no fan that can be bought. */
  readonly demo: boolean;
}

interface ShelfFan extends NewShelfFan {
  readonly who: string;
  readonly at: string;
}

/** The crew's own fans. Every change is kept with who made it; the newest of a name counts. */
export interface Shelf {
  /** By its name in any letters. */
  shelfFan(name: string): ShelfFan | undefined;
  /** In the order of their names; `search` is part of a name, in any letters. */
  shelfFans(wanted?: { search?: string | undefined; limit?: number | undefined }): ShelfFan[];
  /** All of them or none, each in place of one of the same name. False, and nothing is kept, when the records are full. */
  saveShelfFans(fans: readonly NewShelfFan[], saving: { who: string }): boolean;
  /** False when there is no such fan. */
  removeShelfFan(name: string, removing: { who: string }): boolean;
}

type Stored = Omit<ShelfFan, 'label' | 'demo'> & { readonly label: string; readonly demo: number };

const read = ({ label, demo, ...row }: Stored): ShelfFan => ({ ...row, label: JSON.parse(label), demo: demo === 1 });

const key = (name: string): string => folded(tidied(name));

export function shelf(kept: Queries): Shelf {
  const columns = 'f.name, f.label, f.units, f.demo, f.who, f.at';
  const newest = `FROM shelf_fans AS f WHERE f.scope = @scope AND f.label IS NOT NULL AND f.id =
    (SELECT max(id) FROM shelf_fans WHERE scope = @scope AND name_folded = f.name_folded)`;

  const shelfFan: Shelf['shelfFan'] = (name) => {
    const row = kept.first<Stored>(`SELECT ${columns} ${newest} AND f.name_folded = @key`, { key: key(name) });
    return row && read(row);
  };

  const append = (fan: Omit<NewShelfFan, 'label'> & { label: string | null }, who: string): void => {
    const name = tidied(fan.name);
    kept.change(
      `INSERT INTO shelf_fans (scope, name, name_folded, label, units, demo, who, at)
       VALUES (@scope, @name, @key, @label, @units, @demo, @who, @at)`,
      { ...fan, name, key: key(name), demo: Number(fan.demo), who, at: kept.now() },
    );
  };

  return {
    shelfFan,

    shelfFans({ search = '', limit = 1000 } = {}) {
      const part = key(search);
      return kept
        .all<Stored>(
          `SELECT ${columns} ${newest} AND (@part IS NULL OR f.name_folded LIKE @part ESCAPE '\\')
           ORDER BY f.name_folded LIMIT @limit`,
          { part: part === '' ? null : containing(part), limit: Math.max(0, Math.floor(limit)) },
        )
        .map(read);
    },

    saveShelfFans: (fans, { who }) =>
      kept.together(() => {
        if (!hasRoom(kept, 'shelf_fans', fans.length)) return false;
        enrol(kept);
        for (const fan of fans) append({ ...fan, label: jsonText(fan.label) }, who);
        return true;
      }),

    removeShelfFan: (name, { who }) =>
      kept.together(() => {
        const fan = shelfFan(name);
        if (!fan) return false;
        append({ ...fan, label: null }, who);
        return true;
      }),
  };
}
