import type { Depiction, Drawing } from '../../core/chemistry/drawing.ts'
import { groupedSmiles } from '../../core/chemistry/stereo-groups.ts'
import { condensedUnit } from './condensed.ts'
import { drawingOf } from './drawing-of.ts'

/** What the choice of a depiction needs to know of a material. */
export interface Depicted {
  readonly kind: 'compound' | 'polymer' | 'mixture' | 'feedstock'
  readonly formula?: string | undefined
  readonly displayFormula?: string | undefined
  readonly smiles?: string | undefined
}

const hasCarbon = (formula: string): boolean => /C(?![a-z])/.test(formula)

/** Heavy atoms of the largest piece of a structure, counted on its SMILES. */
function largestPiece(smiles: string): number {
  const atoms = (piece: string) => piece.match(/\[[^\]]+\]|Cl|Br|[BCNOPSFIbcnops]/g)?.filter(atom => !/^\[H[+]?\]$/.test(atom)).length ?? 0
  return Math.max(0, ...groupedSmiles(smiles).smiles.split('.').map(atoms))
}

const holdsMetal = (smiles: string): boolean =>
  /\[\d*(Li|Na|K|Rb|Cs|Be|Mg|Ca|Sr|Ba|Al|Ga|Sn|Pb|Bi|Ti|V|Cr|Mn|Fe|Co|Ni|Cu|Zn|Zr|Mo|Ru|Rh|Pd|Ag|Cd|Pt|Au|Hg)[+\-\]]/.test(smiles)
const holdsOnlyAlkali = (smiles: string): boolean => holdsMetal(smiles.replaceAll(/\[(Li|Na|K)\+\]/g, '')) === false

// A salt of ions up to this size reads better as a formula than as loose ions.
const smallIon = 6
// An organic ion from this size on is what the reader wants to see.
const drawnIon = 9

/** Molecules too small to draw, whose Hill formula hides what they are. */
const linear: Readonly<Record<string, string>> = { CH4O: 'CH3OH', CH5N: 'CH3NH2', CHN: 'HCN' }

/** Is the structure small enough to stand in a row? Long flat chains may be wider. */
export const fitsARow = ({ w, h }: Pick<Drawing, 'w' | 'h'>): boolean => (w <= 190 && h <= 170) || (w <= 260 && h <= 60)

/**
 * How a material is to be shown, before its drawing is known: `structure` still becomes a formula where the drawing is too large.
 * No carbon, or a metal salt of small ions: formula. Polymer: condensed repeat unit. No formula: words.
 */
export function kindOf(material: Depicted): 'structure' | 'formula' | 'repeat unit' | 'words' {
  const { formula, smiles, displayFormula } = material
  if (material.kind === 'feedstock' || !(formula ?? displayFormula)) return 'words'
  if (material.kind === 'mixture') return displayFormula ? 'formula' : 'words'
  if (material.kind === 'polymer') return 'repeat unit'
  if (!smiles || !formula || !hasCarbon(formula)) return 'formula'
  const largest = largestPiece(smiles)
  if (largest < 3) return 'formula'
  if (holdsMetal(smiles)) {
    if (largest <= smallIon) return 'formula'
    if (displayFormula && !(holdsOnlyAlkali(smiles) && largest >= drawnIon)) return 'formula'
  } else if (displayFormula && largest <= smallIon) return 'formula'
  return 'structure'
}

/** How a material stands on the map; kept by the toolkit side, handed out as plain data. */
export function depictionOf(material: Depicted): Depiction {
  const kind = kindOf(material)
  if (kind === 'words') return { kind }
  const formula = material.displayFormula ?? linear[material.formula ?? ''] ?? material.formula ?? ''
  if (kind === 'repeat unit') {
    return { kind: 'formula', formula: material.smiles ? condensedUnit(material.smiles, formula) : `[${formula}]n` }
  }
  if (kind === 'structure' && material.smiles) {
    const drawing = drawingOf(material.smiles)
    if (fitsARow(drawing)) return { kind, drawing, formula }
  }
  return { kind: 'formula', formula }
}
