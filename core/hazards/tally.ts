import { type Library, materialOf } from '../library/library.ts'
import { usesInStep } from '../route/materials.ts'
import { hazardClassOf } from './classes.ts'
import type { HazardClass, HazardCounts } from './hazard-list.ts'
import { isOnlyEvolved } from './known.ts'
import { labelledMaterialOf } from './mixture.ts'

/**
 * What `hazardCounts` says of `materialsOfRoute`, without making a list: a search asks it of every route that it draws, and most of those are
 * never shown.
 *
 * @param start in hand, and `target` kept: neither is met as a gas that is only given off
 * @throws RangeError for an unknown id
 */
export function hazardTally(library: Library, start: string, target: string, transformations: Iterable<string>): HazardCounts {
  const known = knownIn(library)
  const turn = ++known.turn
  const { heldIn, metIn } = known
  const met: number[] = []
  const meet = (material: number, held: boolean) => {
    if (metIn[material] !== turn) {
      metIn[material] = turn
      met.push(material)
    }
    if (held) heldIn[material] = turn
  }
  meet(numberOf(known, start), true)
  meet(numberOf(known, target), true)
  for (const id of transformations) {
    const step = known.steps.get(id) ?? stepOf(library, known, id)
    for (let i = 0; i < step.length; i++) meet(step[i]! >> 1, (step[i]! & 1) === 1)
  }
  const counts = { gravest: 0, unknown: 0, danger: 0, warning: 0 }
  for (const material of met) {
    const isHeld = heldIn[material] === turn
    const classes = isHeld ? known.held : known.givenOff
    classes[material] ??= hazardClassOf(labelledMaterialOf(library, known.ids[material]!), isHeld ? ['charged'] : ['gas'])
    const hazardClass = classes[material]!
    if (hazardClass !== 'none') counts[hazardClass] += 1
  }
  return counts
}

/** Of a library, what was asked of it so far; materials are numbered as they are met. */
interface KnownIn {
  readonly ids: string[]
  readonly numbers: Map<string, number>
  /** By transformation its materials: number times two, and one where some role of it is more than being given off. */
  readonly steps: Map<string, readonly number[]>
  /** By material the class where it is handled, and where it is only given off. */
  readonly held: HazardClass[]
  readonly givenOff: HazardClass[]
  /** By material the last turn in which it was met, and in which it was held: so that nothing has to be cleared. */
  readonly metIn: number[]
  readonly heldIn: number[]
  turn: number
}

/** A library never changes, so that nothing here can go stale. */
const libraries = new WeakMap<Library, KnownIn>()

function knownIn(library: Library): KnownIn {
  let known = libraries.get(library)
  if (known === undefined) {
    known = { ids: [], numbers: new Map(), steps: new Map(), held: [], givenOff: [], metIn: [], heldIn: [], turn: 0 }
    libraries.set(library, known)
  }
  return known
}

function numberOf({ numbers, ids }: KnownIn, material: string): number {
  let number = numbers.get(material)
  if (number === undefined) {
    number = ids.push(material) - 1
    numbers.set(material, number)
  }
  return number
}

function stepOf(library: Library, known: KnownIn, id: string): readonly number[] {
  const materials = new Map<number, boolean>()
  usesInStep(library, id, (material, use) => {
    const number = numberOf(known, material)
    const isHeld = !isOnlyEvolved(materialOf(library, material), [use])
    materials.set(number, isHeld || materials.get(number) === true)
  })
  const step = [...materials].map(([number, isHeld]) => 2 * number + (isHeld ? 1 : 0))
  known.steps.set(id, step)
  return step
}
