/**
 * The penalty table of the EcoScale: 100 less the points of six kinds.
 *
 * Source: Van Aken, Strekowski, Patiny, Beilstein J. Org. Chem. 2006, 2:3, table of penalty points. The table is from memory; the article's
 * abstract and definitions were seen, the table itself was not.
 */
export const ecoPenalties = {
  price: { 'inexpensive (< 10 USD)': 0, 'expensive (10 to 50 USD)': 3, 'very expensive (> 50 USD)': 5 },
  safety: {
    'N dangerous for the environment': 5,
    'T toxic': 5,
    'F highly flammable': 5,
    'E explosive': 10,
    'F+ extremely flammable': 10,
    'T+ extremely toxic': 10,
  },
  setup: {
    common: 0,
    'controlled addition': 1,
    'unconventional activation': 2,
    'pressure equipment > 1 atm': 3,
    'additional special glassware': 1,
    'inert gas': 1,
    'glove box': 3,
  },
  temperature: {
    'room temperature < 1 h': 0,
    'room temperature < 24 h': 1,
    'heating < 1 h': 2,
    'heating > 1 h': 3,
    'cooling to 0 C': 4,
    'cooling below 0 C': 5,
  },
  workUp: {
    none: 0,
    'cooling to room temperature': 0,
    'adding solvent': 0,
    'simple filtration': 0,
    'removal of solvent bp < 150 C': 0,
    'crystallisation and filtration': 1,
    'removal of solvent bp > 150 C': 2,
    'solid phase extraction': 2,
    distillation: 3,
    sublimation: 3,
    'liquid-liquid extraction, drying, filtration': 3,
    'classical chromatography': 10,
  },
} as const

export type EcoKind = 'yield' | keyof typeof ecoPenalties

/** One row of the working. `points` null = nobody knows, and then the score is at most what stands there. */
export interface EcoRow {
  readonly kind: EcoKind
  /** The row of the table, and what in the step it was read from. */
  readonly what: string
  readonly because: string
  readonly points: number | null
}

export interface EcoScale {
  readonly score: number
  readonly band: 'excellent' | 'acceptable' | 'inadequate'
  /** Some penalty is unknown, so that the true score may be lower. */
  readonly atMost: boolean
  readonly rows: readonly EcoRow[]
}

/** (100 - yield in percent) / 2. */
export const yieldPenalty = (percent: number): number => (100 - percent) / 2

/** The score of penalties: 100 less their sum. Above 75 excellent, above 50 acceptable, else inadequate. */
export function ecoScaleOf(rows: readonly EcoRow[]): EcoScale {
  const score = 100 - rows.reduce((sum, row) => sum + (row.points ?? 0), 0)
  const band = score > 75 ? 'excellent' : score > 50 ? 'acceptable' : 'inadequate'
  return { score, band, atMost: rows.some(row => row.points === null), rows }
}

/** Price of what gives 10 mmol of product. @param price in whole units of a currency near the US dollar; null = unknown */
export function pricePoints(price: number | null): { readonly what: string; readonly points: number | null } {
  if (price === null) return { what: 'price unknown', points: null }
  const row = price < 10 ? 'inexpensive (< 10 USD)' : price <= 50 ? 'expensive (10 to 50 USD)' : 'very expensive (> 50 USD)'
  return { what: row, points: ecoPenalties.price[row] }
}

/**
 * Old hazard letters from GHS codes, the gravest of each pair: the table predates GHS.
 *
 * Source: translation table of Regulation (EC) No 1272/2008, Annex VII, read backwards; from memory.
 */
export function hazardLetters(codes: readonly string[]): readonly (keyof typeof ecoPenalties.safety)[] {
  const any = (pattern: RegExp): boolean => codes.some(code => pattern.test(code))
  const letters: (keyof typeof ecoPenalties.safety)[] = []
  if (any(/^H(20[0-5]|240|241)/)) letters.push('E explosive')
  if (any(/^H(220|224)/)) letters.push('F+ extremely flammable')
  else if (any(/^H(225|250|260|261)/)) letters.push('F highly flammable')
  if (any(/^H(300|310|330)/)) letters.push('T+ extremely toxic')
  else if (any(/^H(301|311|331|340|350|360|370|372)/)) letters.push('T toxic')
  if (any(/^H(400|410|411|420)/)) letters.push('N dangerous for the environment')
  return letters
}
