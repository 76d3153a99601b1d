import { Molecule } from 'openchemlib'
import { smilesWithGroups } from '../../core/chemistry/hands-of.ts'
import type { Material } from '../../core/library/material.ts'
import { didYouMean } from '../../core/problem/nearest.ts'
import { bad, type Checked, good, type Problem } from '../../core/problem/problem.ts'
import { cellOf } from '../../core/reading/cell-text.ts'
import { keyOfHeading, materialKeys as keys, materialValue } from '../../core/reading/material-columns.ts'
import { type Beneath, idFor, nothingBeneath, overKnown } from '../../core/reading/over-known.ts'
import { moleculeOf } from './molecule-of.ts'

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
    if (smiles !== undefined && !smiles.includes('*')) molecule = moleculeOf(smiles)
  } catch {
    // The field of its SMILES says what it is.
  }
  const [, ...rest] = molecule.toMolfile().trimEnd().split('\n')
  // The first line is a title of at most 80 characters; one that looks like a mark of the format is left to the field of the name.
  const title = name.replace(/\s+/g, ' ').slice(0, 80)
  return [/^[$>]|^M {2}END/.test(title) ? '' : title, ...rest].join('\n')
}

/**
 * Raw records out of an SD file: fields named as keys of the library, the structure where no SMILES stands beside it. Of a material that is
 * known by its id, or its name, what the file does not say is kept.
 */
export function materialsInSdf(name: string, text: string, beneath: Beneath = nothingBeneath): Checked<readonly Record<string, unknown>[]> {
  const problems: Problem[] = []
  const taken = new Set<string>()
  const unknown = new Set<string>()
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
      const known = keyOfHeading(key!)
      const text = value!.replace(/\n$/, '')
      if (known === null) unknown.add(key!)
      if (known === null || text.trim() === '') continue
      if (record[known] !== undefined) problems.push(fieldTwice([...where, key!], known))
      const read = materialValue(known, text, `file ${name}`, [...where, key!], 'ask')
      if (read.ok) record[known] = read.value
      else problems.push(...read.problems)
    }
    record.name ??= molfile.split('\n')[0]?.trim() || undefined
    if (record.name === undefined) delete record.name
    const isDrawn = record.smiles === undefined
    if (isDrawn) {
      const smiles = smilesOf(molfile)
      if (smiles === null) problems.push(noStructure(where))
      else if (smiles !== '') record.smiles = smiles
    }
    const title = String(record.name ?? record.smiles ?? '')
    const id = record.id === undefined ? idFor(title, beneath, taken, where) : good(String(record.id))
    if (!id.ok) {
      problems.push(...id.problems)
      return []
    }
    record.id = id.value
    taken.add(id.value)
    const known = beneath.byId.get(id.value)
    // The same structure written in another way is no change.
    if (isDrawn && known?.smiles !== undefined && identityOf(known.smiles) === identityOf(String(record.smiles)))
      record.smiles = known.smiles
    return [overKnown(record, new Set(), known, `from the file ${name}`)]
  })
  problems.push(...[...unknown].slice(0, mostFields).map(field => fieldUnknown(name, field)))
  if (records.length === 0 && problems.length === 0) problems.push(noStructure([name]))
  return problems.length > 0 ? bad(problems) : good(records)
}

/** Fields that are told at the most: a file of another program may hold hundreds. */
const mostFields = 20

/** The same for every way of writing one structure; null where it cannot be read. */
function identityOf(smiles: string): string | null {
  try {
    return moleculeOf(smiles).getIDCode()
  } catch {
    return null
  }
}

/** Null where the molfile cannot be read; empty where it has no atoms. */
function smilesOf(molfile: string): string | null {
  try {
    const molecule = Molecule.fromMolfile(molfile)
    return molecule.getAllAtoms() === 0 ? '' : smilesWithGroups(molecule, Molecule)
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

const fieldUnknown = (name: string, field: string): Problem => ({
  code: 'sdf-field-unknown',
  where: [name, field.slice(0, 80)],
  what: `Nothing is known by the data field "${field.slice(0, 80)}".`,
  why: 'A file is taken whole or not at all, so that nothing in it is lost unseen.',
  cure: `${didYouMean(field, keys)}Fields are ${keys.join(', ')}; take a field that is not meant out of every record.`,
})

const fieldTwice = (where: readonly string[], key: string): Problem => ({
  code: 'sdf-field-twice',
  where,
  what: `Two data fields give "${key}".`,
  why: 'One of the two would be lost.',
  cure: 'Keep one of them.',
})
