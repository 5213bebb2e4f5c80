/** Somebody who does things in any order, one at a time. */
export interface Walker {
  /** Does one thing, and says what it was and everything wrong with what came of it. */
  step(): Promise<{ readonly did: string; readonly problems: readonly string[] }>;
  /** Leaves; what was sent away unfinished is finished first. */
  close(): Promise<void>;
}

/** How many of the latest steps are told of when something is wrong. */
const remembered = 12;

/** Walks so many steps, or until it is enough. Gives everything wrong, with the steps that led there. */
export async function walked(
  walker: Walker,
  isEnough: (steps: number) => boolean,
): Promise<{ readonly steps: number; readonly problems: readonly string[] }> {
  const trail: string[] = [];
  const found: string[] = [];
  let steps = 0;
  while (!isEnough(steps)) {
    steps += 1;
    try {
      const { did, problems } = await walker.step();
      trail.push(did);
      found.push(...problems.map((problem) => told(problem, trail)));
    } catch (error) {
      found.push(told(error instanceof Error ? (error.stack ?? error.message) : String(error), trail));
    }
  }
  return { steps, problems: found };
}

const told = (problem: string, trail: readonly string[]): string =>
  [problem, ...trail.slice(-remembered).map((did) => `   after ${did}`)].join('\n');
