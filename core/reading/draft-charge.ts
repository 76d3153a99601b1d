import { molarGasVolumeL } from '../chemistry/solution.ts'
import type { Library } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { compoundIn, measured } from '../library/reference-charge.ts'
import type { Unit } from '../library/source.ts'
import type { ChargeLine } from '../library/transformation.ts'
import type { Problem } from '../problem/problem.ts'
import { amountOfEach } from './amount-of-each.ts'
import { type Beside, isOfStrength } from './bottle.ts'
import { type ChargeRead, dropMl } from './charge-line.ts'
import { contradictory, minusOrMark, nameless, noSuchStrength, nothing, otherStrength, productCharged } from './charge-problems.ts'
import type { EquationRead } from './equation-line.ts'
import type { TermRead } from './equation-term.ts'
import { askedAbout, namesMore, unknownName } from './name-problems.ts'
import { idNamed, type NameIndex } from './names.ts'
import { type PerGram, perGramOf } from './per-gram.ts'
import { roleOf } from './role.ts'
import { unclearPerGram } from './unclear-amount.ts'
import { densityMissing, statedInstead, wantsDensity } from './without-density.ts'

/** A charge line on its way into the library format. */
export interface DraftCharge {
  readonly read: ChargeRead
  /** Null where it has to be asked about or is unknown. */
  readonly material: Material | null
  /** What the material is or contains; null for a mixture that does not say. */
  readonly compound: string | null
  readonly amount: number | null
  readonly unit: Unit
  readonly amountMol: number | null
  /** Where the line says how much for each gram of product. */
  readonly perGram: PerGram | null
  readonly equivalents: number | null
  /** Reckoned here rather than stated: drops, equivalents. */
  readonly derived: boolean
  readonly problems: readonly Problem[]
  readonly notes: readonly string[]
}

/** Moles or grams stated beside an amount may differ this much from it before a word is said: they are rounded to two figures. */
const statedTolerance = 0.06

/** The line with its material settled and its amount in moles, as far as they can be told without the other lines. */
export function draftCharge(read: ChargeRead, library: Library, index: NameIndex): DraftCharge {
  const where = ['charges', read.text]
  const problems: Problem[] = []
  const notes = read.notes.map(note => `${read.text}: ${note}`)
  const { found } = read
  if (found.kind === 'ambiguous') problems.push(askedAbout(read.phrase, found, where))
  const each = idNamed(read.text) === null ? amountOfEach(read.text, where) : null
  if (each !== null) problems.push(each)
  // Parts that are summed bring words between them: how much it is comes first.
  else if (found.kind === 'unknown' && !(found.beside !== undefined && read.unclear !== undefined))
    problems.push(notFound(read, found.beside, index, where))
  if (found.kind === 'no-such-strength') {
    const called = (id: string) => ({ id, name: library.materials.get(id)?.name ?? id })
    problems.push(noSuchStrength(read.phrase, called(found.compound), found.held.map(called), pureOf(read, found.compound, library), where))
  }
  if ((read.amount === 0 || read.perGramProduct === 0) && read.unclear === undefined) problems.push(nothing(read.text, where))
  if (read.dashed === true) problems.push(minusOrMark(read.text, where))
  const named = found.kind === 'material' ? (library.materials.get(found.material) ?? null) : null
  const other = read.strengthBesideId
  const isOther = named?.contains !== undefined && other !== undefined && !isOfStrength(named, other, index)
  if (isOther) problems.push(otherStrength(read.text, `${other.value} ${other.unit}`, named.name, where))
  const perGram = named === null ? null : perGramOf(read, named, library)
  const noGrams = named !== null && read.perGramProduct !== null && perGram === null
  const unclear = each !== null ? null : (read.unclear ?? (noGrams ? unclearPerGram(read.text) : null))
  if (unclear !== null) problems.push({ ...unclear, where })
  // Whatever is asked about leaves the line open.
  const material = problems.length === 0 ? named : null
  const inDrops = read.unit === 'drop'
  const relative = read.unit === 'equiv'
  if (inDrops && (read.amount !== null || read.perGramProduct !== null)) notes.push(`${read.text}: a drop taken as ${dropMl} mL`)
  const gasMol = material === null ? null : molesOfGas(read, material)
  if (gasMol !== null) notes.push(`${read.text}: a volume of gas taken at 25 °C and 1 atm, ${molarGasVolumeL} L/mol`)
  const written = relative || read.amount === null ? null : inDrops ? read.amount * dropMl : (gasMol ?? read.amount)
  const writtenIn: Unit = inDrops ? 'mL' : relative || gasMol !== null ? 'mol' : (read.unit as Unit)
  const isOpen = material !== null && (written !== null || read.perGramProduct !== null) && wantsDensity(material, writtenIn)
  const instead = isOpen ? statedInstead(read, library, material) : null
  if (isOpen && instead === null) problems.push(densityMissing(read.text, material, where))
  if (instead !== null)
    notes.push(`${read.text}: counted by its ${instead.amount} ${instead.unit}; the density of ${material!.name} is not known`)
  const { amount, unit } = instead ?? { amount: written, unit: writtenIn }
  const amountMol = material === null || amount === null ? null : measured(library, material, amount, unit).amountMol
  if (material !== null && amountMol !== null) {
    const beside = disagreements(read, material, amountMol, library)
    notes.push(...beside.filter(one => one.off <= farOff).map(one => `${one.text}; the latter is used`))
    problems.push(...beside.filter(one => one.off > farOff).map(one => contradictory(one.text, where)))
  }
  return {
    read,
    material,
    compound: material === null ? null : compoundIn(material),
    amount,
    unit,
    amountMol,
    perGram,
    equivalents: null,
    derived: inDrops || relative || gasMol !== null,
    problems,
    notes,
  }
}

