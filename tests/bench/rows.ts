/** One line of the table: what was measured, what came out, and what it should be. */
export interface Row {
  readonly what: string;
  readonly measured: string;
  /** Absent where nothing is aimed at and the figure is only for the record. */
  readonly aim?: { readonly says: string; readonly met: boolean };
}

/** A part of the bench. Each measures one thing and gives its rows. */
export interface Section {
  readonly title: string;
  /** Takes minutes: measured only when it is named, or with `--long`. */
  readonly long?: true;
  measure(): Promise<readonly Row[]>;
}

/** The value below which a share of the values lies. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** Rows as text, in columns. */
export function table(rows: readonly Row[]): string {
  const lines = rows.map(({ what, measured, aim }) => [
    what,
    measured,
    aim === undefined ? '' : `${aim.met ? 'met' : 'MISSED'}, aim ${aim.says}`,
  ]);
  const widths = [0, 1].map((column) => Math.max(...lines.map((line) => line[column]?.length ?? 0)));
  return lines
    .map((line) =>
      line
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join('   ')
        .trimEnd(),
    )
    .map((line) => `  ${line}`)
    .join('\n');
}
