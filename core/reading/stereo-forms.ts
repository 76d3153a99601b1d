import type { StereoRelation } from '../chemistry/structure.ts'

/** A material of the same skeleton as a structure, and what it is beside it. */
export interface StereoForm {
  readonly id: string
  readonly relation: Exclude<StereoRelation, 'same'>
}

/** What a material is beside the structure that was written. */
export const formWords: Readonly<Record<StereoForm['relation'], string>> = {
  racemate: 'is the racemate of it',
  'one hand': 'is one hand of it',
  'other hand': 'is its mirror image, the other hand',
  'states less': 'leaves open hands or double bonds that are stated here',
  'states more': 'states hands or double bonds that are left open here',
  'other geometry': 'has the other geometry at a double bond',
  'other stereoisomer': 'is another stereoisomer',
}
