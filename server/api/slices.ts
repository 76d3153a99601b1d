import { z } from 'zod'
import { beneathOf } from '../../core/library/beneath.ts'
import { libraryFileSchema } from '../../core/library/library.ts'
import { libraryHash } from '../../core/plan/file.ts'
import { sliceOf } from '../../core/plan/slice.ts'
import { nearest } from '../../core/problem/nearest.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { withCarried } from '../library/with-carried.ts'
import { depictionsOf } from '../planning/drawings.ts'
import { handedOut } from '../planning/handed-out.ts'
import { stopsInStep } from '../planning/slice-screen.ts'
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

/**
 * The part of the library that some routes use, with all that the page needs to reckon and draw by itself: of what is asked for, what there
 * is; `problems` name the rest, and the steps that a list ends planning with, which come without how they are done. `brought` and
 * `broughtMaterials` are what is of `carried` alone, `beneath` the yields that own records stand in place of, `beneathMaterials` what own
 * materials say otherwise, in words.
 */
export const slices: Resource = (api, { workshop, own }) => {
  api.post('/slice', { schema: { body: bodySchema, response: { 200: z.unknown(), ...refusals } } }, request => {
    const { routes, materials, carried } = request.body
    const { shop, refused } = withCarried(workshop, carried)
    const { library } = shop
    const steps = [...new Set(routes.flat())]
    const stopped = steps.flatMap(id => {
      const step = library.transformations.get(id)
      return step === undefined ? [] : stopsInStep(shop, step).map(stop => ({ ...stop, where: ['transformation', id] }))
    })
    const problems = [
      ...refused,
      ...stopped,
      ...steps.filter(id => !library.transformations.has(id)).map(id => unknown('transformation', id, library.transformations.keys())),
      ...materials.filter(id => !library.materials.has(id)).map(id => unknown('material', id, library.materials.keys())),
    ]
    const slice = sliceOf(library, steps, materials)
    const traits = shop.traits()
    const beneath = beneathOf(slice, own.beneath.library)
    return {
      library: handedOut(slice, traits),
      hash: libraryHash(library),
      traits: Object.fromEntries([...slice.materials.keys()].flatMap(id => (traits.has(id) ? [[id, traits.get(id)]] : []))),
      drawings: depictionsOf(slice),
      problems,
      brought: [...slice.transformations.keys()].filter(id => !workshop.library.transformations.has(id)),
      broughtMaterials: [...slice.materials.keys()].filter(id => !workshop.library.materials.has(id)),
      beneath: Object.fromEntries(beneath.yields),
      beneathMaterials: Object.fromEntries(beneath.materials),
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
