/**
 * A structure as drawn: plain, compact data, so that it is reckoned once where the chemistry toolkit is, and a page that only shows it
 * loads no toolkit. Coordinates in px about the centre at one bond length for all (13.5 px), y downwards.
 */
export interface DrawnAtom {
  readonly x: number
  readonly y: number
  /** Element symbol. */
  readonly el: string
  /** Implicit hydrogens; absent = none. Written only where the atom carries a label. */
  readonly h?: number
  readonly charge?: number
  readonly isotope?: number
  /** An unpaired electron. */
  readonly radical?: true
  /** Present where the atom is written with a label: on which side its hydrogens stand. A carbon without it is a bare corner. */
  readonly label?: 'left' | 'right' | 'above' | 'below'
}

export interface DrawnBond {
  /** Indices of its atoms; a wedge has its point at `a`. */
  readonly a: number
  readonly b: number
  readonly order: 1 | 2 | 3
  readonly wedge?: 'up' | 'down'
  /** Where the second line of a double bond lies, seen from a to b: -1 left, 1 right, 0 both lines beside the axis. */
  readonly side?: -1 | 0 | 1
}

export interface Drawing {
  readonly atoms: readonly DrawnAtom[]
  readonly bonds: readonly DrawnBond[]
  /** Written under it: what the wedges alone cannot say, such as that both hands are there. */
  readonly caption?: string
  /** Size with labels and caption, px; the centre is (0, 0). */
  readonly w: number
  readonly h: number
  /** Highest atom: where the structure joins an arrow from below. */
  readonly topX: number
  readonly topY: number
}

/** How a material stands on the map: drawn, as a formula, or by its name alone. */
export type Depiction =
  | { readonly kind: 'structure'; readonly drawing: Drawing; readonly formula: string }
  | { readonly kind: 'formula'; readonly formula: string }
  | { readonly kind: 'words' }
