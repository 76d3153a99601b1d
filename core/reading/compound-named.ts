import { type Composition, parseFormula, sameComposition } from '../chemistry/formula.ts'
import { nameKey } from './name-key.ts'
import { type Found, idNamed, type NameIndex } from './names.ts'
import { repeatUnitIn } from './repeat-unit.ts'
import { isWeighedOnly } from './solid-mixture.ts'

/**
 * What a term of an equation names: the compound and never a bottle of it. "HCl" is hydrogen chloride, and "50 % acetic acid" acetic acid; a
 * hydrate or a salt that is only weighed out stays itself, for the one who counts its atoms.
 */
export function compoundNamed(text: string, index: NameIndex): Found {
  const named = idNamed(text)
  if (named !== null)
    return index.materials.has(named.id) ? { kind: 'material', material: standsFor(named.id, index), assumed: null } : { kind: 'unknown' }
  const unit = repeatUnitIn(text)
  if (unit !== null) return polymerOf(unit, index)
  const row = index.ambiguous(text)
  const found = index.lookUp(text)
  if (found.kind === 'ambiguous' && found.none) return found
  const ids =
    row !== null
      ? row.default === null
        ? row.candidates
        : [row.default]
      : found.kind === 'material'
        ? [found.material]
        : found.kind === 'ambiguous'
          ? found.candidates
          : null
  if (ids === null) return found
  const all = [...new Set(ids.map(id => standsFor(id, index)))].sort()
  // A compound of its own goes before what is only weighed out and has the very same name.
  const own = row === null ? all.filter(id => !isWeighedOnly(index.materials.get(id))) : []
  const compounds = own.length > 0 ? own : all
  const fitting = matchingFormula(text, compounds, index)
  const chosen = fitting.length === 1 ? fitting : compounds
  if (chosen.length !== 1)
    return {
      kind: 'ambiguous',
      candidates: chosen,
      why: row?.why ?? (found.kind === 'ambiguous' ? found.why : 'several compounds carry this name'),
    }
  const compound = index.materials.get(chosen[0]!)
  // "Oxalic acid" may be the anhydrous acid, which is another compound with another equation.
  if (
    row !== null &&
    row.default === null &&
    compound !== undefined &&
    /hydrate/i.test(compound.name) &&
    !/hydrate|\dH2O/i.test(nameKey(text))
  )
    return { kind: 'ambiguous', candidates: chosen, why: row.why }
  const hasBottles = row !== null && row.default === null && row.candidates.length > 1 && row.candidates.includes(chosen[0]!)
  return { kind: 'material', material: chosen[0]!, assumed: hasBottles ? row.why : null }
}

/** A solution stands for its compound; a solid that is weighed out has a formula of its own. */
function standsFor(id: string, index: NameIndex): string {
  const material = index.materials.get(id)
  return isWeighedOnly(material) ? id : (material?.contains?.compound ?? id)
}

/** Polymers are found by their repeat unit, which another compound, the monomer, may share. */
function polymerOf(unit: string, index: NameIndex): Found {
  const typed = parseFormula(unit)
  if (!typed.ok) return { kind: 'unknown' }
  const ids = [...index.materials.values()]
    .filter(({ kind, formula }) => kind === 'polymer' && hasComposition(formula, typed.value))
    .map(one => one.id)
    .sort()
  if (ids.length === 0) return { kind: 'unknown' }
  return ids.length === 1
    ? { kind: 'material', material: ids[0]!, assumed: null }
    : { kind: 'ambiguous', candidates: ids, why: 'several polymers have this repeat unit' }
}

/** Where the text is a formula, those of the candidates that have it. */
function matchingFormula(text: string, compounds: readonly string[], index: NameIndex): readonly string[] {
  const typed = parseFormula(text)
  return typed.ok ? compounds.filter(id => hasComposition(index.materials.get(id)?.formula, typed.value)) : []
}

function hasComposition(formula: string | undefined, composition: Composition): boolean {
  const own = formula === undefined ? null : parseFormula(formula)
  return own?.ok === true && sameComposition(own.value, composition)
}
