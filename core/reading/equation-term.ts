import { type Composition, hill, molarMass, parseFormula } from '../chemistry/formula.ts'
import type { Toolkit } from '../chemistry/structure.ts'
import type { Problem } from '../problem/problem.ts'
import { numberIn } from '../quantity/number.ts'
import { compoundNamed } from './compound-named.ts'
import { askedAbout, unknownName } from './name-problems.ts'
import { type Found, isSmilesLike, type NameIndex } from './names.ts'
import { repeatUnitIn } from './repeat-unit.ts'
import { plainSmiles, readsTwoWays } from './smiles-or-formula.ts'
import { formulaUnitOf, isWeighedOnly } from './solid-mixture.ts'
import { wordFor } from './word-for.ts'

/** One side's compound as read. */
export interface TermRead {
  /** What it may be, where it has to be asked about. */
  readonly candidates?: readonly string[]
  /** As typed, without its coefficient; of a structure in a reaction SMILES the library's word. */
  readonly text: string
  readonly coefficient: number
  /** Id in the library; null where it is unknown or has to be asked about. */
  readonly compound: string | null
  /** What one unit of the term holds, water of crystallisation included. Null for a feedstock, or where nothing tells. */
  readonly composition: Composition | null
  /** Said where the name alone would be asked about: in an equation all its bottles are one compound. */
  readonly note?: string
  /** Of a hydrate that is weighed out for its compound: molecules of water that come with one of the compound. */
  readonly crystalWater?: number
}

/** How the terms of one equation are read. */
export interface TermReading {
  readonly index: NameIndex
  readonly toolkit: Toolkit | null
  readonly side: 'left' | 'right'
  /** Whether another term can be nothing but a structure, so that "CO" may be one too. */
  readonly drawn: boolean
  readonly problems: Problem[]
}

type Settled = Pick<TermRead, 'compound' | 'composition' | 'candidates' | 'note' | 'crystalWater'>

/** A term of an equation by a name, synonym, formula, id or SMILES, with or without a coefficient. */
export function readTerm(text: string, reading: TermReading): TermRead {
  const { index, toolkit } = reading
  const strong = strengthIn(text, index)
  if (strong !== null)
    return {
      ...readTerm(strong.name, reading),
      note: `"${text}" in the equation is the compound, ${strong.name}: its strength belongs to its charge`,
    }
  // "n butanol" is n-butanol, and no number of butanols.
  const hyphened = text.replace(/^n\s+/, 'n-')
  const whole = compoundNamed(hyphened, index)
  const counted = coefficientOf(text)
  const rest = counted === null ? null : compoundNamed(counted.rest, index)
  // With a blank after it a number is a coefficient wherever what follows is known: "2 CuSO4·5H2O" is no double salt.
  const apart = rest !== null && rest.kind !== 'unknown' && /^[\d/.,½¼¾⅓⅔]+\s/u.test(text)
  const [name, coefficient, found] =
    counted !== null && rest !== null && (whole.kind === 'unknown' || apart) ? [counted.rest, counted.coefficient, rest] : [text, 1, whole]
  const head = { text: name, coefficient }
  if (toolkit !== null && readsTwoWays(name, toolkit)) return { ...head, ...oneOfTwo(name, found, toolkit, reading) }
  return { ...head, ...settle(name, found, reading) }
}

/** A compound of a reaction SMILES: a structure and nothing else, "O" being water there and "NO" hydroxylamine. */
export function readStructure(smiles: string, reading: TermReading & { readonly toolkit: Toolkit }): TermRead {
  const { index, toolkit, problems } = reading
  const read = toolkit.parse(smiles, ['line 1', smiles])
  if (!read.ok) {
    problems.push(...read.problems)
    return { text: smiles, coefficient: 1, compound: null, composition: null }
  }
  const { composition } = read.value
  const ids = index.ofStructure(read.value)
  if (ids.length === 1) return { text: wordFor(ids[0]!, index), coefficient: 1, compound: ids[0]!, composition }
  const text = plainSmiles(smiles)
  const where = ['line 1', text]
  const asked =
    ids.length > 1 ? { candidates: [...ids].sort(), why: 'several compounds have this structure' } : index.otherForms(read.value)
  problems.push(asked === null ? unknownName(text, index, where, composition) : askedAbout(text, asked, where))
  return { text, coefficient: 1, compound: null, composition, ...(asked === null ? {} : { candidates: asked.candidates }) }
}

