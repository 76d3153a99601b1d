import { z } from 'zod'
import { type Material, materialSchema } from './material.ts'
import { type Transformation, transformationSchema } from './transformation.ts'

/** The library file, `waybench-library` version 1. */
export const libraryFileSchema = z.strictObject({
  format: z.literal('waybench-library'),
  version: z.literal(1),
  title: z.string(),
  materials: z.array(materialSchema),
  transformations: z.array(transformationSchema),
})
export type LibraryFile = z.infer<typeof libraryFileSchema>

/**
 * A checked library: every id resolves and every equation balances. Molar masses in g/mol, absent where a material has no formula
 * (feedstocks; mixtures have none of their own). A slice of a library has the same shape.
 */
export interface Library {
  readonly title: string
  readonly materials: ReadonlyMap<string, Material>
  readonly transformations: ReadonlyMap<string, Transformation>
  readonly molarMass: ReadonlyMap<string, number>
  /** Transformations by their main product, each list in order of id. */
  readonly makers: ReadonlyMap<string, readonly Transformation[]>
  /** Transformations by reactant, each list in order of id. */
  readonly users: ReadonlyMap<string, readonly Transformation[]>
}

/** The material with this id. Throws for an id that the library does not hold: the loader and the doors refuse those first. */
export function materialOf(library: Library, id: string): Material {
  const material = library.materials.get(id)
  if (!material) throw new RangeError(`no material ${id}`)
  return material
}

/** The transformation with this id; throws as {@link materialOf}. */
export function transformationOf(library: Library, id: string): Transformation {
  const transformation = library.transformations.get(id)
  if (!transformation) throw new RangeError(`no transformation ${id}`)
  return transformation
}
