/**
 * Something was to be written on a job sheet that is not there or is closed, most often because somebody else closed or
 * erased it a moment ago. The message is one plain sentence for the crew.
 */
export class SheetTrouble extends Error {
  override readonly name = 'SheetTrouble';
  readonly code: 'no-such-sheet' | 'closed';
  readonly sheet: number;

  constructor(code: 'no-such-sheet' | 'closed', sheet: number) {
    super(code === 'closed' ? `Job ${sheet} is closed. Reopen it first.` : `There is no job ${sheet} here.`);
    this.code = code;
    this.sheet = sheet;
  }
}
