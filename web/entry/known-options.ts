import type { Writing } from './draft.ts'

/** By whose word figures stand, as it is asked for everywhere: three things that are never mixed up. */
export const knownOptions: readonly (readonly [Writing['known'], string])[] = [
  ['', 'say which'],
  ['checked', 'read in the source below'],
  ['memory', 'remembered'],
  ['own', 'of our own bench'],
]