/** "2 benzaldehyde", "2H2O", "1/2 O2", "n styrene"; not "2-naphthol" or "2,3-butanediol", where the digit belongs to the name. */
export function coefficientOf(text: string): { readonly coefficient: number; readonly rest: string } | null {
  // A polymer counts per repeat unit: "n" is 1, and so is "n-1".
  const units = /^\(?(\d*)\s*n(?:\s*[-–−]\s*1)?\)?\s+(\S.*)$/u.exec(text)
  if (units !== null) return { coefficient: Number(units[1] || 1), rest: units[2]!.trim() }
  const match = /^(\d+\s+\d+\/\d+|\d+\/\d+|\d*[½¼¾⅓⅔]|\d+(?:[.,]\d+)?)(?:\s*[×*·]\s*|\s+(?=\S)|(?=[A-Z([]))(.+)$/u.exec(text)
  if (match === null) return null
  const value = numberIn(match[1]!, [], 'decimal')
  return value.ok && value.value > 0 ? { coefficient: value.value, rest: match[2]!.trim() } : null
}

/** "2 M-NaOH", "2N-hydrochloric acid": a strength that the library does not hold before a name that it does. */
function strengthIn(text: string, index: NameIndex): { readonly name: string } | null {
  const name = /^\d+(?:[.,]\d+)?\s*(?:[MN]|%|mol\/L)(?:\s*-\s*|\s+)(\p{L}.*)$/u.exec(text)?.[1]
  const isKnown = (one: string): boolean => compoundNamed(one, index).kind !== 'unknown'
  // "2 N-methylaniline" are two of that.
  return name !== undefined && isKnown(name) && !isKnown(text) && !isKnown(text.replace(/^[\d.,]+\s*/, '')) ? { name } : null
}

/**
 * A formula that is a structure as well. Among names and formulas it is read as the formula where the library holds that, with a word about
 * it; among structures, or where it holds none, it is asked about. Nothing is counted before that.
 */
function oneOfTwo(text: string, found: Found, toolkit: Toolkit, { index, drawn, problems }: TermReading): Settled {
  const structure = toolkit.parse(text)
  const drawnIds = structure.ok ? index.ofStructure(structure.value) : []
  const drawnName = drawnIds.map(id => index.materials.get(id)!.name).join(' or ') || `a structure written ${plainSmiles(text)}`
  if (!drawn && found.kind === 'material') {
    const material = index.materials.get(found.material)!
    return {
      compound: found.material,
      composition: compositionOf(material.formula),
      note: `"${text}" in the equation is read as the formula, ${material.name}, and not as the structure (SMILES), ${drawnName}`,
    }
  }
  const formulaIds = found.kind === 'material' ? [found.material] : found.kind === 'ambiguous' ? found.candidates : []
  const candidates = [...new Set([...formulaIds, ...drawnIds])].sort()
  const why = `As a formula it is ${formulaIds.length === 0 ? `${text} itself` : formulaIds.map(id => index.materials.get(id)!.name).join(' or ')}, as a structure (SMILES) ${drawnName}`
  const where = ['line 1', text]
  problems.push(
    candidates.length > 0
      ? askedAbout(text, { candidates, why }, where)
      : {
          code: 'name-unknown',
          where,
          what: `"${text}" is a formula and a structure at once, and the library holds neither.`,
          why: `${why}.`,
          cure: `Write its name; or ${plainSmiles(text)} for the structure, and add the material to a library of your own first.`,
        },
  )
  return { compound: null, composition: null, ...(candidates.length > 0 ? { candidates } : {}) }
}

function compositionOf(formula: string | undefined): Composition | null {
  const read = formula === undefined ? null : parseFormula(formula)
  return read?.ok === true ? read.value : null
}

function settle(text: string, found: Found, reading: TermReading): Settled {
  const { index, toolkit, problems } = reading
  const where = ['line 1', text]
  if (found.kind === 'material') {
    if (isWeighedOnly(index.materials.get(found.material))) return settleSolid(text, found.material, reading)
    const material = index.materials.get(found.material)
    const note = `"${text}" in the equation is the compound, ${material?.name ?? found.material}; which bottle supplies it (${found.assumed ?? ''}) is asked at its charge`
    return { compound: found.material, composition: compositionOf(material?.formula), ...(found.assumed === null ? {} : { note }) }
  }
  const structure = toolkit !== null && isSmilesLike(text) ? toolkit.parse(text) : null
  const composition =
    structure?.ok === true ? structure.value.composition : structure === null ? compositionOf(repeatUnitIn(text) ?? text) : null
  if (found.kind === 'ambiguous') problems.push(askedAbout(text, found, where))
  else problems.push(unknownName(text, index, where, composition))
  return { compound: null, composition, ...(found.kind === 'ambiguous' ? { candidates: found.candidates } : {}) }
}

/**
 * A salt or hydrate that the library only weighs out counts with all its atoms. A hydrate that reacts supplies its compound and its water; a
 * grade supplies what it contains. What is made, and a salt of an acid, would be another compound than the one it contains: that is asked for.
 */
function settleSolid(text: string, id: string, { index, toolkit, side, problems }: TermReading): Settled {
  const material = index.materials.get(id)!
  const compound = index.materials.get(material.contains!.compound)!
  const unit = formulaUnitOf(material, compound, text, toolkit)
  if (side === 'left' && unit?.water != null && index.lookUp('H2O').kind === 'material')
    return {
      compound: compound.id,
      composition: unit.composition,
      crystalWater: unit.water,
      note: `"${text}" in the equation is ${compound.name} and its ${Number(unit.water.toFixed(3))} H2O: the water is set against that of the other side`,
    }
  if (side === 'left' && unit === null)
    return {
      compound: compound.id,
      composition: compositionOf(compound.formula),
      note: `"${text}" in the equation is the ${compound.name} in it: what else it holds is not in the equation`,
    }
  problems.push(weighedOnly(text, material.name, compound.name, unit?.composition ?? null))
  return { compound: null, composition: unit?.composition ?? null }
}

const weighedOnly = (text: string, name: string, compound: string, whole: Composition | null): Problem => ({
  code: 'equation-weighed-only',
  where: ['line 1', text],
  what: `The library holds ${name} only as something to weigh ${compound} from, not as a compound of its own.`,
  why:
    whole === null
      ? 'An equation counts whole compounds, and its formula is not known.'
      : `An equation counts whole compounds: one unit is ${hill(whole)}, ${molarMass(whole).toFixed(2)} g/mol, and theory and yield follow from it.`,
  cure: `Enter it as a compound of its own, under the same name; or write ${compound} in its place, where that is what reacts or is weighed.`,
})
