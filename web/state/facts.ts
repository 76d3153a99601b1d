import type { Depiction } from '../../core/chemistry/drawing.ts'
import { type Beneath, nothingBeneath } from '../../core/library/beneath.ts'
import type { Library, LibraryFile } from '../../core/library/library.ts'
import { libraryOfParts } from '../../core/plan/library-of-parts.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { sliceFile, sliceOfPlan } from '../../core/plan/slice.ts'
import type { SliceReply } from '../api/replies.ts'

/** The part of the library that this page holds, with all that was reckoned about it on the server. It only grows. */
export interface Facts {
  readonly file: LibraryFile
  readonly library: Library
  readonly traits: Readonly<Record<string, unknown>>
  readonly depictions: ReadonlyMap<string, Depiction>
  /** Compounds that some transformation of the whole library makes. */
  readonly makeable: ReadonlySet<string>
  /** What records of the bench itself stand in place of. */
  readonly beneath: Beneath
  /** Records of an older library that a plan goes on with: what the server says of them is left aside. */
  readonly kept: LibraryFile | null
  /** The library has changed since: what stands on the page stays until the new word comes, and that is asked for as if nothing were here. */
  readonly stale: boolean
}

const emptyFile: LibraryFile = { format: 'waybench-library', version: 1, title: 'Slice', materials: [], transformations: [] }

/** What own records stand in place of, of the library under the bench's own; a plan that keeps its records is not about that. */
export const beneathFor = ({ kept, beneath }: Facts): Beneath => (kept === null ? beneath : nothingBeneath)

/** A library from a slice of one; the server has checked its records. */
export const libraryOf = (file: LibraryFile): Library => libraryOfParts({ title: file.title }, file.materials, file.transformations)

/** Facts with a further slice; what the slice says anew stands in place of what was known. */
export function grown(before: Facts, slice: SliceReply): Facts {
  const facts = before.stale ? certain(before) : before
  const file = overlaid(overlaid(facts.file, slice.library), facts.kept)
  return {
    ...facts,
    file,
    library: libraryOf(file),
    traits: { ...facts.traits, ...slice.traits },
    depictions: new Map([...facts.depictions, ...Object.entries(slice.drawings)]),
    beneath: {
      yields: new Map([...facts.beneath.yields, ...Object.entries(slice.beneath ?? {})]),
      materials: new Map([...facts.beneath.materials, ...Object.entries(slice.beneathMaterials ?? {})]),
    },
    makeable: new Set([...facts.makeable, ...(slice.makeable ?? [])]),
  }
}

/** Of what is here, what still holds: all of it, or after a change of the library what the plan keeps of its own. */
export const certain = (facts: Facts): Facts => (!facts.stale ? facts : facts.kept === null ? noFacts : keeping(noFacts, facts.kept))

/** Facts in which the records of an older library stand in place of the server's, now and whenever more comes. */
export function keeping(facts: Facts, old: LibraryFile): Facts {
  const file = overlaid(facts.file, old)
  return { ...facts, file, library: libraryOf(file), kept: old }
}

/** Records that a plan brings along, with those that it uses by now; what the page holds is the newer word. */
export function withPlanOf(carried: LibraryFile | null, library: Library, plan: Plan): LibraryFile {
  const used = sliceFile(sliceOfPlan(library, plan))
  return carried === null ? used : overlaid(carried, used)
}

function overlaid(under: LibraryFile, over: LibraryFile | null): LibraryFile {
  if (over === null) return under
  return {
    ...under,
    title: over.title,
    materials: merged(under.materials, over.materials),
    transformations: merged(under.transformations, over.transformations),
  }
}

function merged<R extends { readonly id: string }>(known: readonly R[], fresh: readonly R[]): R[] {
  const byId = new Map(known.map(record => [record.id, record]))
  for (const record of fresh) byId.set(record.id, record)
  return [...byId.values()]
}

export const noFacts: Facts = {
  file: emptyFile,
  library: libraryOf(emptyFile),
  traits: {},
  depictions: new Map(),
  makeable: new Set(),
  beneath: nothingBeneath,
  kept: null,
  stale: false,
}
