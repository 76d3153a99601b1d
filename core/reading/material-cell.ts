import type { Material } from '../library/material.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { bottleOf } from './bottle.ts'
import { readChargeLine } from './charge-line.ts'
import { type AmbiguousName, idNamed, type Meant, type NameIndex } from './names.ts'

const why = 'Stock and packs count only for a material that the library knows.'

/**
 * Reads the cells of a table that name a material as every other typed name is read; besides, a CAS number and an id as it stands are taken,
 * the latter unless the table of ambiguous names asks about that very word.
 *
 * @returns problems csv-material-ambiguous, csv-material-unknown; a warning csv-material-assumed where one of several bottles is the usual one
 */
export function materialCell(names: NameIndex): (text: string, where: readonly string[]) => Checked<Material> {
  const byCas = new Map<string, Material>()
  for (const material of names.materials.values()) if (material.cas !== undefined) byCas.set(material.cas, material)
  return (text, where) => {
    const exact = names.materials.get(text) ?? names.materials.get(text.toLowerCase())
    const row = names.ambiguous(text)
    if (exact !== undefined && row?.default !== null)
      return good(exact, row === null || row.default === exact.id ? [] : [byItsId(text, exact, row, names, where)])
    const cas = byCas.get(text.trim())
    if (cas !== undefined) return good(cas)
    // A strength before the name ("3 M NaOH") is read as in a charge.
    const plain = idNamed(text) === null ? bottleOf(text, null, names) : names.lookUp(text)
    const found = plain.kind === 'unknown' ? (readChargeLine(text, names, 'ask')?.found ?? plain) : plain
    if (found.kind === 'material') {
      const material = names.materials.get(found.material)!
      if (found.assumed === null) return good(material)
      const what = `"${text}" is taken as ${material.name}: ${found.assumed}.`
      const cure = `If another is meant, name it in full, or write its id.`
      return good(material, [{ code: 'csv-material-assumed', where, what, why, cure }])
    }
    const called = (id: string) => `"${names.materials.get(id)?.name ?? id}"`
    if (found.kind === 'ambiguous') {
      // Of other stereo forms, or of one alone, none may be meant.
      const isAll = found.candidates.length > 1 && !found.none
      const choices = [...found.candidates.map(called), ...(isAll ? [] : ['something the library does not hold'])]
      const what = `"${text}" may be ${choices.join(' or ')}: ${found.why}.`
      return bad([
        { code: 'csv-material-ambiguous', where, what, why, cure: `Write which one: ${choicesWritten(found.candidates, names)}.` },
      ])
    }
    if (found.kind === 'no-such-strength') {
      const held = found.held.length > 0 ? ` Held are ${found.held.map(called).join(', ')}.` : ''
      const what = `The library holds no "${text}"; the nearest strength is never taken.${held}`
      return bad([{ code: 'csv-material-unknown', where, what, why, cure: 'Name a strength that is held, or add the solution.' }])
    }
    const what = `The library knows no material "${text}".`
    return bad([
      { code: 'csv-material-unknown', where, what, why, cure: `${near(names.meant(text))}Correct it, or add the material to the library.` },
    ])
  }
}

/** Each as it can be written: by its name where that is read as just this one, else by its id in braces. */
const choicesWritten = (ids: readonly string[], names: NameIndex): string =>
  ids
    .map(id => {
      const name = names.materials.get(id)?.name ?? id
      const found = names.lookUp(name)
      return found.kind === 'material' && found.material === id && found.assumed === null ? name : `{${id}}`
    })
    .join('; ')

/** "ethanol" is an id, and on most benches another bottle than the one with that id. */
const byItsId = (text: string, exact: Material, row: AmbiguousName, names: NameIndex, where: readonly string[]): Problem => ({
  code: 'csv-material-assumed',
  where,
  what: `"${text}" is taken as the material with that id, ${exact.name}; the usual bottle is ${names.materials.get(row.default ?? '')?.name ?? 'another'}.`,
  why,
  cure: 'If another is meant, name it in full, or write its id.',
})

function near(meant: Meant | null): string {
  if (meant === null) return ''
  return meant.another ? `"${meant.name}", which the library holds, is another compound. ` : `Did you mean "${meant.name}"? `
}
