/** A printed page as data: pictures sets it, nobody else knows of fonts or points. */
export interface Paper {
  readonly title: string;
  /** One line under the title: the job, the day, the crew. */
  readonly under?: string;
  readonly blocks: readonly Block[];
  /** It must stay on one page: the type is as large as that allows. */
  readonly onePage?: true;
  /** A line at the foot of every page, such as who made it and what it rests on. */
  readonly foot: string;
  /** When it was made; part of the file, so that the same facts make the same bytes. */
  readonly made: Date;
}

export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string }
  /** What must be read first, in a frame. */
  | { readonly kind: 'warning'; readonly title: string; readonly lines: readonly string[] }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  /** One big number with what it is. */
  | { readonly kind: 'figures'; readonly figures: readonly { readonly number: string; readonly says: string }[] }
  | {
      readonly kind: 'table';
      readonly columns: readonly string[];
      /** Share of the width of each column; they add up to 1. */
      readonly widths: readonly number[];
      /** A row of one cell is a heading over the rows that follow. */
      readonly rows: readonly (readonly string[])[];
    }
  /** Lines to be filled in by hand, each with what belongs there. */
  | { readonly kind: 'blanks'; readonly labels: readonly string[] }
  | { readonly kind: 'picture'; readonly png: Uint8Array; readonly alt: string; readonly height: number };
