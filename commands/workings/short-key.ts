/** One round of a plain mixing hash: the same text gives the same 53 bits everywhere. It keeps no secrets. */
function mixed(text: string, seed: number): string {
  let [one, other] = [0xdeadbeef ^ seed, 0x41c6ce57 ^ seed];
  for (let index = 0; index < text.length; index += 1) {
    const unit = text.charCodeAt(index);
    one = Math.imul(one ^ unit, 2654435761);
    other = Math.imul(other ^ unit, 1597334677);
  }
  one = Math.imul(one ^ (one >>> 16), 2246822507) ^ Math.imul(other ^ (other >>> 13), 3266489909);
  other = Math.imul(other ^ (other >>> 16), 2246822507) ^ Math.imul(one ^ (one >>> 13), 3266489909);
  return (4294967296 * (2097151 & other) + (one >>> 0)).toString(16).padStart(14, '0').slice(-13);
}

/** Short for something, on a button or as an id: nothing of what a person typed can be read in it. At most 26 characters. */
export const keyOf = (text: string, length = 10): string => `${mixed(text, 1)}${mixed(text, 2)}`.slice(0, length);
