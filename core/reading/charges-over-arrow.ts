import type { Toolkit } from '../chemistry/structure.ts'
import type { CommaRule } from '../quantity/number.ts'
import { type ChargeRead, readChargeLine } from './charge-line.ts'
import type { NameIndex } from './names.ts'
import { wordFor } from './word-for.ts'

/** One thing over the arrow as a line of the charge, without an amount. */
export interface OverArrow {
  /** The library's word for it, or its SMILES. */
  readonly line: string
  /** Null where the library does not hold it, or holds several of this structure: which one is not guessed. */
  readonly charge: ChargeRead | null
  /** Why it is asked about: several compounds have this structure, or the library holds other stereo forms of it alone. */
  readonly asked?: string
}

/** What stands over the arrow of a reaction, as charges whose amounts are still to be given. */
export function chargesOverArrow(
  agents: readonly string[],
  index: NameIndex,
  toolkit: Toolkit | null,
  comma: CommaRule,
): readonly OverArrow[] {
  return [...new Set(agents)].map(smiles => {
    const read = toolkit?.parse(smiles)
    const ids = read?.ok ? index.ofStructure(read.value) : []
    const id = ids.length === 1 ? ids[0] : undefined
    if (id !== undefined) {
      const line = wordFor(id, index)
      return { line, charge: readChargeLine(line, index, comma) }
    }
    const why = ids.length > 1 ? `several compounds have this structure: ${[...ids].sort().join(', ')}` : null
    const asked = why ?? (read?.ok ? (index.otherForms(read.value)?.why ?? null) : null)
    return { line: smiles, charge: null, ...(asked === null ? {} : { asked }) }
  })
}

/** Whether two lines charge the same material. */
export const sameMaterial = (one: ChargeRead, other: ChargeRead): boolean =>
  one.found.kind === 'material' && other.found.kind === 'material' && one.found.material === other.found.material
