import { type Library, type LibraryFile } from '../../core/library/library.ts'
import { loadLibrary } from '../../core/library/load.ts'
import type { SliceReply } from '../api/replies.ts'

/** The part of the library that this page holds, with all that was reckoned about it on the server. It only grows. */
export interface Facts {
  readonly file: LibraryFile
  readonly library: Library
  readonly traits: Readonly<Record<string, unknown>>
  readonly drawings: Readonly<Record<string, unknown>>
  /** Compounds that some transformation of the whole library makes. */
  readonly makeable: ReadonlySet<string>
}

const emptyFile: LibraryFile = { format: 'waybench-library', version: 1, title: 'Slice', materials: [], transformations: [] }

export const noFacts: Facts = { file: emptyFile, library: libraryOf(emptyFile), traits: {}, drawings: {}, makeable: new Set() }

/** A library from a slice of one. Throws where it does not hold together: the server cuts slices, so that is our mistake. */
export function libraryOf(file: LibraryFile): Library {
  const loaded = loadLibrary([{ name: 'slice', text: JSON.stringify(file) }])
  if (!loaded.ok) throw new Error(`the slice of the library does not hold together: ${loaded.problems.map(p => p.what).join(' ')}`)
  return loaded.value
}

/** Facts with a further slice; what the slice says anew stands in place of what was known. */
export function grown(facts: Facts, slice: SliceReply): Facts {
  const file: LibraryFile = {
    ...facts.file,
    title: slice.library.title,
    materials: merged(facts.file.materials, slice.library.materials),
    transformations: merged(facts.file.transformations, slice.library.transformations),
  }
  return {
    file,
    library: libraryOf(file),
    traits: { ...facts.traits, ...slice.traits },
    drawings: { ...facts.drawings, ...slice.drawings },
    makeable: new Set([...facts.makeable, ...(slice.makeable ?? [])]),
  }
}

function merged<R extends { readonly id: string }>(known: readonly R[], fresh: readonly R[]): R[] {
  const byId = new Map(known.map(record => [record.id, record]))
  for (const record of fresh) byId.set(record.id, record)
  return [...byId.values()]
}
