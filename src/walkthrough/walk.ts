import type { BoxKind } from '#knowledge/checklist-facts.ts';
import { type WalkWords, walkWords } from '#words/walkthrough.ts';
import type { OutOfRange } from './evidence.ts';
import type { Box, Person, StepValue, WalkEvent } from './walk-event.ts';
import type { WalkList } from './walk-list.ts';

/** One accepted answer: what, by whom, when. */
export interface Answer {
  readonly event: string;
  readonly what: 'done' | 'signed' | 'overridden';
  readonly value: StepValue;
  readonly who: string;
  readonly name: string;
  readonly at: string;
  readonly enteredAt: string;
  /** Day it was entered, where the crew works. */
  readonly day: string;
}

export interface Photo {
  readonly reference: string;
  /** Of its bytes; `null` where it was not looked at. */
  readonly checksum: string | null;
  readonly who: string;
  readonly name: string;
  readonly at: string;
}

/** What has happened at one step. */
export interface StepRecord {
  readonly status: 'open' | 'closed' | 'skipped' | 'stopped' | 'lapsed';
  /** The answer that counts, or the one that counted before a lapse. */
  readonly answer: Answer | null;
  /** Reason of a skip, what to do about a stop, why it lapsed. */
  readonly because: string | null;
  /** `expired`: time or people moved on. `basis`: what it rested on was changed. Set while lapsed. */
  readonly lapse: 'expired' | 'basis' | null;
  readonly history: readonly Answer[];
  readonly photos: readonly Photo[];
  readonly outside: readonly OutOfRange[];
  readonly advice: readonly string[];
}

/** A fact somebody recorded during the walk. */
export interface FactEntry {
  readonly event: string;
  readonly step: string | null;
  readonly fact: string;
  readonly value: string;
  readonly who: string;
  readonly name: string;
  readonly at: string;
  /** Said by somebody whose word lightens the list, or confirmed since by the event named. */
  readonly confirmed: boolean;
  readonly confirmedBy: string | null;
}

export interface Correction {
  readonly step: string;
  readonly before: Answer;
  readonly after: Answer;
}

export interface Note {
  readonly step: string | null;
  readonly says: string;
  readonly who: string;
  readonly name: string;
  readonly at: string;
}

export interface Refusal {
  readonly event: WalkEvent;
  readonly because: string;
}

/** A walk so far. It is built up event by event inside this room; everyone else reads it. */
export interface Walk {
  list: WalkList;
  readonly start: WalkList;
  readonly records: Map<string, StepRecord>;
  facts: readonly FactEntry[];
  people: readonly Person[];
  boxes: readonly Box<BoxKind>[];
  paused: { readonly who: string; readonly name: string; readonly at: string } | null;
  /** When somebody on site last wrote something down. */
  lastOnSite: number | null;
  lastEvent: number | null;
  firstEvent: number | null;
  working: number;
  away: number;
  readonly seen: Map<string, string>;
  readonly refused: Refusal[];
  readonly corrections: Correction[];
  readonly notes: Note[];
  closed: Answer | null;
}

const untouched: StepRecord = {
  status: 'open',
  answer: null,
  because: null,
  lapse: null,
  history: [],
  photos: [],
  outside: [],
  advice: [],
};

/** What is told of this walk, in the language of its list. */
export const wordsOf = ({ list }: Pick<Walk, 'list'>): WalkWords => walkWords[list.checklist.language];

export const recordOf = ({ records }: Pick<Walk, 'records'>, id: string): StepRecord => records.get(id) ?? untouched;

/** The photos that stand for a step now: once its answer has lapsed, only those sent since that answer. */
export const standingPhotos = ({
  status,
  answer,
  photos,
}: Pick<StepRecord, 'answer' | 'photos'> & { readonly status: string }): readonly Photo[] =>
  status === 'lapsed' && answer ? photos.filter(({ at }) => Date.parse(at) > Date.parse(answer.at)) : photos;

export const isClosed = (walk: Pick<Walk, 'records'>, id: string): boolean => {
  const { status } = recordOf(walk, id);
  return status === 'closed' || status === 'skipped';
};

export const newWalk = (list: WalkList): Walk => ({
  list,
  start: list,
  records: new Map(),
  facts: [],
  people: list.crew,
  boxes: list.named,
  paused: null,
  lastOnSite: null,
  lastEvent: null,
  firstEvent: null,
  working: 0,
  away: 0,
  seen: new Map(),
  refused: [],
  corrections: [],
  notes: [],
  closed: null,
});

/** A walk that can be tried on without touching this one. Records themselves are never changed, only replaced. */
export const copyOf = (walk: Walk): Walk => ({
  ...walk,
  records: new Map(walk.records),
  seen: new Map(walk.seen),
  refused: [...walk.refused],
  corrections: [...walk.corrections],
  notes: [...walk.notes],
});
