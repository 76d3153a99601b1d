import type { Library, LibraryFile } from '../../core/library/library.ts'
import { type Transformation, transformationSchema } from '../../core/library/transformation.ts'
import { counted } from '../../core/report/words.ts'
import { notDrawn } from './reaction-files.ts'
import { titleOf } from './reaction-title.ts'
import type { Form } from './written-as.ts'

/** Keys of a transformation in plain words, in the order of the format. */
const words: Readonly<Record<keyof Transformation, string>> = {
  id: 'ids',
  name: 'names',
  kind: 'kinds',
  reactants: 'reactants',
  products: 'products',
  mainProduct: 'which product is the main one',
  limiting: 'which reactant is limiting',
  coProducts: 'second products',
  charge: 'charges',
  yieldPercent: 'yields',
  reports: 'yields that people reported',
  lossG: 'fixed losses',
  tasks: 'tasks',
  timesBasis: 'whose the times are',
  vesselKind: 'kinds of vessel',
  foam: 'foaming',
  peakVolumeMl: 'largest volumes',
  temperatureC: 'temperatures',
  elapsedHours: 'hours in all',
  handsOnHours: 'hands-on hours',
  operations: 'operations',
  equipment: 'equipment',
  atmosphere: 'atmospheres',
  needsHood: 'need of a hood',
  exotherm: 'heat given off',
  gasEvolved: 'gases given off',
  largestProvenG: 'largest scales',
  smallestProvenG: 'smallest scales',
  holdPoint: 'hold points',
  holdPointBasis: 'whose the hold points are',
  hazardNotes: 'dangers',
  intendedMeetings: 'intended meetings',
  isolated: 'isolated amounts',
  isolatedBasis: 'what was isolated',
  note: 'remarks',
  sources: 'sources',
  confidence: 'how sure they are',
}
const keys = Object.keys(transformationSchema.shape) as (keyof Transformation)[]

/** Keys of transformations that each form holds. */
const held: Readonly<Record<Form, ReadonlySet<keyof Transformation>>> = {
  json: new Set(keys),
  rdf: new Set(keys),
  csv: new Set(),
  tsv: new Set(),
  sdf: new Set(),
  'charges-csv': new Set(['id', 'charge']),
  'charges-tsv': new Set(['id', 'charge']),
  smi: new Set(['name', 'reactants', 'products']),
  rxn: new Set(['name', 'reactants', 'products']),
}
/** Forms that hold every key of the materials; the others hold none of them but the structures that equations draw. */
const withMaterials: ReadonlySet<Form> = new Set(['json', 'csv', 'tsv', 'sdf'])

/** Keys that these records have and the form cannot hold. */
export function keysLeftOut(form: Form, transformations: readonly Transformation[]): readonly (keyof Transformation)[] {
  return keys.filter(key => !held[form].has(key) && transformations.some(step => step[key] !== undefined))
}

/** A key as the sentences of {@link notHeld} call it. */
export const keyWords = (key: keyof Transformation): string => words[key]

/** What a form cannot hold of these records, as sentences; empty where it holds everything. */
export function notHeld(form: Form, { materials, transformations }: LibraryFile, library: Library): readonly string[] {
  const sentences: string[] = []
  const lost = keysLeftOut(form, transformations)
  const isEquations = form === 'smi' || form === 'rxn'
  if (transformations.length > 0 && held[form].size === 0)
    sentences.push(`${counted(transformations.length, 'transformation')}: it holds materials alone.`)
  else if (lost.length > 0) {
    const list = lost.map(key => (isEquations && key === 'charge' ? 'charges but for the compounds over the arrow' : words[key])).join(', ')
    sentences.push(
      isEquations
        ? `Of the transformations, ${list}: it holds equations alone.`
        : `Of the transformations, ${list}. Where the library that reads it holds the transformation, all of these stay there as they are.`,
    )
  }
  if (isEquations)
    for (const step of transformations) {
      const why = notDrawn(library, step, form === 'rxn')
      if (why !== null) sentences.push(`${step.name}: ${why}.`)
      else if (titleOf(step, form) !== step.name) sentences.push(`${step.name}: the name is shortened to "${titleOf(step, form)}".`)
    }
  if (materials.length > 0 && !withMaterials.has(form))
    sentences.push(`${counted(materials.length, 'material')}${isEquations ? ', but for the structures in the equations' : ''}.`)
  return sentences
}
