import type { MainModule, Mol } from '@rdkit/rdkit'
import * as rdkit from '@rdkit/rdkit'

/** The RDKit toolkit (BSD licence), used in tests alone as a second opinion on structures. */
export async function rdkitModule(): Promise<MainModule> {
  // The package is CommonJS: under some loaders the function stands one level deeper.
  const module = rdkit as unknown as { default: (() => Promise<MainModule>) & { default?: () => Promise<MainModule> } }
  return (module.default.default ?? module.default)()
}

/** Symbols by atomic number, 1 to 83. Source: IUPAC periodic table of the elements. */
const symbols = (
  'H He Li Be B C N O F Ne Na Mg Al Si P S Cl Ar K Ca Sc Ti V Cr Mn Fe Co Ni Cu Zn Ga Ge As Se Br Kr Rb Sr Y Zr Nb Mo Tc Ru Rh Pd Ag Cd ' +
  'In Sn Sb Te I Xe Cs Ba La Ce Pr Nd Pm Sm Eu Gd Tb Dy Ho Er Tm Yb Lu Hf Ta W Re Os Ir Pt Au Hg Tl Pb Bi'
).split(' ')

/** Formula of a molecule from its atoms and their hydrogens, alphabetical, without charge; open ends count nothing. */
export function formulaOf(molecule: Mol): string {
  const { defaults, molecules } = JSON.parse(String(molecule.get_json()))
  const counts = new Map<string, number>()
  const add = (symbol: string, count: number) => counts.set(symbol, (counts.get(symbol) ?? 0) + count)
  for (const atom of molecules[0].atoms) {
    const { z, impHs } = { ...defaults.atom, ...atom }
    if (z > 0) add(symbols[z - 1]!, 1)
    if (impHs > 0) add('H', impHs)
  }
  return [...counts]
    .sort()
    .map(([symbol, count]) => (count === 1 ? symbol : `${symbol}${count}`))
    .join('')
}
