import type { FactHow } from '#interview/question.ts';
import type { OneSystem } from '#quantity/units.ts';
import { jsonText } from './json.ts';
import type { Queries } from './queries.ts';
import { needRoom } from './room.ts';
import { writableSheet } from './sheets.ts';

/** An answer to keep on a job sheet. */
export interface NewFact {
  /** The id of the question it answers. */
  readonly fact: string;
  /** What the person typed or pressed. */
  readonly typed: string;
  /** The units the crew read and wrote at the time, so that `typed` can be read again. */
  readonly units: OneSystem;
  /** What it was understood as: anything JSON can hold. */
  readonly value: unknown;
  readonly how: FactHow;
  readonly who: string;
  /** When it was so, for an answer entered late; now when left out. */
  readonly at?: Date | undefined;
}

export interface FactRow extends Omit<NewFact, 'at'> {
  readonly id: number;
  readonly at: string;
  readonly enteredAt: string;
}

export interface FactInHistory extends FactRow {
  /** Who took it back and when; `null` while it counts. */
  readonly retracted: { readonly who: string; readonly at: string } | null;
}

export interface Facts {
  /** @throws SheetTrouble when the sheet is not there, is closed, or the crew's records are full. */
  addFact(sheet: number, fact: NewFact): FactRow;
  /** All of them are kept, or none. @throws SheetTrouble when the sheet is not there, is closed, or the records are full. */
  addFacts(sheet: number, facts: readonly NewFact[]): FactRow[];
  /** What counts: for each fact id the one entered last and not taken back. */
  newestFacts(sheet: number): Map<string, FactRow>;
  /** Everything ever entered, in the order it was entered. */
  factHistory(sheet: number): FactInHistory[];
  /**
   * Takes back the fact entered last, or the last one with this id, so that the one before counts again. Asked again, it
   * goes further back.
   *
   * @returns what was taken back, or `null` when nothing is left to take back.
   * @throws SheetTrouble when the sheet is not there or is closed.
   */
  retractNewest(sheet: number, retracting: { who: string; fact?: string | undefined }): FactRow | null;
}

type Stored = Omit<FactRow, 'value'> & { readonly value: string };
type StoredInHistory = Stored & { readonly retractedBy: string | null; readonly retractedAt: string | null };

const columns = `facts.id, facts.fact, facts.typed, facts.units, facts.value, facts.how, facts.who, facts.at,
  facts.entered_at AS enteredAt`;
const uncounted =
  'LEFT JOIN retractions AS r ON r.scope = facts.scope AND r.sheet = facts.sheet AND r.fact_row = facts.id';

const read = (row: Stored): FactRow => ({ ...row, value: JSON.parse(row.value) });

export function facts(kept: Queries): Facts {
  const addFacts: Facts['addFacts'] = (sheet, added) =>
    kept.together(() => {
      writableSheet(kept, sheet);
      needRoom(kept, 'facts', { sheet, adding: added.length });
      return added.map((fact) => {
        const enteredAt = kept.now();
        const row = kept.first<Stored>(
          `INSERT INTO facts (scope, sheet, fact, typed, units, value, how, who, at, entered_at)
           VALUES (@scope, @sheet, @fact, @typed, @units, @value, @how, @who, @at, @enteredAt)
           RETURNING id, fact, typed, units, value, how, who, at, entered_at AS enteredAt`,
          { ...fact, sheet, value: jsonText(fact.value), at: fact.at?.toISOString() ?? enteredAt, enteredAt },
        );
        return read(row as Stored);
      });
    });

  return {
    addFacts,

    addFact: (sheet, fact) => addFacts(sheet, [fact])[0] as FactRow,

    newestFacts(sheet) {
      const counting = kept.all<Stored>(
        `SELECT ${columns} FROM facts WHERE facts.id IN (
           SELECT max(facts.id) FROM facts ${uncounted}
           WHERE facts.scope = @scope AND facts.sheet = @sheet AND r.id IS NULL GROUP BY facts.fact
         ) ORDER BY facts.id`,
        { sheet },
      );
      return new Map(counting.map((row) => [row.fact, read(row)]));
    },

    factHistory(sheet) {
      const rows = kept.all<StoredInHistory>(
        `SELECT ${columns}, r.who AS retractedBy, r.at AS retractedAt FROM facts ${uncounted}
         WHERE facts.scope = @scope AND facts.sheet = @sheet ORDER BY facts.id`,
        { sheet },
      );
      return rows.map(({ retractedBy: who, retractedAt: at, ...row }) => ({
        ...read(row),
        retracted: who === null || at === null ? null : { who, at },
      }));
    },

    retractNewest: (sheet, { who, fact }) =>
      kept.together(() => {
        writableSheet(kept, sheet);
        const row = kept.first<Stored>(
          `SELECT ${columns} FROM facts ${uncounted}
           WHERE facts.scope = @scope AND facts.sheet = @sheet AND r.id IS NULL AND (@fact IS NULL OR facts.fact = @fact)
           ORDER BY facts.id DESC LIMIT 1`,
          { sheet, fact: fact ?? null },
        );
        if (!row) return null;
        kept.change(
          `INSERT INTO retractions (scope, sheet, fact_row, who, at) VALUES (@scope, @sheet, @factRow, @who, @at)`,
          { sheet, factRow: row.id, who, at: kept.now() },
        );
        return read(row);
      }),
  };
}
