/** A text cut to what fits on a button: 80 characters. */
export const short = (text: string): string => (text.length <= 80 ? text : `${text.slice(0, 79)}…`);
