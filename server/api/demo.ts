import { z } from 'zod'
import { demoParts } from '../library/demo.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

/** The invented workshop to try the product with. */
export const demo: Resource = api => {
  api.get('/demo', { schema: { response: { 200: z.unknown(), ...refusals } } }, () => demoParts())
}
