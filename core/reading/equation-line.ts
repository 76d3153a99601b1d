import { type Composition, molarMass, parseFormula } from '../chemistry/formula.ts'
import type { Toolkit } from '../chemistry/structure.ts'
import type { Problem } from '../problem/problem.ts'
import { numberIn } from '../quantity/number.ts'
import { nameKey } from './name-key.ts'
import { type Found, idNamed, isSmilesLike, type Meant, type NameIndex } from './names.ts'
import { isReactionSmiles, partsOfReactionSmiles } from './reaction-smiles.ts'

/** One side's compound as read. */
export interface TermRead {
  /** What it may be, where it has to be asked about. */
  readonly candidates?: readonly string[]
  /** As typed, without its coefficient. */
  readonly text: string
  readonly coefficient: number
  /** Id in the library; null where it is unknown or has to be asked about. */
  readonly compound: string | null
  /** Null for a feedstock, or where nothing tells. */
  readonly composition: Composition | null
  /** Said where the name alone would be asked about: in an equation all its bottles are one compound. */
  readonly note?: string
}

export interface EquationRead {
  readonly reactants: readonly TermRead[]
  readonly products: readonly TermRead[]
  readonly problems: readonly Problem[]
  /** SMILES of what a reaction SMILES has over its arrow: charged, but no reactant. */
  readonly agents?: readonly string[]
}

/** Arrows as people type them; a bare = only with blanks, since SMILES has it as a bond. */
const arrow = /\s*(?:<?[-–—=]{1,3}>|→|⟶|⇒|⇌|⇄|➔|>>)\s*|\s+=+\s+/u

/** More compounds than any equation of a single step has on one side. */
const mostTerms = 20

/** Whether a line holds an arrow. */
export const isEquation = (line: string): boolean => arrow.test(line) || isReactionSmiles(line)

/**
 * Reads "2 benzaldehyde -> benzoin": names, synonyms, formulas, ids or SMILES, with or without coefficients.
 *
 * In an equation the compound is meant and never a bottle of it: "HCl" is hydrogen chloride, and "50 % acetic acid" acetic acid. A name that
 * stands for several compounds is asked about.
 *
 * @param toolkit  reads the formula of a SMILES that the library does not hold, so that the balance can still be told
 */
export function readEquation(line: string, index: NameIndex, toolkit: Toolkit | null): EquationRead {
  const problems: Problem[] = []
  const written = line.replace(/^\s*equation\s*:\s*/i, '')
  const structures = toolkit !== null && isReactionSmiles(written) ? partsOfReactionSmiles(written, toolkit) : null
  const sides = structures === null ? written.split(arrow) : [structures.reactants, structures.products].map(side => side.join(' + '))
  if (sides.length !== 2) {
    problems.push({
      code: sides.length < 2 ? 'equation-missing' : 'equation-unreadable',
      where: ['line 1'],
      what: sides.length < 2 ? 'The first line has no arrow.' : 'The first line has more than one arrow.',
      why: 'Amounts and by-products are computed from one equation.',
      cure: 'Begin with the equation, for example: 2 benzaldehyde -> benzoin.',
    })
    return { reactants: [], products: [], problems }
  }
  const longest = Math.max(...sides.map(side => termsOf(side).length))
  if (longest > mostTerms) {
    problems.push({
      code: 'equation-unreadable',
      where: ['line 1'],
      what: `One side of the equation has ${longest} compounds.`,
      why: `A step of a preparation has at most ${mostTerms} on a side.`,
      cure: 'Write one balanced equation for one step.',
    })
    return { reactants: [], products: [], problems }
  }
  const [reactants, products] = sides.map(side => termsOf(side).map(text => readTerm(text, index, toolkit, problems)))
  if (reactants!.length === 0 || products!.length === 0)
    problems.push({
      code: 'equation-unreadable',
      where: ['line 1'],
      what: `There is nothing ${reactants!.length === 0 ? 'before' : 'after'} the arrow.`,
      why: 'An equation needs at least one reactant and one product.',
      cure: 'Name the compounds on both sides.',
    })
  return {
    reactants: merged(reactants!),
    products: merged(products!),
    problems,
    ...(structures === null ? {} : { agents: structures.agents }),
  }
}

