/** Text in small letters without accents, Greek letters by their names: what keeps no chemist, and no list, from a name. */
export const plainLetters = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase()
    .replaceAll('α', 'alpha')
    .replaceAll('β', 'beta')
    .replaceAll('γ', 'gamma')

/**
 * Text as an id or the name of a file: small letters and digits in groups joined by hyphens; empty where it has neither.
 *
 * @param most characters
 * @example hyphened('4-Chlorobenzil, tech. (90 %)') // '4-chlorobenzil-tech-90'
 */
export const hyphened = (text: string, most = Number.POSITIVE_INFINITY): string =>
  plainLetters(text)
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, most)
    .replace(/^-+|-+$/g, '')
