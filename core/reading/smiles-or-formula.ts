import { parseFormula, sameComposition } from '../chemistry/formula.ts'
import type { Toolkit } from '../chemistry/structure.ts'
import { isSmilesLike } from './names.ts'

/** Atoms that a SMILES writes without brackets and a formula by the same symbols, with branches. */
const either = /^(?:Cl|Br|[BCNOPSFI]|[()])+$/

/**
 * Whether a text is a formula and a structure at once, of different compounds: "O" is oxygen and water, "CO" carbon monoxide and methanol,
 * "NO" nitric oxide and hydroxylamine.
 */
export function readsTwoWays(text: string, toolkit: Toolkit): boolean {
  if (!either.test(text) || isSmilesLike(text)) return false
  const formula = parseFormula(text)
  const structure = toolkit.parse(text)
  return formula.ok && structure.ok && !sameComposition(formula.value, structure.value.composition)
}

/** Whether a text can be nothing but a structure. */
export const isPlainlyStructure = (text: string, toolkit: Toolkit): boolean => isSmilesLike(text) && toolkit.parse(text).ok

/** Letters that are an abbreviation too: NBS, PNP and BPO are structures of three atoms, and names of reagents. */
const abbreviation = /^(?=.*[BNPSFI])[BCNOPSFI]{3,4}$/

/**
 * The same structure so that it cannot be taken for a formula or an abbreviation: "N-O", "[OH2]", "N-B-S". Nothing is changed where it cannot.
 */
export function plainSmiles(smiles: string): string {
  if (!either.test(smiles) || (isSmilesLike(smiles) && !abbreviation.test(smiles))) return smiles
  const alone = hydrides.get(smiles)
  return alone ?? smiles.replace(/(?<!^)(Cl|Br|[BCNOPSFI])/g, '-$1')
}

/** Hydrogens that SMILES adds to a single atom. Source: OpenSMILES specification, "organic subset" and its normal valences. */
const hydrides: ReadonlyMap<string, string> = new Map([
  ['B', '[BH3]'],
  ['C', '[CH4]'],
  ['N', '[NH3]'],
  ['O', '[OH2]'],
  ['P', '[PH3]'],
  ['S', '[SH2]'],
  ['F', '[FH]'],
  ['Cl', '[ClH]'],
  ['Br', '[BrH]'],
  ['I', '[IH]'],
])
