export type SheetTroubleCode = 'no-such-sheet' | 'closed' | 'full';

const sentences: Readonly<Record<SheetTroubleCode, (sheet: number) => string>> = {
  'no-such-sheet': (sheet) => `There is no job ${sheet} here.`,
  closed: (sheet) => `Job ${sheet} is closed. /job open ${sheet} opens it again.`,
  full: () =>
    'The records of this crew are full, so nothing was noted. Erase old jobs, or let closed ones expire with /crew retention.',
};

/**
 * Something was to be written on a job sheet that is not there or is closed, most often because somebody else closed or
 * erased it a moment ago; or the crew keeps more than it ever honestly would. The message is plain words for the crew.
 */
export class SheetTrouble extends Error {
  override readonly name = 'SheetTrouble';
  readonly code: SheetTroubleCode;
  readonly sheet: number;

  constructor(code: SheetTroubleCode, sheet: number) {
    super(sentences[code](sheet));
    this.code = code;
    this.sheet = sheet;
  }
}
