/** Longer than anyone writes one number; what comes after is not even looked at. */
export const longestText = 200;

const vulgarFractions = /[\u00bc-\u00be\u2150-\u215e\u2189]/g;

/** The many ways one sign is drawn, as one; never a raised or ringed digit as if it belonged to the digit before it. */
const redrawn = (text: string): string =>
  text
    .replace(/[\u00ba\u02da]/g, '°')
    .replace(/[\u00b4\u2018\u2019\u201b\u02b9\u02bc\u2032]/g, "'")
    .replace(/[\u201c-\u201f\u02ba\u2033]/g, '"')
    .replace(vulgarFractions, (sign) => ` ${sign.normalize('NFKC').replace('\u2044', '/')} `)
    .replace(/(?<=[\d\s.,]|^)\p{No}/gu, '\ufffd')
    .normalize('NFKC')
    .replace(/[\u2010-\u2012\u2212]/g, '-')
    .replace(/[\u2013\u2014]/g, '–')
    .replace(/\u2044/g, '/');

/** Text as the reader takes it: one kind of quote, hyphen, space and digit, small letters, no dots after letters. */
export function folded(text: string): string {
  const plain = /^[\x20-\x7e]*$/.test(text) ? text : redrawn(text);
  return plain
    .toLowerCase()
    .replace(/`/g, "'")
    .replace(/''/g, '"')
    .replace(/&/g, ' and ')
    .replace(/(?<=[a-z])\./g, '')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/[.!]+$/, '');
}

/** A little of what was typed, safe to print: control characters gone, at most thirty characters. */
export function echoed(text: string): string {
  const clean = [...text.slice(0, longestText).replace(/\s+/g, ' ').replace(/\p{C}/gu, '').trim()];
  return clean.length > 30 ? `${clean.slice(0, 29).join('')}…` : clean.join('');
}