/** Solids are sold down to about this purity: potassium hydroxide with 85 %. Common practice, no source. In percent. */
const leastPurity = 80

/** What is pure in a solid of which the line states a share near the whole: "4.25 g" of "85 %, 5 g". */
function pureOf({ phrase, amount, unit }: ChargeRead, compound: string, library: Library): string | null {
  const material = library.materials.get(compound)
  const percent = Number(/^(\d+(?:\.\d+)?) %/.exec(phrase)?.[1] ?? Number.NaN)
  const isWeighed = unit === 'g' || unit === 'mg' || unit === 'kg'
  if (material?.form !== 'solid' || !(percent >= leastPurity && percent <= 100) || amount === null || !isWeighed) return null
  return `${Number(((amount * percent) / 100).toPrecision(6))} ${unit} ${material.name} {${compound}}`
}

function notFound({ text, phrase }: ChargeRead, beside: Beside | undefined, index: NameIndex, where: readonly string[]): Problem {
  if (beside !== undefined) return namesMore(phrase, beside, where)
  return /\p{L}/u.test(phrase) ? unknownName(phrase, index, where) : nameless(text, where)
}

/** Moles of a gas that is given by volume, mol; null for anything else. The ideal law: within 1 % for gases of the bench at 1 atm. */
function molesOfGas({ amount, unit }: ChargeRead, material: Material): number | null {
  if (amount === null || material.form !== 'gas' || material.kind !== 'compound') return null
  return unit === 'L' ? amount / molarGasVolumeL : unit === 'mL' ? amount / 1000 / molarGasVolumeL : null
}

/** Beyond this, one of the two is a slip and not rounding or purity. */
const farOff = 0.3

interface Disagreement {
  readonly text: string
  /** How far the larger lies above the smaller, as a fraction of the smaller. */
  readonly off: number
}

function disagreements(read: ChargeRead, material: Material, amountMol: number, library: Library): readonly Disagreement[] {
  return read.alsoStated.flatMap(({ amount, unit }) => {
    if (unit === 'equiv' || unit === 'drop') return []
    const other = measured(library, material, amount, unit as Unit).amountMol
    if (other === null || Math.abs(other / amountMol - 1) <= statedTolerance) return []
    const text = `${read.text}: ${amount} ${unit} is ${other.toPrecision(3)} mol, but ${read.amount} ${read.unit} is ${amountMol.toPrecision(3)} mol`
    return [{ text, off: Math.max(other, amountMol) / Math.min(other, amountMol) - 1 }]
  })
}

