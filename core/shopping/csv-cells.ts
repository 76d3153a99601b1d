import type { Library } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { didYouMean } from '../problem/nearest.ts'
import { bad, type Checked, good } from '../problem/problem.ts'

const whyMaterial = 'Stock and packs count only for a material that the library knows.'

/** The material that a cell means: its id, name, a synonym or its CAS number, case not counting. */
export function materialIn(library: Library, text: string, where: readonly string[]): Checked<Material> {
  const exact = library.materials.get(text)
  if (exact !== undefined) return good(exact)
  const words = wordsOf(library)
  const found = words.get(text.toLowerCase()) ?? []
  if (found.length === 1) return good(found[0]!)
  if (found.length > 1)
    return bad([
      {
        code: 'csv-material-ambiguous',
        where,
        what: `"${text}" may be ${found.map(m => m.name).join(' or ')}.`,
        why: whyMaterial,
        cure: `Write one of the ids ${found.map(m => m.id).join(', ')}.`,
      },
    ])
  return bad([
    {
      code: 'csv-material-unknown',
      where,
      what: `The library knows no material "${text}".`,
      why: whyMaterial,
      cure: `${didYouMean(text, words.keys())}Correct it, or add the material to the library.`,
    },
  ])
}

const known = new WeakMap<Library, ReadonlyMap<string, readonly Material[]>>()

/** Materials by every word that means them, in small letters; a name wins over another's synonym. */
function wordsOf(library: Library): ReadonlyMap<string, readonly Material[]> {
  const before = known.get(library)
  if (before) return before
  const words = new Map<string, Material[]>()
  const add = (word: string | undefined, material: Material) => {
    if (word === undefined) return
    const list = words.get(word.toLowerCase()) ?? []
    if (!list.includes(material)) list.push(material)
    words.set(word.toLowerCase(), list)
  }
  for (const material of library.materials.values()) {
    add(material.name, material)
    add(material.id, material)
  }
  const named = new Set(words.keys())
  for (const material of library.materials.values())
    for (const word of [...(material.synonyms ?? []), material.cas])
      if (word !== undefined && !named.has(word.toLowerCase())) add(word, material)
  known.set(library, words)
  return words
}

const monthDays = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/** A date as `YYYY-MM-DD`, `YYYY-MM` or `DD.MM.YYYY`; what may be read in two ways (03/04/2026) is asked about. */
export function dateIn(text: string, where: readonly string[]): Checked<string> {
  const iso = /^(\d{4})-(\d{2})(?:-(\d{2}))?$/.exec(text)
  const german = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text)
  const [year, month, day] = iso
    ? [iso[1]!, iso[2]!, iso[3]]
    : german
      ? [german[3]!, german[2]!.padStart(2, '0'), german[1]!.padStart(2, '0')]
      : []
  const inMonth = monthDays[Number(month) - 1]
  const isLeap = (y: number) => (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0
  const most = month === '02' && !isLeap(Number(year)) ? 28 : inMonth
  if (year !== undefined && most !== undefined && (day === undefined || (Number(day) >= 1 && Number(day) <= most)))
    return good(day === undefined ? `${year}-${month}` : `${year}-${month}-${day}`)
  return bad([
    {
      code: 'csv-date',
      where,
      what: `"${text}" is not a date that can be read in one way only.`,
      why: 'The oldest bottle is used first, and an expired one not at all.',
      cure: 'Write it as 2026-03-31 or 31.03.2026.',
    },
  ])
}
