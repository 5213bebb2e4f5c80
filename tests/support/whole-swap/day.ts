import type { ChecklistStep } from '#knowledge/checklist.ts';
import { answerLine, type Deed } from './deeds.ts';
import { type HonestCrew, honestCrew, type ListId, type Said, stepShown } from './demo-job.ts';
import type { Dice } from './dice.ts';
import type { Place, Sight } from './sight.ts';

/** The program died before it acknowledged what was done. */
export class Died extends Error {}

/** A day on the demo job. */
export interface Day {
  /** Everything that was done, in order. */
  readonly deeds: readonly Deed[];
  /** How often the program died on the way. */
  readonly deaths: number;
  /** What was answered to presses that were tried again, after a death, on a message from before it. */
  readonly again: readonly { readonly refused: boolean; readonly text: string }[];
}

export interface Manner<Seen extends Sight> {
  readonly luck: Dice;
  /** Looks on before somebody does a step. */
  readonly before?: (who: string, sight: Seen, step: ChecklistStep) => Promise<void>;
  readonly list?: ListId;
  /** Starts the program again, on the same records. */
  readonly revive?: () => Promise<void>;
  /** Share of turns in which somebody notes, pauses or takes back something. */
  readonly asides?: number;
}

const mostTurns = 400;

/** How likely somebody presses the same again after a death, rather than looking where the list stands. */
const usualPatience = 0.65;

/**
 * Two people walk a list to its close, each doing what the page offers them. What the program did not live to acknowledge is
 * pressed again on the old message, or looked up anew, as chance has it.
 *
 * @throws Error when nobody can go on and the list is not closed.
 */