/** Moles of a compound over all lines that charge it; quench lines only where no other does, work-up lines never. */
export function molesOf(compound: string, drafts: readonly DraftCharge[]): number | null {
  const own = drafts.filter(draft => draft.compound === compound && draft.amountMol !== null)
  const charged = own.filter(draft => draft.read.roleHint === null)
  const counted = charged.length > 0 ? charged : own.filter(draft => draft.read.roleHint === 'quench')
  return counted.length === 0 ? null : counted.reduce((sum, draft) => sum + draft.amountMol!, 0)
}

/** The reactant of the equation that gives out first among those with an amount; the first of equals; null where none has one. */
export function limitingReactant(reactants: readonly TermRead[], drafts: readonly DraftCharge[]): string | null {
  let least: { readonly compound: string; readonly extentMol: number } | null = null
  for (const { compound, coefficient } of reactants) {
    const amountMol = compound === null ? null : molesOf(compound, drafts)
    if (compound === null || amountMol === null) continue
    const extentMol = amountMol / coefficient
    // Equal but for rounding counts as equal.
    if (least === null || extentMol < least.extentMol * (1 - 1e-9)) least = { compound, extentMol }
  }
  return least?.compound ?? null
}

/** The line with its equivalents, and with its amount where that was given as equivalents. */
export function againstLimiting(draft: DraftCharge, limitingMol: number | null): DraftCharge {
  if (limitingMol === null || draft.material === null) return draft
  if (draft.read.unit === 'equiv') {
    if (draft.read.amount === null) return draft
    const amountMol = draft.read.amount * limitingMol
    return { ...draft, amount: amountMol, amountMol, equivalents: draft.read.amount }
  }
  return draft.amountMol === null || draft.compound === null ? draft : { ...draft, equivalents: draft.amountMol / limitingMol }
}

/** Charge lines of the library format, one a line whose material is known, in the order of the text. */
export function chargeLines(
  drafts: readonly DraftCharge[],
  reactants: readonly TermRead[],
  limiting: string | null,
): readonly ChargeLine[] {
  const named = new Set(reactants.map(term => term.compound))
  return drafts.flatMap((draft): ChargeLine[] => {
    const { material, read } = draft
    if (material === null) return []
    const inEquation = draft.compound !== null && named.has(draft.compound)
    const role = roleOf(read, material, inEquation, inEquation && draft.compound === limiting, draft.equivalents)
    const from = read.from === undefined ? {} : { from: read.from }
    if (draft.perGram !== null) {
      const { amount, unit, derived } = draft.perGram
      return [{ material: material.id, role, amount: null, unit, perGramProduct: round(amount), ...(derived ? { derived } : {}), ...from }]
    }
    const amount = draft.amount === null ? null : round(draft.amount)
    const derived = draft.derived && amount !== null ? { derived: true } : {}
    return [{ material: material.id, role, amount, unit: draft.unit, ...derived, ...from }]
  })
}

/** Twelve figures: takes off what binary fractions add to 6 x 0.05. */
const round = (amount: number): number => Number(amount.toPrecision(12))

/** The first product of the equation among the charges is asked about, unless a verb says what it goes in for. */
export function notTheProduct(draft: DraftCharge, { reactants, products }: EquationRead): DraftCharge {
  const { material, compound, read } = draft
  const isProduct = compound !== null && products[0]?.compound === compound && reactants.every(term => term.compound !== compound)
  if (material === null || !isProduct || read.roleHint !== null || /\bseed/i.test(read.text)) return draft
  return {
    ...draft,
    material: null,
    compound: null,
    amountMol: null,
    problems: [...draft.problems, productCharged(read.text, material.name)],
  }
}