/** Parts between plus signs; a plus within brackets, or the charge of an ion, parts nothing. */
function termsOf(side: string): readonly string[] {
  const parts = /\s\+\s/.test(side) ? side.split(/\s+\+\s+/) : side.split(/\+(?=\s|[A-Za-z\d(])(?![^[]*\])(?<![\d^]\+)/)
  return parts.map(part => part.trim()).filter(part => part !== '')
}

/** The same compound twice on one side is one term. */
function merged(terms: readonly TermRead[]): readonly TermRead[] {
  const list: TermRead[] = []
  for (const term of terms) {
    const at =
      term.compound === null
        ? list.findIndex(one => one.compound === null && one.text === term.text)
        : list.findIndex(one => one.compound === term.compound)
    if (at < 0) list.push(term)
    else list[at] = { ...list[at]!, coefficient: list[at]!.coefficient + term.coefficient }
  }
  return list
}

function readTerm(text: string, index: NameIndex, toolkit: Toolkit | null, problems: Problem[]): TermRead {
  const whole = compoundNamed(text, index)
  const counted = coefficientOf(text)
  const rest = counted === null ? null : compoundNamed(counted.rest, index)
  // With a blank after it a number is a coefficient wherever what follows is known: "2 CuSO4·5H2O" is no double salt.
  const apart = rest !== null && rest.kind !== 'unknown' && /^[\d/.,½¼¾⅓⅔]+\s/u.test(text)
  if (counted !== null && rest !== null && (whole.kind === 'unknown' || apart)) {
    return { text: counted.rest, coefficient: counted.coefficient, ...settle(counted.rest, rest, index, toolkit, problems) }
  }
  return { text, coefficient: 1, ...settle(text, whole, index, toolkit, problems) }
}

/** "2 benzaldehyde", "2H2O", "1/2 O2"; not "2-naphthol" or "2,3-butanediol", where the digit belongs to the name. */
function coefficientOf(text: string): { readonly coefficient: number; readonly rest: string } | null {
  const match = /^(\d+\s+\d+\/\d+|\d+\/\d+|\d*[½¼¾⅓⅔]|\d+(?:[.,]\d+)?)(?:\s*[×*·]\s*|\s+(?=\S)|(?=[A-Z([]))(.+)$/u.exec(text)
  if (match === null) return null
  const value = numberIn(match[1]!, [], 'decimal')
  return value.ok && value.value > 0 ? { coefficient: value.value, rest: match[2]!.trim() } : null
}

function compoundNamed(text: string, index: NameIndex): Found {
  const named = idNamed(text)
  if (named !== null) {
    const material = index.materials.get(named.id)
    return material === undefined
      ? { kind: 'unknown' }
      : { kind: 'material', material: material.contains?.compound ?? named.id, assumed: null }
  }
  const row = index.ambiguous(text)
  const found = index.lookUp(text)
  const ids = row !== null ? (row.default === null ? row.candidates : [row.default]) : found.kind === 'material' ? [found.material] : null
  if (ids === null) return found
  const compounds = [...new Set(ids.map(id => index.materials.get(id)?.contains?.compound ?? id))].sort()
  const fitting = matchingFormula(text, compounds, index)
  const chosen = fitting.length === 1 ? fitting : compounds
  if (chosen.length !== 1) return { kind: 'ambiguous', candidates: chosen, why: row?.why ?? 'several compounds carry this name' }
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
  // So may "sodium acetate" be the salt without its water or the hydrate on the shelf; a formula counts its own atoms and need not be asked.
  const hydrates = row === null || row.default !== null ? [] : row.candidates.filter(id => isHydrateOf(id, chosen[0]!, index))
  if (hydrates.length > 0 && fitting.length === 0) return { kind: 'ambiguous', candidates: [chosen[0]!, ...hydrates], why: row!.why }
  const hasBottles = row !== null && row.default === null && row.candidates.length > 1 && row.candidates.includes(chosen[0]!)
  return { kind: 'material', material: chosen[0]!, assumed: hasBottles ? row.why : null }
}

/** A solid that holds the compound and water of crystallisation. */
function isHydrateOf(id: string, compound: string, index: NameIndex): boolean {
  const material = index.materials.get(id)
  return material?.form === 'solid' && material.contains?.compound === compound && /hydrate/i.test(material.name)
}

/** Where the text is a formula, those of the candidates that have it. */
function matchingFormula(text: string, compounds: readonly string[], index: NameIndex): readonly string[] {
  const typed = parseFormula(text)
  if (!typed.ok) return []
  return compounds.filter(id => {
    const formula = index.materials.get(id)?.formula
    const own = formula === undefined ? null : parseFormula(formula)
    return own?.ok === true && sameAtoms(own.value, typed.value)
  })
}

const sameAtoms = (one: Composition, other: Composition): boolean =>
  one.counts.size === other.counts.size && [...one.counts].every(([symbol, count]) => other.counts.get(symbol) === count)

function settle(
  text: string,
  found: Found,
  index: NameIndex,
  toolkit: Toolkit | null,
  problems: Problem[],
): Pick<TermRead, 'compound' | 'composition' | 'candidates' | 'note'> {
  const where = ['line 1', text]
  if (found.kind === 'material') {
    const formula = index.materials.get(found.material)?.formula
    const read = formula === undefined ? null : parseFormula(formula)
    const name = index.materials.get(found.material)?.name ?? found.material
    const note = `"${text}" in the equation is the compound, ${name}; which bottle supplies it (${found.assumed ?? ''}) is asked at its charge`
    return {
      compound: found.material,
      composition: read?.ok === true ? read.value : null,
      ...(found.assumed === null ? {} : { note }),
    }
  }
  const structure = toolkit !== null && isSmilesLike(text) ? toolkit.parse(text) : null
  const typed = structure === null ? parseFormula(text) : null
  const composition = structure?.ok === true ? structure.value.composition : typed?.ok === true ? typed.value : null
  if (found.kind === 'ambiguous') problems.push(askedAbout(text, found.candidates, found.why, where))
  else problems.push(unknownName(text, index, where, composition))
  return { compound: null, composition, ...(found.kind === 'ambiguous' ? { candidates: found.candidates } : {}) }
}

/** A name that means several materials: which, and why it matters. */
export function askedAbout(text: string, candidates: readonly string[], why: string, where: readonly string[]): Problem {
  return {
    code: 'name-ambiguous',
    where,
    what: `"${text}" can mean ${candidates.length > 1 ? candidates.join(', ') : `${candidates.join('')} or something the library does not hold`}.`,
    why: `${why.slice(0, 1).toUpperCase()}${why.slice(1)}.`,
    cure: `Write which one: ${candidates.join(', ')}.`,
  }
}

/**
 * A name that nothing in the library carries, with the one that was probably meant.
 *
 * @param composition  of a structure or formula that was typed: its mass is known though the library does not hold it
 */
export function unknownName(text: string, index: NameIndex, where: readonly string[], composition: Composition | null = null): Problem {
  // Formulas one letter apart are different substances: nothing is proposed for them.
  const meant = parseFormula(text).ok ? null : index.meant(text)
  return {
    code: 'name-unknown',
    where,
    what: `The library holds nothing called "${text}".`,
    why:
      composition === null
        ? 'Its molar mass and hazards are not known here.'
        : `Its molar mass follows from what is typed, ${molarMass(composition).toFixed(2)} g/mol; its hazards are not known here.`,
    cure: `${nearName(meant)}Correct the name, or add the material to a library of your own first.`,
  }
}

/** Another compound is never proposed as a correction: only that it is another is said. */
function nearName(meant: Meant | null): string {
  if (meant === null) return ''
  return meant.another
    ? `"${meant.name}", which the library holds, is another compound: its groups stand elsewhere. `
    : `Did you mean "${meant.name}"? `
}
