import type { Store } from '#store/store.ts';
import { type BackupPlan, backUpInto, isDue } from './backups.ts';

/** Tells whoever runs the program what was done or went wrong. */
export type Report = (
  level: 'info' | 'warn' | 'error',
  what: string,
  fields?: Readonly<Record<string, string | number>>,
) => void;

/** Calls again and again. @returns stops it. */
export type Every = (milliseconds: number, work: () => void) => () => void;

/** By the clock of the machine, without keeping the program from ending. */
export const everyByTheClock: Every = (milliseconds, work) => {
  const timer = setInterval(work, milliseconds);
  timer.unref();
  return () => clearInterval(timer);
};

interface Given {
  readonly store: Pick<Store, 'backup' | 'tidy'>;
  readonly plan: BackupPlan;
  readonly report: Report;
  readonly now?: () => Date;
  readonly every?: Every;
}

const hour = 3_600_000;
const hoursBetweenTidyings = 24;

/**
 * Looks after the records while the program runs: a backup whenever one is due, and once a day what the crews want kept no
 * longer is erased. It looks at the clock at once and then every hour, so a machine that slept makes up for it. What fails
 * is reported and tried again an hour later.
 */
export function upkeep({ store, plan, report, now = () => new Date(), every = everyByTheClock }: Given) {
  let underWay: Promise<void> = Promise.resolve();
  let tidied = now().getTime();

  const backUpIfDue = async (): Promise<void> => {
    if (!isDue(plan, now())) return;
    const file = await backUpInto(plan, (to) => store.backup(to), now());
    report('info', 'backup made', { file });
  };
  const tidyIfDue = (): void => {
    if (now().getTime() - tidied < hoursBetweenTidyings * hour) return;
    const { sheets, talks } = store.tidy();
    tidied = now().getTime();
    report('info', 'tidied', { sheets, talks });
  };
  const look = (): void => {
    underWay = underWay
      .then(backUpIfDue)
      .catch((error: unknown) => report('error', 'no backup was made', { message: sentenceOf(error) }))
      .then(tidyIfDue)
      .catch((error: unknown) => report('warn', 'not tidied', { message: sentenceOf(error) }));
  };

  look();
  const stop = every(hour, look);
  return {
    /** Stops looking. Resolves when what was begun is finished. */
    async stop(): Promise<void> {
      stop();
      await underWay;
    },
  };
}

const sentenceOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
