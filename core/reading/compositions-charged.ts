import { type Composition, parseFormula } from '../chemistry/formula.ts'
import { compoundIn } from '../library/reference-charge.ts'
import type { ChargeRead } from './charge-line.ts'
import type { NameIndex } from './names.ts'

/** What the lines charge, or contain, as far as the library holds it with a formula. */
export const compositionsOf = (charges: readonly Pick<ChargeRead, 'found'>[], index: NameIndex): readonly Composition[] =>
  charges.flatMap(({ found }) => {
    const material = found.kind === 'material' ? index.materials.get(found.material) : undefined
    const compound = material === undefined ? null : compoundIn(material)
    const formula = compound === null ? undefined : index.materials.get(compound)?.formula
    const read = formula === undefined ? null : parseFormula(formula)
    return read?.ok ? [read.value] : []
  })
