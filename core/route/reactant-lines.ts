import { type Library, materialOf } from '../library/library.ts'
import { compoundIn, freeCompounds } from '../library/reference-charge.ts'
import { chargedRoles, type Transformation } from '../library/transformation.ts'

/** Which charge lines supply one reactant of the equation. */
export interface ReactantLines {
  readonly compound: string
  /** Indices into `charge`; empty where the source lists the reactant nowhere. */
  readonly lines: readonly number[]
  /** No line gives an amount: demanded at what the equation consumes, as the material of its first open line. */
  readonly atLeast: boolean
  /** Water or the oxygen of the air without an amount: nobody weighs it. */
  readonly free: boolean
}

const known = new WeakMap<Transformation, readonly ReactantLines[]>()

/**
 * The lines that count as each reactant, by role: charged roles, else quench lines; where none has an amount, the first open one of these.
 * Every other line (a second solvent, a wash, a catalyst the equation does not name) is bought, whatever it contains.
 */
export function reactantLines(library: Library, transformation: Transformation): readonly ReactantLines[] {
  const before = known.get(transformation)
  if (before) return before
  const found = [...new Set(transformation.reactants.map(r => r.compound))].map(compound => linesOf(library, transformation, compound))
  known.set(transformation, found)
  return found
}

function linesOf(library: Library, transformation: Transformation, compound: string): ReactantLines {
  const own = transformation.charge.flatMap((line, index) =>
    compoundIn(materialOf(library, line.material)) === compound ? [{ line, index }] : [],
  )
  const charged = own.filter(o => chargedRoles.has(o.line.role))
  const quench = own.filter(o => o.line.role === 'quench')
  const withAmount = (list: typeof own) => list.filter(o => o.line.amount !== null)
  const counted = withAmount(charged).length > 0 ? withAmount(charged) : withAmount(quench)
  if (counted.length > 0) return { compound, lines: counted.map(o => o.index), atLeast: false, free: false }
  const open = charged[0] ?? quench[0]
  const free = freeCompounds.has(compound)
  return { compound, lines: open ? [open.index] : [], atLeast: !free, free }
}

/** The reactant that a charge line supplies, by its index; null for a line that is no reactant's. */
export function reactantOfLine(library: Library, transformation: Transformation, line: number): ReactantLines | null {
  return reactantLines(library, transformation).find(r => r.lines.includes(line)) ?? null
}
