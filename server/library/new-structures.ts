import type { Structure } from '../../core/chemistry/structure.ts'
import { atOnce, type InPieces } from '../../core/network/pieces.ts'
import type { Checked } from '../../core/problem/problem.ts'
import { idOfName } from '../../core/reading/id-of-name.ts'
import type { NameIndex } from '../../core/reading/names.ts'
import { type Identified, identified, type TypedMaterial } from './identified.ts'
import type { Workshop } from './workshop.ts'

/** A structure that a file holds and the library does not, as a new material. */
export interface NewStructure extends Identified {
  /** Every way in which the file writes it. */
  readonly structures: readonly string[]
}

/**
 * Structures of a file as new materials, each once however often and in whatever way it is written. One without a name is called by its
 * formula, set apart from what is called so already; no two of them have one id.
 *
 * @param typed  what a person said of each structure; of several ways of writing one, the first that says something of it counts
 * @returns those that the library does not hold by now
 */
export const newStructures = (workshop: Workshop, typed: readonly TypedMaterial[]): readonly NewStructure[] =>
  atOnce(newStructuresInPieces(workshop, typed))

/** The same with a pause after each structure: hundreds of them take seconds. */
export function* newStructuresInPieces(workshop: Workshop, typed: readonly TypedMaterial[]): InPieces<readonly NewStructure[]> {
  const { library, toolkit } = workshop
  const names = workshop.names()
  const groups = new Map<string, Read[]>()
  for (const one of typed) {
    yield
    const read = toolkit.parse(one.smiles.trim(), ['new material', 'smiles'])
    if (read.ok && names.ofStructure(read.value).length > 0) continue
    const key = read.ok ? read.value.identityKey : one.smiles
    groups.set(key, [...(groups.get(key) ?? []), { one, read }])
  }
  const ids = new Set<string>()
  const called = new Set<string>()
  const found: NewStructure[] = []
  for (const group of groups.values()) {
    yield
    const said = group.find(({ one }) => `${one.name}${one.cas}`.trim() !== '') ?? group[0]!
    const told = identified(workshop, said.one, said.one.smiles.trim() === '' ? null : said.read)
    const { formula } = told.material
    const name = said.one.name.trim() !== '' || formula === undefined ? told.material.name : formulaName(formula, names, called)
    const id = idOfName(name, { has: one => ids.has(one) || library.materials.has(one) })
    called.add(name)
    ids.add(id)
    const named = <M extends NewStructure['withHazards']>(material: M): M => (material === null ? material : { ...material, id, name })
    found.push({
      ...told,
      structures: [...new Set(group.map(({ one }) => one.smiles))],
      material: named(told.material),
      withHazards: named(told.withHazards),
    })
  }
  return found
}

interface Read {
  readonly one: TypedMaterial
  readonly read: Checked<Structure>
}

/** Isomers share a formula: the second is numbered, and so is the first where the library knows one. */
function formulaName(formula: string, names: NameIndex, called: ReadonlySet<string>): string {
  const isFree = (name: string): boolean => !called.has(name) && names.lookUp(name).kind === 'unknown'
  if (isFree(formula)) return formula
  for (let number = 2; ; number++) if (isFree(`${formula} isomer ${number}`)) return `${formula} isomer ${number}`
}
