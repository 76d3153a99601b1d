import { Molecule, Reaction } from 'openchemlib'
import { smilesWithGroups } from '../../core/chemistry/hands-of.ts'
import type { Toolkit } from '../../core/chemistry/structure.ts'
import { type Library, materialOf } from '../../core/library/library.ts'
import { compoundIn } from '../../core/library/reference-charge.ts'
import { chargedRoles, stageOf, type Transformation } from '../../core/library/transformation.ts'
import { bad, type Checked, good, type Problem } from '../../core/problem/problem.ts'
import type { NameIndex } from '../../core/reading/names.ts'
import {
  isReactionSmiles,
  partsOfReactionSmiles,
  type ReactionSmiles,
  reactionSmiles,
  smilesLine,
} from '../../core/reading/reaction-smiles.ts'
import { plainSmiles } from '../../core/reading/smiles-or-formula.ts'
import { wordFor } from '../../core/reading/word-for.ts'
import { isBothByFlag } from './chiral-flag.ts'
import { moleculeOf } from './molecule-of.ts'
import { titleOf } from './reaction-title.ts'

/**
 * The equation as reaction SMILES, coefficients as repeats, a compound of several pieces held together as CXSMILES does; null where it cannot
 * be written.
 */
export function reactionSmilesOf(library: Library, step: Transformation): string | null {
  if (notDrawn(library, step, false) !== null) return null
  const side = (list: Transformation['reactants']) =>
    list.flatMap(({ compound, coefficient }) => Array.from({ length: coefficient }, () => library.materials.get(compound)!.smiles!))
  return reactionSmiles({ reactants: side(step.reactants), agents: agentsOf(library, step), products: side(step.products) })
}

/** Why an equation cannot be written with structures, as half a sentence; null where it can. */
export function notDrawn(library: Library, step: Transformation, isMolfile: boolean): string | null {
  const terms = [...step.reactants, ...step.products]
  const nameless = terms.find(({ compound }) => {
    const smiles = library.materials.get(compound)?.smiles
    return smiles === undefined || (isMolfile && smiles.includes('*'))
  })
  if (nameless !== undefined) {
    const { name = nameless.compound, smiles } = library.materials.get(nameless.compound) ?? {}
    return smiles === undefined ? `${name} has no structure` : `${name} is a repeat unit with open ends`
  }
  if (terms.some(one => !Number.isInteger(one.coefficient))) return 'its coefficients are not all whole numbers'
  const molecules = terms.reduce((sum, one) => sum + one.coefficient, 0)
  return molecules > mostMolecules ? `its coefficients add up to ${molecules}, and each molecule would be written out` : null
}

/**
 * SMILES of what stands over the arrow: compounds that the vessel is charged with and the equation does not name, each once. One without a
 * structure cannot be drawn and is left out.
 */
export function agentsOf(library: Library, step: Transformation): readonly string[] {
  const named = new Set([...step.reactants, ...step.products].map(one => one.compound))
  const ids = step.charge
    .filter(line => chargedRoles.has(line.role) && stageOf(line) === 'vessel')
    .flatMap(line => compoundIn(materialOf(library, line.material)) ?? [])
    .filter(id => !named.has(id))
  const smiles = [...new Set(ids)].flatMap(id => library.materials.get(id)?.smiles ?? [])
  return [...new Set(smiles)].filter(one => !one.includes('*'))
}

/**
 * The equation as an MDL reaction file, coefficients as repeats; a compound of several pieces, such as a salt or a hydrate, is one molfile.
 * Null where it cannot be written.
 */
export function rxnOf(library: Library, step: Transformation): string | null {
  if (notDrawn(library, step, true) !== null) return null
  const reaction = Reaction.create()
  for (const [list, add] of [
    [step.reactants, (molecule: Molecule) => reaction.addReactant(molecule)],
    [step.products, (molecule: Molecule) => reaction.addProduct(molecule)],
  ] as const)
    for (const { compound, coefficient } of list)
      for (let copy = 0; copy < coefficient; copy++) add(moleculeOf(library.materials.get(compound)!.smiles!))
  // The toolkit pads the counts by two blanks whatever their digits: three columns each, as the format has them. What stands over the arrow
  // has a third count and comes last, as is the custom: a reader that knows only two counts passes it over.
  const agents = agentsOf(library, step)
  const counts = [reaction.getReactants(), reaction.getProducts(), ...(agents.length === 0 ? [] : [agents.length])]
  const lines = reaction.toRxn().trimEnd().split('\n')
  // Nor does it write the name, which stands in the second line, at most 80 characters.
  lines[1] = titleOf(step, 'rxn')
  lines[4] = counts.map(count => String(count).padStart(3)).join('')
  return `${[...lines, ...agents.map(smiles => `$MOL\n${moleculeOf(smiles).toMolfile().trimEnd()}`)].join('\n')}\n`
}

/** A coefficient is so many times the same molecule: each is looked at once. */
function once<T>(of: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>()
  return text => {
    if (!known.has(text)) known.set(text, of(text))
    return known.get(text)!
  }
}

export interface EquationIn {
  /** A line for the reader: names of the library, SMILES where it holds none. */
  readonly equation: string
  /** What stands over the arrow, as lines of the charge whose amounts are still to be given. */
  readonly agents: readonly string[]
  /** Structures that the library does not hold. */
  readonly unknown: readonly string[]
  /** Words of the equation and the charges for what is drawn in one hand and is both by the chiral flag 0 of the file. */
  readonly byFlag: readonly string[]
}

