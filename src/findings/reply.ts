import type { Language } from '#words/language.ts';
import type { Finding, Table, Weight } from './finding.ts';
import type { Paper } from './paper.ts';
import type { Progress } from './progress.ts';

/** A chart as data: pictures draws it, the terminal sketches it, the alt text says it. */
export interface Chart {
  readonly title: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly lines: readonly Line[];
  readonly bands: readonly Band[];
  readonly marks: readonly Mark[];
  readonly levels: readonly Level[];
  /** Named amounts along x, one under another, in place of all the above: then y has names instead of numbers. */
  readonly bars?: readonly Bar[];
  /** How far a list is, stage by stage, in place of all the above. */
  readonly progress?: Progress;
  /** One or two sentences with the numbers, for a reader who cannot see the picture. */
  readonly alt: string;
}

export interface Axis {
  readonly label: string;
  readonly min: number;
  readonly max: number;
}

export type Point = readonly [x: number, y: number];

/**
 * A curve. `role` decides how it is drawn (weight and dash, never colour alone). A `guess` goes on where another line is no
 * longer known; without words of its own it says nothing beside that line.
 */
export interface Line {
  readonly label: string;
  readonly role: 'main' | 'other' | 'system' | 'limit' | 'guess';
  readonly points: readonly Point[];
}

/** The area between two curves over the same x: a range. */
export interface Band {
  readonly label: string;
  readonly points: readonly (readonly [x: number, low: number, high: number])[];
}

export interface Mark {
  readonly label: string;
  readonly at: Point;
}

/** A straight line across the chart at one value: airflow needed, the dew point, a limit. */
export interface Level {
  readonly label: string;
  readonly axis: 'x' | 'y';
  readonly at: number;
}

export interface Bar {
  readonly label: string;
  readonly amount: number;
  /** The amount as it is written at the end of the bar. */
  readonly shown: string;
}

/** A next step a person can take with one press: another command on the same sheet. */
export interface Suggestion {
  readonly label: string;
  readonly command: string;
}

/** A result that belongs on the job sheet, so that later commands build on it: a measured airflow. */
export interface Kept {
  readonly fact: string;
  /** In the words its question reads. */
  readonly typed: string;
}

/** A text to take away, such as a list for a spreadsheet. */
export interface ReplyFile {
  readonly name: string;
  readonly type: 'text/csv' | 'application/json';
  readonly text: string;
}

/** A page to print. */
export interface ReplyPaper {
  /** Ends in ".pdf". */
  readonly name: string;
  readonly paper: Paper;
}

/** A button that does something at a desk. Nothing a person typed stands in `given`, so it may travel on a button. */
export interface PressOffer {
  readonly label: string;
  /** The same in few words, where a button on a phone has no room for the label. */
  readonly short?: string;
  readonly command: string;
  readonly action: string;
  readonly given: Readonly<Record<string, string>>;
  /** It goes on to what comes next: an empty line, or "next", presses it where lines are typed. */
  readonly goesOn?: true;
}

/** One thing to fill in: words, or one of the choices. */
export interface FormField {
  readonly id: string;
  readonly label: string;
  readonly accepts: string;
  readonly optional: boolean;
  readonly choices?: readonly { readonly id: string; readonly label: string }[];
  /** It is a photo: sent where files can be sent, named by its path in a terminal. */
  readonly photo?: true;
  /** What is wrong with a value as it is typed; nothing where it will do. Where a form is sent whole, that is said of the whole. */
  readonly trouble?: (text: string) => string | undefined;
}

/** What an action still has to be told, at most five things. It is done again with them, each under its id. */
export interface FormOffer extends Omit<PressOffer, 'label' | 'goesOn'> {
  readonly title: string;
  readonly fields: readonly FormField[];
}

/** One list of what is still to find out. */
export interface StillToFindOut {
  readonly title: string;
  readonly columns: readonly [part: string, what: string];
  /** The parts in their order. */
  readonly parts: readonly string[];
  /** What is worth most to find out, in sentences, by part. */
  readonly first: readonly (readonly [part: string, says: string])[];
  /** The part each question belongs to, by its id. */
  readonly partOf: ReadonlyMap<string, string>;
}

/** What a command answers: plain data. Each adapter decides how it looks in its medium. */
export interface Reply {
  /** The language its sentences are in; English where it is left out. */
  readonly language?: Language | undefined;
  /** Sentences said before it, as where a tour stands. */
  readonly notes?: readonly string[];
  readonly headline: string;
  readonly findings: readonly Finding[];
  readonly tables?: readonly Table[];
  /** May be worked out only once it is looked at. */
  readonly chart?: Chart;
  /** What was taken for granted because nobody said: "ceiling height 8 ft". */
  readonly assumed?: readonly string[];
  /** Why each of those was taken, for whoever asks for the working. */
  readonly assumedBecause?: readonly string[];
  /** Gathers everything nobody knows in one list, part by part, rather than among what was taken for granted. */
  readonly stillToFindOut?: StillToFindOut;
  /** Terms of the trade that stand in it, each with half a line for whoever is new to it. */
  readonly words?: string;
  readonly suggestions?: readonly Suggestion[];
  readonly files?: readonly ReplyFile[];
  readonly papers?: readonly ReplyPaper[];
  readonly presses?: readonly PressOffer[];
  readonly asks?: FormOffer;
  /** Nothing was done, and the headline says why: said to the one who tried, and what stood before stays. */
  readonly refused?: true;
  /** What the conversation notes on the sheet, as measured, when it shows this reply. */
  readonly keeps?: readonly Kept[];
}

const order: Record<Weight, number> = { stop: 0, caution: 1, advice: 2, good: 3 };

/** Stops first; the order the command chose otherwise. */
export const stopsFirst = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => Number(b.weight === 'stop') - Number(a.weight === 'stop'));

/** The weightiest finding of a reply, `good` when there is none. */
export const heaviest = (findings: readonly Finding[]): Weight =>
  findings.reduce<Weight>((worst, { weight }) => (order[weight] < order[worst] ? weight : worst), 'good');
