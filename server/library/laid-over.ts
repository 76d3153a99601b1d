import type { z } from 'zod'
import { stopsAmong } from '../../core/hazards/regulated.ts'
import { type Traits, traitsOf } from '../../core/hazards/traits.ts'
import type { Library, LibraryFile } from '../../core/library/library.ts'
import { loadLibrary } from '../../core/library/load.ts'
import { type Material, materialSchema } from '../../core/library/material.ts'
import { bad, type Checked, good, type Problem } from '../../core/problem/problem.ts'
import { stopProblems } from '../../core/report/stops.ts'
import { bundledTables, keysOf } from './bundled.ts'
import type { Workshop } from './workshop.ts'

/** A library with records laid over the one of a workshop. */
export interface LaidOver {
  readonly library: Library
  /** Traits of the materials laid over, and of mixtures beneath that hold one of them. */
  readonly traits: ReadonlyMap<string, Traits>
}

/**
 * Lays raw records over the library of a workshop: held against every rule and screened. One that a stop row meets, or that names such a
 * material in any role, is refused; that is told whatever else is wrong.
 *
 * @param name  of the layer, for problems and for the title
 */
export function laidOver(
  beneath: Workshop,
  name: string,
  materials: readonly unknown[],
  transformations: readonly unknown[],
): Checked<LaidOver> {
  if (materials.length + transformations.length === 0) return good({ library: beneath.library, traits: new Map() })
  const file = { format: 'waybench-library', version: 1, title: name, materials, transformations }
  const loaded = loadLibrary([{ name, text: JSON.stringify(file) }], {
    title: `${beneath.library.title}; ${name}`,
    tables: keysOf(bundledTables()),
    toolkit: beneath.toolkit,
    over: beneath.library,
  })
  if (!loaded.ok) return bad([...stopsIn(beneath, materials), ...loaded.problems])
  const library = loaded.value
  const own = file as LibraryFile
  const traits = traitsTouched(beneath, library, own.materials)
  const named = new Set([...own.materials.map(one => one.id), ...own.transformations.flatMap(materialsNamed)])
  const of = (id: string) => traits.get(id) ?? beneath.traits().get(id)
  const known = new Map([...named].flatMap(id => (of(id) ? [[id, of(id)!] as const] : [])))
  const stopped = stopsAmong(known, [...known.keys()])
  if (stopped.length > 0) return bad(stopProblems(library, stopped))
  const unscreened = own.materials.filter(one => traits.get(one.id)?.screened === false)
  return good({ library, traits }, [...loaded.warnings, ...unscreened.map(one => notScreened(name, one))])
}

/** Stop rows that records meet which are not all sound. */
function stopsIn(beneath: Workshop, records: readonly unknown[]): readonly Problem[] {
  const own = sound(materialSchema, records)
  const materials = new Map([...beneath.library.materials, ...own.map(one => [one.id, one] as const)])
  const library = { ...beneath.library, materials }
  const traits = traitsTouched(beneath, library, own)
  return stopProblems(library, stopsAmong(traits, [...traits.keys()]))
}

function traitsTouched({ tables, toolkit }: Workshop, library: Library, own: readonly Material[]): ReadonlyMap<string, Traits> {
  if (own.length === 0) return new Map()
  const isOwn = new Set(own.map(one => one.id))
  const touched = [...library.materials.values()].filter(
    ({ id, contains }) => isOwn.has(id) || isOwn.has(contains?.compound ?? '') || isOwn.has(contains?.rest ?? ''),
  )
  const needed = touched.flatMap(({ id, contains }) => [id, contains?.compound, contains?.rest])
  const materials = new Map(
    needed.flatMap(id => (id === undefined ? [] : [library.materials.get(id)])).flatMap(one => (one ? [[one.id, one]] : [])),
  )
  const traits = traitsOf({ ...library, materials }, tables, toolkit)
  return new Map(touched.map(({ id }) => [id, traits.get(id)!]))
}

const materialsNamed = (step: LibraryFile['transformations'][number]): readonly string[] => [
  ...[...step.reactants, ...step.products, ...step.gasEvolved, ...(step.coProducts ?? [])].map(one => one.compound),
  ...step.charge.map(line => line.material),
]

/** Those of raw records that have the form. */
export const sound = <R>(schema: z.ZodType<R>, records: readonly unknown[]): R[] =>
  records.flatMap(record => {
    const read = schema.safeParse(record)
    return read.success ? [read.data] : []
  })

const notScreened = (layer: string, { id, name }: Material): Problem => ({
  code: 'not-screened',
  where: [layer, id],
  what: `${name} has neither a structure nor a CAS number.`,
  why: 'The regulated lists could be searched for its name alone, and its reactivity groups are not known.',
  cure: 'Add its SMILES or its CAS number.',
})
