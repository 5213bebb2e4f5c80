/** Letters as they are searched: "García" is found by "garcia". */
export const folded = (name: string): string => name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

/** A name on one line, without control characters. */
export const tidied = (name: string): string =>
  name
    .replace(/\p{Cc}/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** The pattern for LIKE that finds the text anywhere. A % or _ somebody typed is only a % or _. */
export const containing = (text: string): string => `%${text.replace(/[\\%_]/g, '\\$&')}%`;
