/**
 * What the scheme layout takes and gives. Plain data: it crosses a worker's border and is drawn alike on screen and paper.
 *
 * A caller turns a plan into `SchemeIn`: one `Cell` a compound that is drawn, one `Step` a reaction that is drawn. It decides which
 * bought co-reactants are drawn as structures (`co`; carbon and six heavy atoms or more) and which are only named in `over`, and that
 * several grey steps in a row are told as one ("2 steps, 82 h").
 */

/** A piece of text in one style: subscript, bold, italic (= remembered, or open), pen (= the reader's own). */
export interface Run {
  readonly t: string
  readonly sub?: boolean
  /** The letter beside a figure; read out as this word. */
  readonly mark?: string
  readonly b?: boolean
  readonly i?: boolean
  readonly pen?: boolean
}

/** Text that is not parted between lines as long as there is any other way: "NH4NO3 1.35 eq". */
export type Item = readonly Run[]

/** Seen in a source: solid. Remembered: dashed. Unknown: hatched. */
export type Sure = 'seen' | 'remembered' | 'unknown'

/** A drawn structure in px about its centre. (topX, topY) is its highest atom, where it joins an arrow from below. */
export interface Shape {
  readonly w: number
  readonly h: number
  readonly topX: number
  readonly topY: number
}

/** One compound on the map. */
export interface Cell {
  readonly id: string
  /** `structure` needs `shape`, `formula` needs `formula`; `words` shows its name alone. */
  readonly kind: 'structure' | 'formula' | 'words'
  readonly shape?: Shape
  readonly formula?: Item
  /** Trade name; soft hyphens (U+00AD) where it may break. */
  readonly name: string
  readonly amount?: Item
  /** A second, soft line: "3.9 g of the benzil". */
  readonly note?: Item
  readonly role: 'start' | 'mid' | 'goal' | 'co'
  /** Not chosen. */
  readonly grey?: boolean
  /** The compound may be bought or made; this is what holds now. `make only` where it cannot be bought. */
  readonly pick?: 'buy' | 'make' | 'make only'
}

/** One way to make a step's product: the chosen one, or an alternative. */
export interface Way {
  readonly id: string
  /** Conditions over the arrow. */
  readonly over: readonly Item[]
  /** Shorter conditions, when the way is drawn as a detour; `over` where absent. */
  readonly brief?: readonly Item[]
  /** Under the arrow, a line each: time, yield. */
  readonly under: readonly Item[]
  readonly sure: Sure
}

export interface Step extends Way {
  /** "1", "2a": bold before the conditions. Empty for an unnumbered (grey) step. */
  readonly no: string
  /** The reactant that carries the row: the start, or the made main reactant. Every made cell is the `to` of one step. */
  readonly from: string
  readonly to: string
  /** Bought co-reactants, drawn under the arrow. */
  readonly co: readonly string[]
  /** Co-reactants that another step of this scheme makes. */
  readonly made: readonly string[]
  /** By-product as text, or second product as a cell. */
  readonly leaves: readonly { readonly text?: Item; readonly cell?: string }[]
  /** Ways not chosen between the same two compounds. */
  readonly alts: readonly Way[]
  readonly grey?: boolean
}

/** Choices of the last drawing. Hand them back in and what stays, stays where it is; forget them when the pane changes width. */
export interface Keep {
  readonly pane: number
  /** y of the first axis. */
  readonly axis: number
  /** Forking compound -> product of the branch that went straight on. */
  readonly straight: Readonly<Record<string, string>>
  /** Every compound drawn last time: choices about new ones are free. */
  readonly known: readonly string[]
  /** Products whose step began a line. */
  readonly starts: readonly string[]
  /** Forks (by compound) and joins (by product) that came after a return rail. */
  readonly wrapped: readonly string[]
}

export interface SchemeIn {
  /** Width to fill, px: 860 full pitch, 720, 688 in print, 536, 358 on a phone. */
  readonly pane: number
  readonly form: 'wide' | 'upright'
  readonly start: string
  readonly cells: Readonly<Record<string, Cell>>
  readonly steps: readonly Step[]
  /** Lines of the legend; they stand at the lower left, in free room where there is some. */
  readonly legend?: readonly Item[]
  readonly keep?: Keep
  /** Height of a row that answers a finger, px; 24 unless given, 44 on a phone. */
  readonly touch?: number
}

export interface Box {
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

/** Ink of an element: chosen, second text, not chosen, the reader's own. */
export type Tone = 'ink' | 'soft' | 'grey' | 'pen'

/** What an element belongs to; reading order and groups are made from it. */
interface Part {
  readonly id: string
  readonly cls: string
  /** The compound or step (by product) it belongs to. */
  readonly of: { readonly cell?: string; readonly step?: string; readonly way?: string }
}

/** Structure or formula-as-structure; (x, y) is its centre. */
export interface MolEl extends Part {
  readonly el: 'mol'
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
  readonly grey: boolean
}

/** One line of text; (x, y) is the start of its baseline, w its width. */
export interface TextEl extends Part {
  readonly el: 'text'
  readonly x: number
  readonly y: number
  readonly w: number
  readonly size: number
  readonly wght: number
  readonly tone: Tone
  readonly runs: Item
  readonly link?: boolean
  /** Height that answers a finger, where it is a link. */
  readonly touch?: number
}

/** Polyline with corners of radius r; `from` and `to` say what its ends touch, for the checker and the reader. */
export interface PathEl extends Part {
  readonly el: 'path'
  readonly pts: readonly (readonly [number, number])[]
  readonly r: number
  readonly tone: 'ink' | 'grey'
  readonly sure: Sure
  readonly head?: 'full' | 'small'
  readonly from?: string
  readonly to?: string
}

export interface DotEl extends Part {
  readonly el: 'dot'
  readonly x: number
  readonly y: number
  readonly tone: 'ink' | 'grey'
}

/** Double rule under a goal's amount. */
export interface RuleEl extends Part {
  readonly el: 'rule2'
  readonly x: number
  readonly y: number
  readonly w: number
}

/** Make or buy. */
export interface PickEl extends Part {
  readonly el: 'pick'
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
  readonly value: 'buy' | 'make' | 'make only'
  readonly grey: boolean
}

export type El = MolEl | TextEl | PathEl | DotEl | RuleEl | PickEl

export interface SchemeOut {
  readonly w: number
  readonly h: number
  readonly els: readonly El[]
  readonly keep: Keep
  /** What could not be drawn as wished, in words: "diphenylacetylene is named, not joined". */
  readonly notes: readonly string[]
}
