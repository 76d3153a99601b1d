import type { Item } from './types.ts'

/** A compound's name as runs: the descriptors that the trade sets in italics (*o*-, *tert*-, *trans*-) are set so. */
export function nameRuns(name: string): Item {
  const match = /^([(+ ]*)(o|m|p|n|N|O|tert|sec|cis|trans|meso|E|Z|R|S)-(?=[A-Za-z(\u00ad])/.exec(name)
  if (!match) return [{ t: name }]
  const before = match[1]!
  const rest = name.slice(before.length + match[2]!.length)
  return [...(before ? [{ t: before }] : []), { t: match[2]!, i: true }, { t: rest }]
}
