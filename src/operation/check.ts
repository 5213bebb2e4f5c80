/** One thing looked at: good as it is, worth knowing, or in need of mending. The sentence then begins with what to do. */
export interface Check {
  readonly about: string;
  readonly state: 'good' | 'note' | 'fix';
  readonly says: string;
}

const checked =
  (state: Check['state']) =>
  (about: string, says: string): Check => ({ about, state, says });

export const good = checked('good');
export const note = checked('note');
export const fix = checked('fix');
