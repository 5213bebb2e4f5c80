import type { Reply } from '#findings/reply.ts';
import type { Interview } from '#interview/interview.ts';
import type { AnyQuestion, Choice, Reading, UnitSystem } from '#interview/question.ts';
import type { Recall } from '#interview/replay.ts';
import type { ScopedStore } from '#store/store.ts';
import type { Language, OtherLanguage } from '#words/language.ts';

/** How to tell a person what there is to tell. */
export interface Telling {
  /** The units that come first; the other system follows in brackets. */
  readonly units: UnitSystem;
  /** English where it is left out. Whoever has no words in it answers in English, whole. */
  readonly language?: Language | undefined;
}

/** Where and by whom something is said. */
export interface Speaker {
  readonly channel: string;
  readonly who: string;
  /** The language that person is answered in; English where it is left out. */
  readonly language?: Language | undefined;
}

interface Named {
  /** A trade word, lowercase. */
  readonly name: string;
  /** At most 100 characters. */
  readonly summary: string;
  /** The summary in other languages. */
  readonly summaries?: Readonly<Record<OtherLanguage, string>>;
  /** What follows the name in a one-shot line that works when pasted. */
  readonly example: string;
}

/** A command that asks and then answers: its whole story on one page. `Inputs` is what the interview ends with. */
export interface AnswerCommand<Inputs> extends Named {
  readonly kind: 'answer';
  /** Every question the interview may ask or take, in the order asked; these are the options of the command. */
  readonly takes: readonly AnyQuestion[];
  /** The one of them that free words after the command’s name answer, as a complaint does. */
  readonly inWords?: AnyQuestion;
  interview(): Interview<Inputs>;
  /** What the records of a job say beside the answers on its sheet. Left out where the sheet is all there is. */
  recalling?(recall: Recall, records: JobRecords): Recall;
  answer(inputs: Inputs, telling: Telling): Reply;
}

/** The records of one job, where a command looks for more than the answers on its sheet. */
export interface JobRecords {
  readonly store: ScopedStore;
  readonly sheet: number;
}

/** A command that works on what is kept (job sheets, settings) or explains, rather than asking and computing. */
export interface DeskCommand extends Named {
  readonly kind: 'desk';
  /** One action without a name, or several that are named after the command: `/job open`. */
  readonly actions: readonly Action[];
  /** Further lines to try, each as its `example`, where one does not show what it is for. */
  readonly moreExamples?: readonly string[];
}

export interface Action {
  readonly name: string;
  readonly summary: string;
  readonly summaries?: Readonly<Record<OtherLanguage, string>>;
  readonly options: readonly DeskOption[];
  /** What it changes concerns the whole crew, so only those who manage the server may do it. */
  readonly managersOnly?: true;
  /** Terms of the trade in what it says are glossed, as in every answer of an answering command. */
  readonly glosses?: true;
  act(desk: Desk, options: Readonly<Record<string, string>>): Reply | Start;
}

/** A desk's word to begin an answering command on the sheet that lies open, with these answers, and to show these notes. */
export interface Start {
  /** The command's name. */
  readonly start: string;
  readonly given: Readonly<Record<string, string>>;
  readonly notes: readonly string[];
  /** The line it was read from, which may name the house it is about. */
  readonly line?: string;
  /** What stands in for questions where nobody can be asked, and the notes that say so. */
  readonly unasked?: { readonly given: Readonly<Record<string, string>>; readonly notes: readonly string[] };
}

export interface DeskOption {
  readonly id: string;
  /** At most 100 characters. */
  readonly brief: string;
  readonly briefs?: Readonly<Record<OtherLanguage, string>>;
  readonly required?: boolean;
  readonly choices?: readonly Choice[];
  /** The labels of its choices in other languages, by their ids. */
  readonly choiceLabels?: Readonly<Record<OtherLanguage, Readonly<Record<string, string>>>>;
  /** The most characters it takes where that is more than a line, at most 6000. */
  readonly longest?: number;
  /** It is a text file, sent along or named by its path; what is handed over is the text in it. */
  readonly file?: true;
  /** It is a photo, sent along or named by its path; `Desk.photo` tells of it by what is handed over. */
  readonly photo?: true;
  /** Offered in a terminal alone, where one keyboard serves several people. */
  readonly terminal?: true;
  /** Names that fit what was typed so far, best first. */
  suggest?(desk: Desk, typed: string): readonly Choice[];
}

/** A photo that lies where people can look at it. Its bytes, and where it was taken, are not kept. */
export interface KeptPhoto {
  /** Where it lies, in the words of the platform; the name of the file in a terminal. */
  readonly reference: string;
  /** SHA-256 of the bytes as they lie there, in hexadecimal. */
  readonly checksum: string;
  /** In bytes, as it lies there. */
  readonly size: number;
  /** Whether the file, as it lies there, says where it was taken. */
  readonly placed: boolean;
  /** It did as it was sent, and that was taken out before it was put there. */
  readonly unplaced?: boolean;
}

/** What a desk command is handed: the keeping of this server alone, who speaks, and how to tell numbers. */
export interface Desk {
  readonly store: ScopedStore;
  readonly speaker: Speaker;
  readonly telling: Telling;
  /** What a number without a unit is taken in: the crew's units where the records are open anyway, else inch-pound. */
  readonly bareUnits: UnitSystem;
  readonly commands: readonly Command[];
  /** Whether the speaker manages the server; in the terminal always. */
  readonly mayManage: boolean;
  /** What the sheet open here knows, behind the crew's own settings, as an interview recalls it. */
  readonly recall: Recall;
  /** The same of any sheet of this crew, by its number. */
  recallOn(sheet: number): Recall;
  /** What an answering command makes of a sheet as it stands, or the questions it would ask first. */
  answerOn(sheet: number, command: string): { readonly reply: Reply } | { readonly lacks: readonly AnyQuestion[] };
  /** The photo that was sent under this name, or lies under this path. */
  photo(named: string): Reading<KeptPhoto>;
  /** This moment, by the clock that stamps what is kept: there is no other. */
  now(): string;
}

export type Command = AnswerCommand<unknown> | DeskCommand;

/** What a command or an action does, in a language it has words in; else in English. */
export const summaryIn = ({ summary, summaries }: Pick<Named, 'summary' | 'summaries'>, language: Language): string =>
  (language === 'english' ? undefined : summaries?.[language]) ?? summary;

/** What an option is about, likewise. */
export const briefIn = ({ brief, briefs }: Pick<DeskOption, 'brief' | 'briefs'>, language: Language): string =>
  (language === 'english' ? undefined : briefs?.[language]) ?? brief;
