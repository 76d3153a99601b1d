import type { Library } from '../../core/library/library.ts'
import type { Material } from '../../core/library/material.ts'
import { compoundIn } from '../../core/library/reference-charge.ts'

/**
 * How the trade writes common reagents and solvents over an arrow, by compound. Common practice, no source; what is not here goes by its
 * display formula, or by its name.
 */
const written: Readonly<Record<string, string>> = {
  'acetic-acid': 'AcOH',
  'acetic-anhydride': 'Ac2O',
  acetone: 'acetone',
  ammonia: 'NH3',
  'ammonium-acetate': 'NH4OAc',
  'ammonium-chloride': 'NH4Cl',
  'ammonium-nitrate': 'NH4NO3',
  'aluminium-chloride': 'AlCl3',
  bromine: 'Br2',
  '1-butanol': 'BuOH',
  'calcium-chloride': 'CaCl2',
  'carbon-tetrachloride': 'CCl4',
  'copper-acetate': 'Cu(OAc)2',
  'copper-acetate-monohydrate': 'Cu(OAc)2',
  'copper-sulfate-pentahydrate': 'CuSO4·5H2O',
  'diethyl-ether': 'Et2O',
  dichloromethane: 'CH2Cl2',
  dimethylformamide: 'DMF',
  ethanol: 'EtOH',
  'ethyl-acetate': 'EtOAc',
  'hydrazine-hydrate': 'N2H4·H2O',
  'hydrogen-chloride': 'HCl',
  'hydrogen-peroxide': 'H2O2',
  'iron-chloride-hexahydrate': 'FeCl3·6H2O',
  methanol: 'MeOH',
  'nitric-acid': 'HNO3',
  'phosphoric-acid': 'H3PO4',
  'potassium-permanganate': 'KMnO4',
  'potassium-iodide': 'KI',
  pyridine: 'pyridine',
  'sodium-acetate': 'NaOAc',
  'sodium-dichromate-dihydrate': 'Na2Cr2O7·2H2O',
  'sodium-hypochlorite': 'NaOCl',
  'sulfuric-acid': 'H2SO4',
  'sodium-bisulfite': 'NaHSO3',
  toluene: 'toluene',
  water: 'H2O',
}

/** A formula that reads as the trade writes it: no carbon in Hill order, metals and hydrogen first, few signs. */
const readable = (formula: string): boolean =>
  /^(?:[A-Z][a-z]?\d*){1,3}$/.test(formula) && !/C\d*H|^H\d*[A-Z][a-z]?\d*O?\d*[A-Z]/.test(formula)

/** A material as it stands over an arrow: text in which braces mark a formula, as `braceText` reads it. */
export function shortName(library: Library, material: Material): string {
  const compound = compoundIn(material)
  const own = compound === null ? undefined : written[compound]
  if (own !== undefined) return isFormula(own) ? `{${own}}` : own
  const formula = material.displayFormula ?? (compound === null ? undefined : library.materials.get(compound)?.displayFormula)
  if (formula !== undefined && formula.length <= 16) return `{${formula}}`
  const plain = material.kind === 'compound' ? material.formula : undefined
  if (plain !== undefined && plain.length <= 8 && readable(plain) && !plain.startsWith('C')) return `{${plain}}`
  return material.name.replace(/, .*$/, '')
}

const isFormula = (text: string): boolean => /\d|[A-Z].*[A-Z]/.test(text)