export async function wholeDay<Seen extends Sight>(
  place: Place<Seen>,
  people: readonly string[],
  { luck, list = 'swap', revive, asides = 0, before }: Manner<Seen>,
): Promise<Day> {
  const crew = honestCrew();
  const deeds: Deed[] = [];
  const again: { refused: boolean; text: string }[] = [];
  let deaths = 0;

  /** Does something that changes nothing, as often as it takes. */
  async function surely<Result>(ask: () => Promise<Result>): Promise<Result> {
    for (;;) {
      try {
        return await ask();
      } catch (error) {
        await after(error);
      }
    }
  }

  async function after(error: unknown): Promise<void> {
    if (!(error instanceof Died) || !revive) throw error;
    deaths += 1;
    await revive();
  }

  /**
   * Does something that changes the records, and does it again after a death where that may be done. A press that only
   * opened a form has changed nothing.
   */
  async function does(
    says: readonly string[],
    act: () => Promise<Seen>,
    { repeats = 0 }: { repeats?: number } = {},
  ): Promise<Seen | undefined> {
    const mine = says.map((line): Deed => ({ says: line, state: 'unknown', atOnce: true }));
    const doubtful = mayBePaused();
    deeds.push(...mine);
    const become = (change: Partial<Deed>) => {
      for (const deed of mine) Object.assign(deed, change);
    };
    for (let tried = 1; ; tried += 1) {
      try {
        const sight = await act();
        if (sight.refused && tried === 1 && !doubtful) throw new Error(`${says}: ${sight.text}`);
        if (tried > 1) again.push(sight);
        if (sight.form) deeds.splice(deeds.indexOf(mine[0] as Deed), mine.length);
        become({ state: sight.refused ? 'refused' : 'acknowledged' });
        return sight;
      } catch (error) {
        await after(error);
        become({ atOnce: false });
        if (!luck.chance(repeats)) return undefined;
      }
    }
  }

  /** The first starts the list, the others join. */
  async function begun(): Promise<void> {
    const [first = '', ...rest] = people;
    await does([`${first} started`], () => place.type(first, 'swap start', { list }), { repeats: 1 });
    // Whoever starts a list is on the job from then on.
    deeds.push({ says: `${first} joined`, state: 'acknowledged', atOnce: true });
    for (const who of rest) await does([`${who} joined`], () => place.type(who, 'swap join'), { repeats: 1 });
  }

  /** Somebody pausing was not acknowledged, and nobody has gone on since: then others may be refused. */
  const mayBePaused = (): boolean => {
    const last = deeds.findLast(({ says }) => / (?:paused|resumed)$/.test(says));
    return last?.says.endsWith(' paused') ?? false;
  };

  async function aside(who: string): Promise<void> {
    const kind = luck.below(3);
    if (kind === 0) {
      const says = `note ${deeds.length}`;
      await does([`${who} noted ${says}`], () => place.type(who, 'swap note', { says }));
    } else if (kind === 1) {
      await does([`${who} paused`], () => place.type(who, 'swap pause'));
    } else {
      const last = deeds.at(-1);
      const sight = last?.state === 'acknowledged' && last.says.startsWith(`${who} done `);
      if (sight) await does([`${who} undone`], () => place.type(who, 'swap back'));
    }
  }

  const turnOf = async (who: string, shown: Seen | undefined): Promise<Seen | undefined | 'closed' | 'waits'> => {
    const sight = shown ?? (await surely(() => place.type(who, 'swap next')));
    const step = stepShown(sight.headline, list);
    if (!step) return /closed/.test(sight.headline) ? 'closed' : 'waits';
    return stepDone(who, sight, step);
  };

  async function stepDone(who: string, sight: Seen, step: ChecklistStep): Promise<Seen | undefined> {
    await before?.(who, sight, step);
    const { label, said } = pressed(crew, sight, step);
    const press = () => place.press(who, sight, label);
    let shows = await does([answerLine(who, step, said)], press, { repeats: usualPatience });
    let filled: Said = {};
    // A terminal asks one thing after another, and only the last word is kept with all before it.
    while (shows?.form) {
      const on = shows;
      const values = crew.fill(step, shows.form);
      filled = { ...filled, ...values };
      const says = [...photosIn(who, step, filled), answerLine(who, step, filled)];
      shows = await does(says, () => place.fill(who, on, values), { repeats: usualPatience });
    }
    return shows;
  }

  await begun();
  let shown: { who: string; sight: Seen } | undefined;
  let waiting = 0;
  for (let turn = 0; turn < mostTurns; turn += 1) {
    const who: string = waiting > 0 ? other(people, shown?.who, turn) : luck.oneOf(people);
    if (luck.chance(asides)) {
      await aside(who);
      shown = undefined;
    }
    const at = shown && shown.who === who && luck.chance(0.7) ? shown.sight : undefined;
    if (mayBePaused()) await does([`${who} resumed`], () => place.type(who, 'swap resume'));
    const now = await turnOf(who, at);
    if (now === 'closed') return { deeds, deaths, again };
    waiting = now === 'waits' ? waiting + 1 : 0;
    if (waiting > 2 * people.length) throw new Error('Nobody can go on, and the list is not closed.');
    shown = typeof now === 'object' && stepShown(now.headline, list) ? { who, sight: now } : undefined;
  }
  const last = deeds.slice(-12).map(({ says }) => says);
  throw new Error(`The list is not closed after ${mostTurns} turns; the last were: ${last.join('; ')}.`);
}

const other = (people: readonly string[], who: string | undefined, turn: number): string => {
  const rest = people.filter((each) => each !== who);
  return rest[turn % rest.length] as string;
};

const photosIn = (who: string, { id: name, evidence }: ChecklistStep, said: Said): readonly string[] =>
  evidence.flatMap(({ id, kind }) =>
    kind === 'photo' && (said[id] ?? said[`part-${id}`]) !== undefined ? [`${who} photo ${name}`] : [],
  );

/** What an honest person presses on a page, and what that says where it opens no form. */
function pressed(crew: HonestCrew, { presses, text }: Sight, step: ChecklistStep) {
  const choice = crew.choice(step);
  const label = choice
    ? presses.find((each) => each === choice.label || each.endsWith(`: ${choice.label}`))
    : presses[0];
  if (label === undefined) throw new Error(`Nothing fits here: ${presses.join(' / ')} on ${text}`);
  const part = step.evidence[0]?.id ?? '';
  return { label, said: choice ? { [part]: choice.id } : {} };
}
