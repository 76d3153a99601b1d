import { hyphened } from '../library/plain-letters.ts'

/** Longest id made from a name, characters. */
const longest = 80

/**
 * An id for a name, in the form of the library: small letters and digits in groups joined by hyphens.
 *
 * @param taken  ids in use; a number is added where the plain one is among them
 * @example idOfName('4-Chlorobenzil, tech. (90 %)', new Set()) // '4-chlorobenzil-tech-90'
 */
export function idOfName(name: string, taken: { has(id: string): boolean }): string {
  const plain = hyphened(name, longest)
  // These two words name whole libraries and lists on the command line.
  const base = plain === '' || plain === 'bundled' || plain === 'all' ? `own-${plain || 'material'}` : plain
  if (!taken.has(base)) return base
  for (let number = 2; ; number++) if (!taken.has(`${base}-${number}`)) return `${base}-${number}`
}
