import { Molecule, Reaction } from 'openchemlib'
import type { Toolkit } from '../../core/chemistry/structure.ts'
import type { Library } from '../../core/library/library.ts'
import { type Material, materialSchema } from '../../core/library/material.ts'
import type { Transformation } from '../../core/library/transformation.ts'
import { bad, type Checked, good, type Problem } from '../../core/problem/problem.ts'
import { cellOf, cellValue } from '../../core/reading/cell-text.ts'
import { idOfName } from '../../core/reading/id-of-name.ts'
import type { NameIndex } from '../../core/reading/names.ts'
import { isReactionSmiles, sidesOfReactionSmiles } from '../../core/reading/reaction-smiles.ts'

const keys = Object.keys(materialSchema.shape)

/**
 * Materials as an SD file: structure, and every other key as a data field of its name, so that nothing is lost. The SMILES stands as a field
 * too, since a molfile cannot hold a repeat unit's open ends.
 */
export function sdfOf(materials: readonly Material[]): string {
  return materials
    .map(material => {
      const fields = keys.flatMap(key => {
        const value = material[key as keyof Material]
        return value === undefined ? [] : [`>  <${key}>\n${cellOf(key, value)}\n`]
      })
      return `${molfileOf(material)}\n${fields.join('\n')}\n$$$$\n`
    })
    .join('')
}

/** A molfile (V2000); of a material without a structure that can be drawn, one without atoms. */
function molfileOf({ name, smiles }: Material): string {
  let molecule = new Molecule(0, 0)
  try {
    if (smiles !== undefined && !smiles.includes('*')) molecule = Molecule.fromSmiles(smiles)
  } catch {
    // The field of its SMILES says what it is.
  }
  const [, ...rest] = molecule.toMolfile().trimEnd().split('\n')
  // The first line is a title of at most 80 characters; one that looks like a mark of the format is left to the field of the name.
  const title = name.replace(/\s+/g, ' ').slice(0, 80)
  return [/^[$>]|^M {2}END/.test(title) ? '' : title, ...rest].join('\n')
}

/** Raw records out of an SD file: fields named as keys of the library, the structure where no SMILES stands beside it. */
export function materialsInSdf(name: string, text: string): Checked<readonly Record<string, unknown>[]> {
  const problems: Problem[] = []
  const taken = new Set<string>()
  const blocks = text
    .replace(/^\ufeff/, '')
    .replace(/\r\n?/g, '\n')
    .split(/^\$\$\$\$.*$/m)
  const records = blocks.flatMap((raw, at): Record<string, unknown>[] => {
    const block = raw.replace(/^\n/, '')
    if (block.trim() === '') return []
    const where = [name, `record ${at + 1}`]
    const end = /^M {2}END.*$/m.exec(block)
    if (end === null) {
      problems.push({
        code: 'sdf-unreadable',
        where,
        what: 'This record has no line "M  END".',
        why: 'A structure ends there, and its data begin.',
        cure: 'Save the file again from the program that made it.',
      })
      return []
    }
    const molfile = block.slice(0, end.index + end[0].length)
    const record: Record<string, unknown> = {}
    for (const [, key, value] of block.slice(end.index).matchAll(/^>[^<\n]*<([^>\n]+)>.*\n((?:.+\n?)*)/gm)) {
      const known = keys.find(one => one.toLowerCase() === key!.trim().toLowerCase()) ?? aliases.get(key!.trim().toLowerCase())
      if (known !== undefined) record[known] = cellValue(known, value!.replace(/\n$/, ''))
    }
    record.name ??= molfile.split('\n')[0]?.trim() || undefined
    if (record.name === undefined) delete record.name
    if (record.smiles === undefined) {
      const smiles = smilesOf(molfile)
      if (smiles === null) problems.push(noStructure(where))
      else if (smiles !== '') record.smiles = smiles
    }
    if (record.id === undefined) record.id = idOfName(String(record.name ?? record.smiles ?? ''), taken)
    taken.add(String(record.id))
    record.kind ??= 'compound'
    record.sources ??= [{ citation: `from the file ${name}`, checked: false }]
    return [record]
  })
  if (records.length === 0 && problems.length === 0) problems.push(noStructure([name]))
  return problems.length > 0 ? bad(problems) : good(records)
}

const aliases: ReadonlyMap<string, string> = new Map([
  ['cas number', 'cas'],
  ['density', 'densityGPerMl'],
  ['molecular formula', 'formula'],
  ['synonym', 'synonyms'],
])

/** Null where the molfile cannot be read; empty where it has no atoms. */
function smilesOf(molfile: string): string | null {
  try {
    const molecule = Molecule.fromMolfile(molfile)
    return molecule.getAllAtoms() === 0 ? '' : molecule.toIsomericSmiles()
  } catch {
    return null
  }
}

const noStructure = (where: readonly string[]): Problem => ({
  code: 'sdf-unreadable',
  where,
  what: 'The structure cannot be read.',
  why: 'Molar mass, identity and screening come from it.',
  cure: 'Save the file as V2000 or V3000 from the program that made it, or give a SMILES.',
})

