import type { Store } from '#store/store.ts';
import { type BackupPlan, backUpInto, isDue } from './backups.ts';
import { letGo } from './farewells.ts';

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
  readonly store: Pick<Store, 'backup' | 'tidy' | 'scopes' | 'note' | 'saveNote' | 'scoped'>;
  readonly plan: BackupPlan;
  readonly report: Report;
  /** The servers the bot is in, where that is known for sure. */
  readonly present?: () => ReadonlySet<string> | undefined;
  readonly now?: () => Date;
  readonly every?: Every;
}

const hour = 3_600_000;
const hoursBetweenTidyings = 24;
/** Between two hourly looks a clock that goes as it should moves on by about one. */
const steadyStep = { least: 0, most: 2 * hour } as const;

/**
 * Looks after the records while the program runs: a backup whenever one is due, and once a day what the crews want kept no
 * longer is erased, and what servers kept that the bot was sent away from. It looks at the clock at once and then every hour, so a
 * machine that slept makes up for it. Nothing is erased by a clock that has not gone steadily for a day: one set wrong by years
 * would take everything with it. What fails is reported and tried again an hour later.
 */
export function upkeep({ store, plan, report, present = () => undefined, ...rest }: Given) {
  const { now = () => new Date(), every = everyByTheClock } = rest;
  let underWay: Promise<void> = Promise.resolve();
  let tidied = now().getTime();
  let looked = tidied;
  let steadyLooks = 0;
  const watchClock = (): void => {
    const moved = now().getTime() - looked;
    looked += moved;
    steadyLooks = moved >= steadyStep.least && moved <= steadyStep.most ? steadyLooks + 1 : 0;
    if (steadyLooks === 0) tidied = looked;
  };
  const isSteady = (): boolean => steadyLooks >= hoursBetweenTidyings;

  const backUpIfDue = async (): Promise<void> => {
    if (!isDue(plan, now())) return;
    const file = await backUpInto(plan, (to) => store.backup(to), now());
    report('info', 'backup made', { file });
  };
  const tidyIfDue = (): void => {
    if (!isSteady() || now().getTime() - tidied < hoursBetweenTidyings * hour) return;
    const { sheets, talks } = store.tidy();
    tidied = now().getTime();
    report('info', 'tidied', { sheets, talks });
  };
  const letGoOfServers = (): void => {
    const here = present();
    const erased = here === undefined ? 0 : letGo(store, here, { now: now(), mayErase: isSteady() });
    if (erased > 0) report('info', 'servers left behind erased', { servers: erased });
  };
  const look = (): void => {
    watchClock();
    underWay = underWay
      .then(backUpIfDue)
      .catch((error: unknown) => report('error', 'no backup was made', { message: sentenceOf(error) }))
      .then(tidyIfDue)
      .then(letGoOfServers)
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
