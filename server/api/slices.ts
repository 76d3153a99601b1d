import { z } from 'zod'
import { libraryFileSchema } from '../../core/library/library.ts'
import { libraryHash } from '../../core/plan/file.ts'
import { libraryOfParts } from '../../core/plan/library-of-parts.ts'
import { sliceFile, sliceOf } from '../../core/plan/slice.ts'
import { nearest } from '../../core/problem/nearest.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { withSlice } from '../library/with-slice.ts'
import { depictionsOf } from '../planning/drawings.ts'
import { Refusal } from '../refusal.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

const bodySchema = z.strictObject({
  /** Routes as lists of transformation ids. */
  routes: z.array(z.array(z.string().max(200)).max(300)).max(200),
  /** Further materials: the start, the shelf, what packs sell. */
  materials: z.array(z.string().max(200)).max(5000).default([]),
  /** What an opened plan brings along; of it only records that the library does not hold are used. */
  carried: libraryFileSchema.nullish(),
})

/** The part of the library that some routes use, with all that the page needs to reckon and draw by itself. */
export const slices: Resource = (api, { workshop }) => {
  api.post('/slice', { schema: { body: bodySchema, response: { 200: z.unknown(), ...refusals } } }, request => {
    const { routes, materials, carried } = request.body
    const shop = carried
      ? withSlice(workshop, libraryOfParts({ title: carried.title }, carried.materials, carried.transformations))
      : workshop
    const { library } = shop
    const problems = [
      ...routes
        .flat()
        .filter(id => !library.transformations.has(id))
        .map(id => unknown('transformation', id, library.transformations.keys())),
      ...materials.filter(id => !library.materials.has(id)).map(id => unknown('material', id, library.materials.keys())),
    ]
    if (problems.length > 0) throw new Refusal('bad-input', problems)
    const slice = sliceOf(library, routes.flat(), materials)
    const traits = shop.traits()
    return {
      library: sliceFile(slice),
      hash: libraryHash(library),
      traits: Object.fromEntries([...slice.materials.keys()].flatMap(id => (traits.has(id) ? [[id, traits.get(id)]] : []))),
      drawings: depictionsOf(slice),
      makeable: [...slice.materials.keys()].filter(id => library.makers.has(id)),
    }
  })
}

function unknown(kind: string, id: string, ids: Iterable<string>): Problem {
  const near = nearest(id, ids)
  return {
    code: 'id-unknown',
    where: [kind, id],
    what: `The library has no ${kind} "${id}".`,
    why: 'The page reckons with what the library holds.',
    cure: near ? `Did you mean "${near}"?` : 'Choose one that the search finds.',
  }
}
