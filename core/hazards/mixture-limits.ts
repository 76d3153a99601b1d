/**
 * From which strength on a code of a constituent counts for the whole, as mass fractions. Where the standard offers two limits for one class
 * (data sheet and label), the lower one: a label that is reckoned here stands in for one that nobody has written.
 *
 * Source: UN GHS, classification of mixtures by ingredients: tables 3.4.5, 3.5.1, 3.6.1, 3.7.1, 3.8.2, 3.8.4.2 (narcosis and airways, by
 * convention 20 %), 3.9.3, 3.10.3; EUH codes by CLP Annex II.
 */
export const carriedOverFrom: readonly { readonly codes: RegExp; readonly fraction: number; readonly becomes?: string }[] = [
  { codes: /^H(317|334|340|341|350|351|360|361|362)/, fraction: 0.001 },
  { codes: /^H370/, fraction: 0.1 },
  { codes: /^H370/, fraction: 0.01, becomes: 'H371' },
  { codes: /^H371/, fraction: 0.01 },
  { codes: /^H372/, fraction: 0.1 },
  { codes: /^H372/, fraction: 0.01, becomes: 'H373' },
  { codes: /^H373/, fraction: 0.01 },
  { codes: /^H33[56]$/, fraction: 0.2 },
  { codes: /^H304$/, fraction: 0.1 },
  { codes: /^H420$/, fraction: 0.001 },
  { codes: /^EUH/, fraction: 0.01 },
]

/** Below this mass fraction an ingredient is not looked at for skin, eyes and acute toxicity. Source: UN GHS 3.1.3.3, 3.2.3.3.1, 3.3.3.3.1. */
export const relevantFrom = 0.01

/** Sums of mass fractions at which a mixture is classified. Source: UN GHS tables 3.2.3, 3.3.3 (categories 1 and 2/2A) and, where sums do not hold, 3.2.4, 3.3.4. */
export const skinAndEye = {
  corrosive: 0.05,
  irritant: 0.1,
  eyeDamage: 0.03,
  eyeIrritant: 0.1,
  /** Corrosives and what damages eyes count tenfold towards irritation. */
  weight: 10,
  /** Acids and bases of extreme pH, and what else sums do not hold for. */
  extreme: 0.01,
} as const

/** By route: converted point estimate of a category, and the highest estimate that a category reaches to. */
export interface AcuteRoute {
  readonly codes: readonly [first: string, second: string, third: string, fourth: string]
  /** mg/kg, or mg/L in 4 h. Source: UN GHS table 3.1.2. */
  readonly pointEstimates: readonly [number, number, number, number]
  /** The same unit. Source: UN GHS table 3.1.1. */
  readonly upTo: readonly [number, number, number, number]
}

export const acuteRoutes = {
  oral: { codes: ['H300', 'H300', 'H301', 'H302'], pointEstimates: [0.5, 5, 100, 500], upTo: [5, 50, 300, 2000] },
  dermal: { codes: ['H310', 'H310', 'H311', 'H312'], pointEstimates: [5, 50, 300, 1100], upTo: [50, 200, 1000, 2000] },
  vapour: { codes: ['H330', 'H330', 'H331', 'H332'], pointEstimates: [0.05, 0.5, 3, 11], upTo: [0.5, 2, 10, 20] },
  mist: { codes: ['H330', 'H330', 'H331', 'H332'], pointEstimates: [0.005, 0.05, 0.5, 1.5], upTo: [0.05, 0.5, 1, 5] },
} as const satisfies Record<string, AcuteRoute>

/** Water: sums of fractions at which a class is reached; each stricter class counts ten times as much towards the next. UN GHS table 4.1.2. */
export const aquaticFrom = 0.25

/** Codes that ask for the word Danger, of those that the rules above can give. Source: UN GHS, label elements of each class. */
export const dangerCodes = /^H(30[01]|31[01]|314|318|33[01]|334|340|350|360|370|372|304)/
