/** Names of towns as they are compared: without accents and case, and by how they sound. */

/** Letters that no accent is taken off of. */
const plainLetters: Readonly<Record<string, string>> = {
  ß: 'ss',
  ø: 'o',
  ł: 'l',
  æ: 'ae',
  œ: 'oe',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
};

/** Words that are written short in names of towns. */
const longWords: Readonly<Record<string, string>> = {
  st: 'saint',
  ste: 'sainte',
  mt: 'mount',
  ft: 'fort',
  pt: 'point',
};

/** `Sankt Pölten` is `sankt polten`, `St. Louis` is `saint louis`. Letters and digits of any script are kept, all else parts words. */
export function foldedName(name: string): string {
  return name
    .toLowerCase()
    .replace(/[ßøłæœđðþı]/g, letter => plainLetters[letter] as string)
    .normalize('NFD')
    .replace(/[\p{Mark}'’ʻ]/gu, '')
    .split(/[^\p{Letter}\p{Number}]+/u)
    .filter(word => word !== '')
    .map(word => longWords[word] ?? word)
    .join(' ');
}

/**
 * How a name sounds, roughly: its consonants, those that are often taken for each other alike, and `a` for a vowel in front. Names that people
 * mix up in writing sound the same: Asheville and Ashville, Pittsburgh and Pitsburg.
 */
export function soundsOf(name: string): string {
  const letters = foldedName(name).replace(/ /g, '');
  const heard = letters
    .replace(/sch|sh|ch(?=[ei])/g, 's')
    .replace(/ph/g, 'f')
    .replace(/ght?|ck|ch|q|g/g, 'k')
    .replace(/c(?=[eiy])/g, 's')
    .replace(/c/g, 'k')
    .replace(/x/g, 'ks')
    .replace(/z/g, 's')
    .replace(/[vw]/g, 'f')
    .replace(/j/g, 'i')
    .replace(/h/g, '');
  const first = /^[aeiouy]/.test(heard) ? 'a' : '';
  const consonants = heard.replace(/[aeiouy]/g, '').replace(/(.)\1+/gu, '$1');
  return first + consonants;
}
