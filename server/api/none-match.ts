/**
 * Does If-None-Match name this entity tag? Compared weakly, as RFC 9110 section 13.1.2 has it: a list, W/ left aside, * for any.
 *
 * @param header as it came; undefined = none
 * @param tag with its quotation marks
 */
export function noneMatch(header: string | undefined, tag: string): boolean {
  if (header === undefined) return false
  if (header.trim() === '*') return true
  const opaque = (one: string): string => one.trim().replace(/^W\//, '')
  return header.split(',').some(one => opaque(one) === opaque(tag))
}