interface Parts extends ReactionSmiles {
  /** SMILES of those that the chiral flag makes both hands. */
  readonly byFlag: readonly string[]
}

/** Longest reaction that is read, characters. */
const longest = 100_000

/** The equation of a reaction SMILES or of an MDL reaction file; what stands over the arrow is no reactant, and comes as charges. */
export function equationIn(name: string, text: string, names: NameIndex, toolkit: Toolkit): Checked<EquationIn> {
  const body = text.replace(/^\ufeff/, '')
  if (body.length > longest) return bad([unreadable(name, 'it is longer than any reaction')])
  const parts = body.trimStart().startsWith('$RXN')
    ? partsOfRxn(body)
    : isReactionSmiles(smilesLine(body).body)
      ? withoutFlags(partsOfReactionSmiles(smilesLine(body).body, toolkit))
      : null
  if (parts === null || parts.reactants.length === 0 || parts.products.length === 0)
    return bad([unreadable(name, 'it has no reactant or no product, or its structures cannot be read')])
  const unknown: string[] = []
  const problems: Problem[] = []
  const wordOf = once((smiles: string): string | null => {
    const read = toolkit.parse(smiles, [name])
    if (!read.ok) {
      problems.push(...read.problems)
      return null
    }
    const ids = names.ofStructure(read.value)
    if (ids.length === 0) unknown.push(smiles)
    // Of several compounds with one structure none is taken: the reader asks which.
    return ids.length === 1 ? wordFor(ids[0]!, names) : plainSmiles(smiles)
  })
  const words = (list: readonly string[]): readonly string[] => list.flatMap(smiles => wordOf(smiles) ?? [])
  const side = (list: readonly string[]): string => {
    const counted = new Map<string, number>()
    for (const word of words(list)) counted.set(word, (counted.get(word) ?? 0) + 1)
    return [...counted].map(([word, count]) => (count === 1 ? word : `${count} ${word}`)).join(' + ')
  }
  const equation = `${side(parts.reactants)} -> ${side(parts.products)}`
  const agents = [...new Set(words(parts.agents))]
  return problems.length > 0
    ? bad(problems)
    : good({ equation, agents, unknown: [...new Set(unknown)], byFlag: [...new Set(words(parts.byFlag))] })
}

const withoutFlags = (parts: ReactionSmiles | null): Parts | null => (parts === null ? null : { ...parts, byFlag: [] })

/**
 * A V2000 file is cut at its own marks, by the counts of its fifth line: the toolkit's reader loses molecules where a side has ten or more.
 * What stands over the arrow comes after the products, whether a third count tells of it or not.
 */
function partsOfRxn(text: string): Parts | null {
  const byFlag = new Set<string>()
  const smilesOf = (molfile: string, molecule: Molecule): string => {
    const smiles = smilesWithGroups(molecule, Molecule)
    if (isBothByFlag(molfile, molecule)) byFlag.add(smiles)
    return smiles
  }
  try {
    const body = text.trimStart().replace(/\r\n?/g, '\n')
    if (/^\$RXN V3000/.test(body)) {
      const reaction = Reaction.fromRxn(body)
      const of = (count: number, get: (at: number) => Molecule) =>
        Array.from({ length: count }, (_, at) => smilesWithGroups(get(at), Molecule))
      return {
        reactants: of(reaction.getReactants(), at => reaction.getReactant(at)),
        agents: of(reaction.getCatalysts(), at => reaction.getCatalyst(at)),
        products: of(reaction.getProducts(), at => reaction.getProduct(at)),
        byFlag: [],
      }
    }
    const [head = '', ...blocks] = body.split(/^\$MOL.*\n/m)
    // Parted by blanks, or where both have three digits by their columns.
    const line = head.split('\n')[4] ?? ''
    const counts = /^\s*(\d{1,3})\s+(\d{1,3})(?=\s|$)/.exec(line) ?? /^([ \d]{2}\d)([ \d]{2}\d)/.exec(line)
    if (counts === null) return null
    const [left, right] = [Number(counts[1]), Number(counts[2])]
    // A third count is that of what stands over the arrow: a molecule that is missing would else shift all others.
    const over = /^\s*\d{1,3}\s+\d{1,3}\s+(\d{1,3})(?=\s|$)/.exec(line)?.[1]
    const isWhole = over === undefined || over === '0' ? left + right <= blocks.length : left + right + Number(over) === blocks.length
    if (!isWhole || blocks.length > mostMolecules) return null
    const smiles = blocks.map(once(block => smilesOf(block, Molecule.fromMolfile(block))))
    return {
      reactants: smiles.slice(0, left),
      products: smiles.slice(left, left + right),
      agents: smiles.slice(left + right).filter(one => one !== ''),
      byFlag: [...byFlag],
    }
  } catch {
    return null
  }
}

/** More than any equation of a step has, coefficients written out. */
const mostMolecules = 200

const unreadable = (name: string, what: string): Problem => ({
  code: 'reaction-unreadable',
  where: [name],
  what: `This is no reaction that can be read: ${what}.`,
  why: 'An equation has reactants on the left and products on the right.',
  cure: 'Give a reaction SMILES such as CCO.CC(=O)O>>CCOC(C)=O.O, or an MDL reaction file (V2000).',
})
