import type { Composition } from '../../chemistry/formula.ts'
import type { Toolkit } from '../../chemistry/structure.ts'
import type { Problem } from '../../problem/problem.ts'
import type { Library } from '../library.ts'
import type { Material } from '../material.ts'
import type { Transformation } from '../transformation.ts'

/** One thing a rule found in a record; the loader adds the file and the record's id to `field`. A warning does not refuse the library. */
export interface Finding {
  readonly severity: 'error' | 'warning'
  readonly code: string
  /** Where in the record, from the outside in. */
  readonly field: readonly string[]
  readonly what: string
  readonly why: string
  readonly cure: string
}

/** Keys of the tables that materials point into. A table that is not handed in is not checked against. */
export interface TableKeys {
  readonly hazardCodes?: ReadonlySet<string>
  readonly reactivityGroups?: ReadonlySet<number>
  readonly storageGroups?: ReadonlySet<string>
  readonly wasteStreams?: ReadonlySet<string>
  readonly peroxideClasses?: ReadonlySet<string>
}

/** What a rule may look at: the library as far as it could be read, and what was handed in. */
export interface CheckContext {
  readonly library: Library
  /** Composition of every compound and polymer whose formula could be read. */
  readonly compositions: ReadonlyMap<string, Composition>
  /** Lowest id, in order of code units, of the compounds and polymers with each CAS number; of a layer, one that had it before goes first. */
  readonly firstWithCas: ReadonlyMap<string, string>
  /** "Did you mean ...? " with the nearest material id, or nothing. */
  readonly meantMaterial: (id: string) => string
  /** Ids of records that are there but were refused by the schema: pointing at them is no second fault. */
  readonly refusedIds: ReadonlySet<string>
  readonly tables: TableKeys
  /** Reads structures; undefined = none handed in, and formulas are not held against them. */
  readonly toolkit?: Toolkit
}

export type MaterialCheck = (material: Material, context: CheckContext) => readonly Finding[]
export type TransformationCheck = (transformation: Transformation, context: CheckContext) => readonly Finding[]

/** A finding as the problem that the reader sees. */
export const problemOf = (finding: Finding, where: readonly string[]): Problem => ({
  code: finding.code,
  where: [...where, ...finding.field],
  what: finding.what,
  why: finding.why,
  cure: finding.cure,
})
