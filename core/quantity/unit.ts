/**
 * The closed table of units: what a person may write, and what one of it is in the base unit of its dimension.
 * Base units are those the core computes in: g, mL, mol, h, and a share of one.
 */
export type Dimension = 'mass' | 'volume' | 'amount' | 'time' | 'share'

export type Unit = 'kg' | 'g' | 'mg' | 'µg' | 'L' | 'mL' | 'µL' | 'mol' | 'mmol' | 'h' | 'min' | '%'

interface UnitRow {
  readonly dimension: Dimension
  /** Multiples and divisors are kept apart, so that 3 mg is 3 / 1000 exactly as rounded once, not 3 x 0.001 rounded twice. */
  readonly times: number
  readonly per: number
  /** Spellings beside the symbol itself. Symbols are read as written; these also in capitals ("GRAMS", "ML"). */
  readonly words: readonly string[]
}

/** The micro sign has two code points (U+00B5 and the Greek letter U+03BC); both are read, the first is printed. */
export const unitTable: Readonly<Record<Unit, UnitRow>> = {
  kg: { dimension: 'mass', times: 1000, per: 1, words: ['kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes', 'kgs'] },
  g: { dimension: 'mass', times: 1, per: 1, words: ['gm', 'gms', 'gr', 'gram', 'grams', 'gramme', 'grammes', 'gramm'] },
  mg: { dimension: 'mass', times: 1, per: 1000, words: ['mgs', 'milligram', 'milligrams', 'milligramme', 'milligrammes'] },
  µg: { dimension: 'mass', times: 1, per: 1e6, words: ['μg', 'ug', 'mcg', 'microgram', 'micrograms'] },
  L: { dimension: 'volume', times: 1000, per: 1, words: ['l', 'liter', 'liters', 'litre', 'litres', 'ltr'] },
  mL: {
    dimension: 'volume',
    times: 1,
    per: 1,
    words: ['ml', 'mls', 'cc', 'c.c', 'ccm', 'cm3', 'cm³', 'milliliter', 'milliliters', 'millilitre', 'millilitres'],
  },
  µL: { dimension: 'volume', times: 1, per: 1000, words: ['μl', 'µl', 'ul', 'microliter', 'microliters', 'microlitre', 'microlitres'] },
  mol: { dimension: 'amount', times: 1, per: 1, words: ['mole', 'moles', 'mols'] },
  mmol: { dimension: 'amount', times: 1, per: 1000, words: ['mmole', 'mmoles', 'mmols', 'millimole', 'millimoles'] },
  h: { dimension: 'time', times: 1, per: 1, words: ['hr', 'hrs', 'hour', 'hours'] },
  min: { dimension: 'time', times: 1, per: 60, words: ['mins', 'minute', 'minutes'] },
  '%': { dimension: 'share', times: 1, per: 100, words: ['percent', 'per cent', 'pct'] },
}

export const units = Object.keys(unitTable) as readonly Unit[]

// A Map, because the text comes from outside: "__proto__" or "constructor" must find nothing.
const symbols = new Map<string, Unit>(units.map(unit => [unit, unit]))
const spellings = new Map<string, Unit>(units.flatMap(unit => unitTable[unit].words.map(word => [word, unit] as const)))

/**
 * The unit that a spelling stands for; a closing full stop ("g.", "ml.") is allowed.
 *
 * @returns null for what is not in the table. `Mg`, `M` and `G` stay unknown on purpose: they mean something else.
 */
export function unitNamed(text: string): Unit | null {
  const written = text.trim().replace(/\.$/, '')
  const exact = symbols.get(written) ?? spellings.get(written)
  if (exact !== undefined) return exact
  // A single capital is never a slip of the shift key here: G is giga, M is molar.
  if (written.length < 2) return null
  return spellings.get(written.toLowerCase()) ?? null
}

/** The units of one dimension, in the order of the table. */
export function unitsOf(dimension: Dimension): readonly Unit[] {
  return units.filter(unit => unitTable[unit].dimension === dimension)
}
