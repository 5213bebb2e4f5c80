/**
 * What people typed that was not understood, so that it can be mended in the next form. Kept only while the program runs and
 * only the latest: losing it costs a person some typing and nothing else.
 */
export interface TypedBefore {
  of(talk: string): Readonly<Record<string, string>>;
  keep(talk: string, typed: Readonly<Record<string, string>>): void;
}

export function typedBefore(most = 500): TypedBefore {
  const kept = new Map<string, Readonly<Record<string, string>>>();
  return {
    of: (talk) => kept.get(talk) ?? {},
    keep(talk, typed) {
      kept.delete(talk);
      if (Object.keys(typed).length > 0) kept.set(talk, typed);
      const [oldest] = kept.keys();
      if (kept.size > most && oldest !== undefined) kept.delete(oldest);
    },
  };
}
