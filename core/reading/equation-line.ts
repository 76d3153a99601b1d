import type { Toolkit } from '../chemistry/structure.ts'
import type { Problem } from '../problem/problem.ts'
import { compoundNamed } from './compound-named.ts'
import { coefficientOf, readStructure, readTerm, type TermRead } from './equation-term.ts'
import type { NameIndex } from './names.ts'
import { isReactionSmiles, partsOfReactionSmiles, type ReactionSmiles, smilesLine } from './reaction-smiles.ts'
import { isPlainlyStructure } from './smiles-or-formula.ts'

export interface EquationRead {
  readonly reactants: readonly TermRead[]
  readonly products: readonly TermRead[]
  readonly problems: readonly Problem[]
  /** SMILES of what a reaction SMILES has over its arrow: charged, but no reactant. */
  readonly agents?: readonly string[]
  /** What was assumed of the line as a whole. */
  readonly notes?: readonly string[]
}

/** Arrows as people type them; a bare = only with blanks, since SMILES has it as a bond. */
const arrow = /\s*(?:<?[-–—=]{1,3}>|[→⟶⇒⟹⇨⇾⇌⇋⇄⇆➔➙➛➜➝➞➡⮕↦]\ufe0f?|>>)\s*|\s+=+\s+/u

/** More compounds than any equation of a single step has on one side. */
const mostTerms = 20

/** Whether a line holds an arrow. */
export const isEquation = (line: string): boolean => arrow.test(line) || isReactionSmiles(smilesLine(line).body)

/**
 * Reads "2 benzaldehyde -> benzoin": names, synonyms, formulas, ids or SMILES, with or without coefficients; or a reaction SMILES, of which
 * every part is a structure.
 *
 * In an equation the compound is meant and never a bottle of it: "HCl" is hydrogen chloride, and "50 % acetic acid" acetic acid. A name that
 * stands for several compounds is asked about, and so is what is a formula and a structure at once.
 *
 * @param toolkit  reads the formula of a SMILES that the library does not hold, so that the balance can still be told
 */
export function readEquation(line: string, index: NameIndex, toolkit: Toolkit | null): EquationRead {
  const written = line.replace(/^\s*equation\s*:\s*/i, '')
  const drawn = toolkit === null ? null : drawnIn(written, index, toolkit)
  return drawn === null ? readWords(written, index, toolkit) : readDrawn(drawn, index, toolkit!)
}

/**
 * A line that is a reaction SMILES, with the name behind it; null for one that has names between its angle brackets, such as
 * "benzaldehyde>>benzoin" or "CO+H2>>methanol".
 */
function drawnIn(written: string, index: NameIndex, toolkit: Toolkit): (ReactionSmiles & { readonly title: string }) | null {
  const { body, title } = smilesLine(written)
  if (!isReactionSmiles(body) || /^[+>]|\s\+\s|>/.test(title)) return null
  const parts = partsOfReactionSmiles(body, toolkit)
  const all = [...parts.reactants, ...parts.agents, ...parts.products]
  const isAllDrawn = all.every(smiles => toolkit.parse(smiles).ok)
  // Broken structures are told as such, unless something between the brackets is a name, or a plus parts them.
  const isOfWords = all.some(one => /\+(?![^[]*\])/.test(one) || (!toolkit.parse(one).ok && isKnown(one, index)))
  return isAllDrawn || !isOfWords ? { ...parts, title } : null
}

const isKnown = (text: string, index: NameIndex): boolean =>
  [text, coefficientOf(text)?.rest ?? text].some(one => compoundNamed(one, index).kind !== 'unknown')

function readDrawn(
  { reactants, agents, products, title }: ReactionSmiles & { readonly title: string },
  index: NameIndex,
  toolkit: Toolkit,
) {
  const problems: Problem[] = []
  const [left, right] = [reactants, products].map((list, at) =>
    merged(list.map(smiles => readStructure(smiles, { index, toolkit, problems, drawn: true, side: at === 0 ? 'left' : 'right' }))),
  )
  const tooLong = tooManyTerms(Math.max(left!.length, right!.length))
  if (tooLong !== null) return { reactants: [], products: [], problems: [tooLong] }
  const notes = title === '' ? [] : [`"${title}" behind the reaction SMILES is its name, and no part of it`]
  return { reactants: left!, products: right!, problems, agents, notes }
}

function readWords(written: string, index: NameIndex, toolkit: Toolkit | null): EquationRead {
  const sides = written.split(arrow).map(termsOf)
  const [left, right] = sides
  if (left === undefined || right === undefined || sides.length !== 2)
    return { reactants: [], products: [], problems: [noArrow(sides.length < 2)] }
  const tooLong = tooManyTerms(Math.max(left.length, right.length))
  if (tooLong !== null) return { reactants: [], products: [], problems: [tooLong] }
  const problems: Problem[] = []
  const drawn = toolkit !== null && [...left, ...right].some(text => isPlainlyStructure(coefficientOf(text)?.rest ?? text, toolkit))
  const [reactants, products] = [left, right].map((side, at) =>
    merged(side.map(text => readTerm(text, { index, toolkit, drawn, problems, side: at === 0 ? 'left' : 'right' }))),
  )
  if (left.length === 0 || right.length === 0)
    problems.push({
      code: 'equation-unreadable',
      where: ['line 1'],
      what: `There is nothing ${left.length === 0 ? 'before' : 'after'} the arrow.`,
      why: 'An equation needs at least one reactant and one product.',
      cure: 'Name the compounds on both sides.',
    })
  const terms = [...reactants!, ...products!]
  const perUnit = [...left, ...right].some(text => /^\(?\d*\s*n[\s)-]/.test(text) && terms.every(term => term.text !== text))
  return {
    reactants: reactants!,
    products: products!,
    problems,
    ...(perUnit ? { notes: ['a polymer counts per repeat unit: n in the equation is 1'] } : {}),
  }
}

const noArrow = (isMissing: boolean): Problem => ({
  code: isMissing ? 'equation-missing' : 'equation-unreadable',
  where: ['line 1'],
  what: isMissing ? 'The first line has no arrow.' : 'The first line has more than one arrow.',
  why: 'Amounts and by-products are computed from one equation.',
  cure: 'Begin with the equation, for example: 2 benzaldehyde -> benzoin.',
})

const tooManyTerms = (count: number): Problem | null =>
  count <= mostTerms
    ? null
    : {
        code: 'equation-unreadable',
        where: ['line 1'],
        what: `One side of the equation has ${count} compounds.`,
        why: `A step of a preparation has at most ${mostTerms} on a side.`,
        cure: 'Write one balanced equation for one step.',
      }

/** Parts between plus signs; a plus within brackets, or the charge of an ion, parts nothing. */
function termsOf(side: string): readonly string[] {
  const parts = /\s\+\s/.test(side) ? side.split(/\s+\+\s+/) : side.split(/\+(?=\s|[A-Za-z\d(])(?![^[]*\])(?<![\d^]\+)/)
  return parts.map(part => part.trim()).filter(part => part !== '')
}

/** The same compound twice on one side is one term. */
function merged(terms: readonly TermRead[]): readonly TermRead[] {
  const list: TermRead[] = []
  for (const term of terms) {
    const at = list.findIndex(one =>
      term.compound === null
        ? one.compound === null && one.text === term.text
        : one.compound === term.compound && one.crystalWater === term.crystalWater,
    )
    if (at < 0) list.push(term)
    else list[at] = { ...list[at]!, coefficient: list[at]!.coefficient + term.coefficient }
  }
  return list
}
