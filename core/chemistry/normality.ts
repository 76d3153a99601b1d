/** Acid or base equivalents per mole, by formula in Hill order. Common practice: full neutralisation. */
const perMole: ReadonlyMap<string, number> = new Map([
  ['ClH', 1],
  ['BrH', 1],
  ['HI', 1],
  ['HNO3', 1],
  ['HNaO', 1],
  ['HKO', 1],
  ['H3N', 1],
  ['C2H4O2', 1],
  ['CH2O2', 1],
  ['CHNaO3', 1],
  ['H2O4S', 2],
  ['H3O4P', 3],
  ['C2H2O4', 2],
  ['CNa2O3', 2],
  ['CH2O3', 2],
  ['BaH2O2', 2],
  ['CaH2O2', 2],
])

/**
 * How many equivalents of acid or base one mole of a compound gives, which makes normality of molarity: 1 M sulfuric acid is 2 N.
 *
 * @param formula  in Hill order
 * @returns null where it is not known, so that no strength is taken for a wrong one
 */
export const equivalentsPerMole = (formula: string | undefined): number | null => perMole.get(formula ?? '') ?? null
