import type { Citation } from '#knowledge/sources.ts';

/** Every citation once, in the order first met. */
export function citations(...all: readonly (Citation | undefined)[]): readonly Citation[] {
  const seen = new Map<string, Citation>();
  for (const each of all) {
    if (each) seen.set(`${each.source} ${each.where ?? ''}`, seen.get(`${each.source} ${each.where ?? ''}`) ?? each);
  }
  return [...seen.values()];
}