/** The equation as reaction SMILES, coefficients as repeats; null where a compound has no structure. */
export function reactionSmilesOf(library: Library, step: Transformation): string | null {
  const side = (list: Transformation['reactants']) =>
    list.map(({ compound, coefficient }) => {
      const smiles = library.materials.get(compound)?.smiles
      return smiles === undefined || !Number.isInteger(coefficient) ? null : Array.from({ length: coefficient }, () => smiles).join('.')
    })
  const [left, right] = [side(step.reactants), side(step.products)]
  return left.includes(null) || right.includes(null) ? null : `${left.join('.')}>>${right.join('.')}`
}

/** The equation as an MDL reaction file, coefficients as repeats; null where a compound has no structure. */
export function rxnOf(library: Library, step: Transformation): string | null {
  const reaction = Reaction.create()
  for (const [list, add] of [
    [step.reactants, (molecule: Molecule) => reaction.addReactant(molecule)],
    [step.products, (molecule: Molecule) => reaction.addProduct(molecule)],
  ] as const) {
    for (const { compound, coefficient } of list) {
      const smiles = library.materials.get(compound)?.smiles
      if (smiles === undefined || smiles.includes('*') || !Number.isInteger(coefficient)) return null
      for (let copy = 0; copy < coefficient; copy++) add(Molecule.fromSmiles(smiles))
    }
  }
  reaction.setName(step.name)
  // The toolkit pads the counts by two blanks whatever their digits: three columns each, as the format has them.
  const lines = reaction.toRxn().split('\n')
  lines[4] = [reaction.getReactants(), reaction.getProducts()].map(count => String(count).padStart(3)).join('')
  return lines.join('\n')
}

export interface EquationIn {
  /** A line for the reader: names of the library, SMILES where it holds none. */
  readonly equation: string
  /** Structures that the library does not hold. */
  readonly unknown: readonly string[]
}

/** Longest reaction that is read, characters. */
const longest = 100_000

/** The equation of a reaction SMILES or of an MDL reaction file; what stands over the arrow is left out, since it is no reactant. */
export function equationIn(name: string, text: string, names: NameIndex, toolkit: Toolkit): Checked<EquationIn> {
  const body = text.replace(/^\ufeff/, '')
  if (body.length > longest) return bad([unreadable(name, 'it is longer than any reaction')])
  const sides = body.trimStart().startsWith('$RXN')
    ? sidesOfRxn(body)
    : isReactionSmiles(body.trim().split(/\s/)[0] ?? '')
      ? sidesOfReactionSmiles(body.trim().split(/\s/)[0]!, toolkit)
      : null
  if (sides === null || sides[0].length === 0 || sides[1].length === 0)
    return bad([unreadable(name, 'it has no reactant or no product, or its structures cannot be read')])
  const unknown: string[] = []
  const problems: Problem[] = []
  const side = (list: readonly string[]): string => {
    const counted = new Map<string, number>()
    for (const smiles of list) {
      const read = toolkit.parse(smiles, [name])
      if (!read.ok) {
        problems.push(...read.problems)
        continue
      }
      const id = names.ofStructure(read.value)[0]
      if (id === undefined) unknown.push(smiles)
      const word = id === undefined ? smiles : wordFor(id, names)
      counted.set(word, (counted.get(word) ?? 0) + 1)
    }
    return [...counted].map(([word, count]) => (count === 1 ? word : `${count} ${word}`)).join(' + ')
  }
  const equation = `${side(sides[0])} -> ${side(sides[1])}`
  return problems.length > 0 ? bad(problems) : good({ equation, unknown: [...new Set(unknown)] })
}

/** A name that the reader takes for just this compound; with its id where the name alone could mean another. */
export function wordFor(id: string, names: NameIndex): string {
  const name = names.materials.get(id)?.name ?? id
  const found = names.lookUp(name)
  return found.kind === 'material' && found.material === id && found.assumed === null && !/[+>]|->|=/.test(name)
    ? name
    : `${name.replace(/\s*[+>=]\s*/g, ' ')} {${id}}`
}

/**
 * A V2000 file is cut at its own marks, by the counts of its fifth line: the toolkit's reader loses molecules where a side has ten or more.
 * What stands over the arrow comes after the products and is left out.
 */
function sidesOfRxn(text: string): readonly [readonly string[], readonly string[]] | null {
  try {
    const body = text.trimStart().replace(/\r\n?/g, '\n')
    if (/^\$RXN V3000/.test(body)) {
      const reaction = Reaction.fromRxn(body)
      const of = (count: number, get: (at: number) => Molecule) => Array.from({ length: count }, (_, at) => get(at).toIsomericSmiles())
      return [of(reaction.getReactants(), at => reaction.getReactant(at)), of(reaction.getProducts(), at => reaction.getProduct(at))]
    }
    const [head = '', ...blocks] = body.split(/^\$MOL.*\n/m)
    // Parted by blanks, or where both have three digits by their columns.
    const line = head.split('\n')[4] ?? ''
    const counts = /^\s*(\d{1,3})\s+(\d{1,3})(?=\s|$)/.exec(line) ?? /^([ \d]{2}\d)([ \d]{2}\d)/.exec(line)
    if (counts === null) return null
    const [left, right] = [Number(counts[1]), Number(counts[2])]
    if (left + right > blocks.length || blocks.length > mostMolecules) return null
    const smiles = blocks.slice(0, left + right).map(block => Molecule.fromMolfile(block).toIsomericSmiles())
    return [smiles.slice(0, left), smiles.slice(left)]
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
