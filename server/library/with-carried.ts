import type { Library, LibraryFile } from '../../core/library/library.ts'
import { libraryOfParts } from '../../core/plan/library-of-parts.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { Refusal } from '../refusal.ts'
import { withSlice } from './with-slice.ts'
import type { Workshop } from './workshop.ts'

interface Laid {
  readonly shop: Workshop
  /** Why what the plan brings is left out; empty = it is laid over. */
  readonly refused: readonly Problem[]
}

/** What was laid over a workshop last: the page asks for the same plan again and again, and a search makes its network once a library. */
const last = new WeakMap<Workshop, { readonly library: Library; readonly key: string; readonly laid: Laid }>()

/**
 * The workshop with what an opened plan brings along and the library does not hold; where that breaks a rule of the library by now, without
 * it. A list that ends planning ends this too.
 *
 * @throws Refusal where a list ends planning with what it brings
 */
export function withCarried(workshop: Workshop, carried: LibraryFile | null | undefined): Laid {
  if (!carried) return { shop: workshop, refused: [] }
  const { library } = workshop
  const key = JSON.stringify(carried)
  const before = last.get(workshop)
  if (before?.library === library && before.key === key) return before.laid
  const laid = laidOver(workshop, carried)
  last.set(workshop, { library, key, laid })
  return laid
}

function laidOver(workshop: Workshop, carried: LibraryFile): Laid {
  try {
    return { shop: withSlice(workshop, libraryOfParts({ title: carried.title }, carried.materials, carried.transformations)), refused: [] }
  } catch (error) {
    if (!(error instanceof Refusal) || error.kind !== 'bad-input') throw error
    return { shop: workshop, refused: error.problems }
  }
}
