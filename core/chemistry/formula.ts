import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { atomicWeight, elements } from './elements.ts'

/** What one formula unit holds: atoms by symbol, and its charge in elementary charges. Counts may be fractional (a hemihydrate). */
export interface Composition {
  readonly counts: ReadonlyMap<string, number>
  readonly charge: number
}

/**
 * Group symbols of the trade, in the formulas that are written for people (NaOAc, PhCHO). `Ac` and `Ts` would also be actinium and
 * tennessine, which have no atomic weight and no place on a bench; `Pr` stays praseodymium.
 */
const groups: ReadonlyMap<string, string> = new Map([
  ['Me', 'CH3'],
  ['Et', 'C2H5'],
  ['Bu', 'C4H9'],
  ['Ph', 'C6H5'],
  ['Bn', 'C7H7'],
  ['Bz', 'C7H5O'],
  ['Ac', 'C2H3O'],
  ['Ts', 'C7H7SO2'],
])

/** Longer than any formula on a label; keeps a pasted page of text from being parsed. */
const longest = 300

/**
 * Atoms and charge of a formula as the trade writes it.
 *
 * Reads Hill order and any other, brackets of three kinds, hydrates and double salts ("CuSO4·5H2O", also with . * • x, a comma or a blank),
 * subscripts in plain or small digits, charges ("Na+", "Cu2+", "SO4^2-", "[Cu(NH3)4]2+", "NH4⁺"), state marks "(aq)", deuterium as D, group symbols such
 * as Ph and Ac, and ignores the `*` of a repeat unit's open ends.
 *
 * @param text   one formula
 * @param where  record and field it came from
 * @returns its composition; or one Problem: formula-empty, formula-unreadable, formula-element, formula-bracket, formula-charge
 * @example parseFormula('CuSO4·5H2O') // counts Cu 1, S 1, O 9, H 10
 */
export function parseFormula(text: string, where: readonly string[] = []): Checked<Composition> {
  const shown = text.length > 40 ? `${text.slice(0, 40)}...` : text
  const fail = (code: string, what: string, cure: string): { readonly ok: false; readonly problems: readonly Problem[] } =>
    bad([{ code, where, what, why: 'Molar mass and every amount follow from the formula.', cure }])
  if (text.trim() === '') return fail('formula-empty', 'The formula is empty.', 'Write one, for example CuSO4·5H2O.')
  if (text.length > longest) return fail('formula-unreadable', `"${shown}" is too long for a formula.`, 'Give one formula unit.')
  try {
    if (/^\s*[-–—]?[([{].*[)\]}]\s*[-–—]?[nₙ]\s*$|^\s*n\s/u.test(text))
      throw new Slip('formula-unreadable', '"n" is a number of repeat units', 'Give one repeat unit without it, for example C2H4O.')
    return good(new FormulaReader(plain(text)).read())
  } catch (slip) {
    if (!(slip instanceof Slip)) throw slip
    return fail(slip.code, `"${shown}" is not a formula: ${slip.message}.`, slip.cure)
  }
}

/** How reading went wrong; never leaves this file. */
class Slip extends Error {
  readonly code: string
  readonly cure: string
  constructor(code: string, message: string, cure: string) {
    super(message)
    this.code = code
    this.cure = cure
  }
}

/**
 * A count set apart by a blank: of a whole unit that follows ("CuSO4 5H2O", "Na2CO3, 10 H2O", "Ba(OH)2 x 8 H2O"), or, where each symbol and
 * each count stands alone ("C 6 H 12 O 6"), of the atom before it. What could be either is refused: the one is not the other's mass.
 */
function withPartsSetOff(text: string): string {
  const count = String.raw`(?:\d+(?:[.,]\d+)?(?:\/\d+)?)`
  const solvate = '(?:H2O|D2O|HCl|HBr|NH3|CH3OH|CH4O|MeOH|C2H5OH|C2H6O|EtOH)'
  const setOff = text
    .trim()
    .replace(/\s+/g, ' ')
    .replace(/(?<=[A-Za-z\d)\]}]) ?[·•∙⋅‧*×] ?(?=[\dA-Z([{])/g, '·')
    .replace(/(?<=[·.]\d+(?:[.,]\d+)?(?:\/\d+)?) (?=[A-Z([{])/g, '')
    .replace(
      new RegExp(String.raw`(?<=[A-Z][A-Za-z\d()[\]{}·.]*) ?(?:, ?| x ?|(?<=\d|[)\]}])x(?=\d)| )(${count}?) ?(?=${solvate}$)`),
      '·$1',
    )
    .replace(/(?<=[A-Za-z\d)\]}]) x ?(?=[\dA-Z(])/g, '·')
    .replace(/(?<=[A-Za-z\d)\]}]) (?=\d+[A-Z([{])/g, '·')
  if (/^(?:[A-Z][a-z]?(?: \d+)? ?)+$/.test(setOff)) return setOff
  if (/[A-Za-z\d)\]}] \d+(?![\d+-])/.test(setOff))
    throw new Slip(
      'formula-unreadable',
      'a number that stands apart may count the atom before it or the unit behind it',
      'Join it to its atom, or set a hydrate off with a dot, for example CuSO4·5H2O.',
    )
  return setOff
}

