/**
 * Text on one line without control, format and half characters: nothing in a label may steer a terminal, turn the
 * direction of what follows, or break a file.
 */
export const plainText = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Cn}\p{Variation_Selector}]/gu, '')
    .replace(/ +/g, ' ')
    .trim();

const spelled: Record<string, string> = {
  '−': '-',
  '–': '-',
  '—': '-',
  '×': 'x',
  '÷': '/',
  '⁄': '/',
  '≥': '>=',
  '≤': '<=',
  '±': '+/-',
  '→': '->',
  '←': '<-',
  '°': 'deg ',
  '…': '...',
  '·': '*',
  '’': "'",
  '‘': "'",
  '“': '"',
  '”': '"',
  μ: 'u',
};

/** The same in ASCII alone: accents dropped, common signs spelled out, anything else a question mark. */
export const asciiText = (text: string): string =>
  Array.from(
    plainText(text)
      .normalize('NFKD')
      .replace(/\p{Mn}/gu, ''),
  )
    .map((character) => spelled[character] ?? (/[\x20-\x7e]/.test(character) ? character : '?'))
    .join('')
    .replace(/ +/g, ' ')
    .trim();
