/**
 * What came in a file from elsewhere says so wherever a person or a list is named. Nobody here vouches for it: such a name is
 * never a member of the crew, and such a list is never one that is walked here.
 */
const mark = 'imported: ';

export const isImported = (name: string): boolean => name.startsWith(mark);

/** What came in by a file before is not marked twice. */
export const asImported = (name: string): string => (isImported(name) ? name : `${mark}${name}`);

export const withoutMark = (name: string): string => (isImported(name) ? name.slice(mark.length) : name);

/** Something that came in a file, by the names it has there. */
export const asInFile = <Event extends { readonly list: string; readonly who: string }>(event: Event): Event => ({
  ...event,
  list: withoutMark(event.list),
  who: withoutMark(event.who),
});

/** The condition of a query that leaves out what came in a file. */
export const notImported = (column: string): string => `substr(${column}, 1, ${mark.length}) <> '${mark}'`;