/** Small digits and signs as plain ones (a raised charge with a caret), one dot between the parts, no blanks, no state mark, no open ends. */
function plain(text: string): string {
  const digits = text.replace(/[₀-₉]/g, digit => String(digit.charCodeAt(0) - 0x2080)).replace(/½/g, '0.5')
  return withPartsSetOff(digits)
    .replace(/[⁰¹²³⁴-⁹⁺⁻]+/g, raised => `^${[...raised].map(mark => '0123456789+-'['⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻'.indexOf(mark)]).join('')}`)
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/\s*\((aq|s|l|g|cr)\)\s*$/i, '')
    .replace(/^\s*\*+|\*+\s*$/g, '')
    .replace(/[\s\u00a0\u200b]+(?=\d*[+-]$)/, '^')
    .replace(/[\s\u00a0\u2009\u202f\u200b]/g, '')
    .replace(/[·•∙⋅‧*×]/g, '·')
}

class FormulaReader {
  readonly #text: string
  #at = 0
  constructor(text: string) {
    this.#text = text
  }

  read(): Composition {
    const { body, charge } = this.#cutCharge(this.#text)
    const counts = new Map<string, number>()
    // "CuSO4.5H2O": a full stop parts two units, but inside "0.5" it is a decimal point; a digit before it decides for a part only where a
    // letter or bracket stands before that digit.
    const parts = body.split('·').flatMap(part => part.split(/(?<=[A-Za-z)\]}]\d*)\.(?=\d*\.?\d*[A-Z([])/))
    for (const part of parts) {
      const times = /^(\d+(?:\.\d+)?|\d+\/\d+)(?=[A-Z([{])/.exec(part)
      // Ahead of a single unit it would be a coefficient: 2 H2O is two molecules, not a compound H4O2.
      if (times !== null && parts.length === 1)
        throw new Slip('formula-unreadable', `"${times[1]}" is a coefficient`, 'Leave it out: coefficients belong to the equation.')
      const factor = times === null ? 1 : numberOf(times[1]!)
      const reader = new FormulaReader(part.slice(times?.[0].length ?? 0))
      add(counts, reader.#units(null), factor)
    }
    return { counts, charge }
  }

  #cutCharge(text: string): { body: string; charge: number } {
    const explicit = /(?:\^\(?|\((?=\d*[+-]\)$))(\d*)([+-])(\d*)\)?$/.exec(text) ?? /(?<=[\])}])(\d*)([+-])(\d*)$/.exec(text)
    if (explicit !== null) return { body: text.slice(0, explicit.index), charge: signed(explicit[2]!, explicit[1] || explicit[3] || '1') }
    const repeated = /(\++|-+)$/.exec(text)
    if (repeated === null) return { body: text, charge: 0 }
    const body = text.slice(0, repeated.index)
    if (repeated[1]!.length > 1) return { body, charge: signed(repeated[1]![0]!, String(repeated[1]!.length)) }
    // One element with digits: Cu2+ is an ion of charge 2. Several elements: NH4+ has four hydrogens and charge 1.
    const single = /^([A-Z][a-z]?)(\d)$/.exec(body)
    if (single !== null && elements.has(single[1]!)) return { body: single[1]!, charge: signed(repeated[1]!, single[2]!) }
    if (/\d\d$/.test(body))
      throw new Slip(
        'formula-charge',
        'its last digits may be a count or a charge',
        'Set the charge apart with a caret, for example SO4^2-.',
      )
    return { body, charge: signed(repeated[1]!, '1') }
  }

  /** Units up to the closing bracket that is waited for, or to the end. */
  #units(closing: string | null): Map<string, number> {
    const counts = new Map<string, number>()
    let empty = true
    while (this.#at < this.#text.length) {
      const mark = this.#text[this.#at]!
      if (mark === closing) break
      const pair = '([{'.indexOf(mark)
      if (pair >= 0) {
        this.#at++
        const inner = this.#units(')]}'[pair]!)
        this.#at++
        add(counts, inner, this.#count())
      } else if (')]}'.includes(mark)) {
        throw new Slip('formula-bracket', `"${mark}" closes nothing`, 'Pair every bracket.')
      } else {
        const inner = this.#symbol()
        add(counts, inner, this.#count())
      }
      empty = false
    }
    if (closing !== null && this.#text[this.#at] !== closing)
      throw new Slip('formula-bracket', `a "${closing}" is missing`, 'Pair every bracket.')
    if (empty) throw new Slip('formula-unreadable', 'a part of it is empty', 'Write element symbols, for example NaCl.')
    return counts
  }

  #symbol(): ReadonlyMap<string, number> {
    const two = /^[A-Z][a-z]/.exec(this.#text.slice(this.#at))?.[0]
    const one = /^[A-Z]/.exec(this.#text.slice(this.#at))?.[0]
    for (const symbol of [two, one]) {
      if (symbol === undefined) continue
      const group = groups.get(symbol)
      if (group === undefined && !elements.has(symbol)) continue
      this.#at += symbol.length
      if (group !== undefined) return new FormulaReader(group).#units(null)
      if (elements.get(symbol)!.atomicWeight === null)
        throw new Slip(
          'formula-element',
          `${elements.get(symbol)!.name} has no standard atomic weight`,
          'Leave it out: nothing can be weighed.',
        )
      return new Map([[symbol, 1]])
    }
    const mark = this.#text.slice(this.#at, this.#at + 2)
    if (one !== undefined || /[a-z]/.test(mark[0] ?? ''))
      throw new Slip(
        'formula-element',
        `no element is called "${two ?? one ?? mark[0]}"`,
        'Write symbols with their capitals, for example NaCl.',
      )
    throw new Slip('formula-unreadable', `"${mark[0]}" has no place here`, 'Use element symbols, digits, brackets and ·.')
  }

  #count(): number {
    const digits = /^\d+(?:\.\d+)?/.exec(this.#text.slice(this.#at))?.[0]
    if (digits === undefined) return 1
    this.#at += digits.length
    const count = Number(digits)
    if (!(count > 0) || count > 1e6) throw new Slip('formula-unreadable', `${digits} is no count of atoms`, 'Counts are above zero.')
    return count
  }
}

const signed = (sign: string, size: string): number => (sign === '-' ? -1 : 1) * Number(size)

function numberOf(text: string): number {
  const [above = '', below] = text.split('/')
  const value = below === undefined ? Number(above) : Number(above) / Number(below)
  if (!(value > 0 && value < 1e6)) throw new Slip('formula-unreadable', `${text} is no multiplier`, 'Multipliers are above zero.')
  return value
}

function add(into: Map<string, number>, from: ReadonlyMap<string, number>, factor: number): void {
  for (const [symbol, count] of from) into.set(symbol, (into.get(symbol) ?? 0) + count * factor)
}

/**
 * Molar mass in g/mol: the sum of the atomic weights; the mass of an ion's missing or extra electrons is below its last digit.
 *
 * Source: CIAAW 2021 conventional atomic weights (elements.ts).
 */
export function molarMass(composition: Composition): number {
  let sum = 0
  for (const [symbol, count] of composition.counts) sum += count * atomicWeight(symbol)
  return sum
}

/**
 * Molar mass of a formula that was checked before, g/mol.
 *
 * @throws RangeError where it cannot be read: our mistake, since the loader refuses such data
 * @example molarMassOf('C14H12O2') // 212.248
 */
export function molarMassOf(formula: string): number {
  const read = parseFormula(formula)
  if (!read.ok) throw new RangeError(read.problems[0]!.what)
  return molarMass(read.value)
}

/** Percent by mass of each element, 0 to 100. */
export function massPercent(composition: Composition): ReadonlyMap<string, number> {
  const whole = molarMass(composition)
  return new Map([...composition.counts].map(([symbol, count]) => [symbol, (100 * count * atomicWeight(symbol)) / whole]))
}

/** The formula in Hill order: C, then H, then by symbol; all by symbol where there is no carbon. Without the charge. */
export function hill(composition: Composition): string {
  const symbols = [...composition.counts.keys()].filter(symbol => composition.counts.get(symbol)! > 0).sort()
  const carbon = symbols.includes('C')
  const first = carbon ? ['C', 'H'].filter(symbol => symbols.includes(symbol)) : []
  const ordered = [...first, ...symbols.filter(symbol => !first.includes(symbol))]
  return ordered
    .map(symbol => {
      const count = Math.round(composition.counts.get(symbol)! * 1e6) / 1e6
      return count === 1 ? symbol : `${symbol}${count}`
    })
    .join('')
}

/** Same atoms and same charge, whatever the order they were written in. */
export function sameComposition(one: Composition, other: Composition): boolean {
  if (one.charge !== other.charge) return false
  const symbols = new Set([...one.counts.keys(), ...other.counts.keys()])
  return [...symbols].every(symbol => Math.abs((one.counts.get(symbol) ?? 0) - (other.counts.get(symbol) ?? 0)) < 1e-6)
}
