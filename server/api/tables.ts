import { z } from 'zod'
import { tablesForPage } from '../../core/hazards/tables.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

/** The tables that the page needs to evaluate a plan by itself. */
export const tables: Resource = (api, { workshop }) => {
  api.get('/tables', { schema: { response: { 200: z.unknown(), ...refusals } } }, (_request, reply) =>
    reply.header('cache-control', 'no-cache').send(tablesForPage(workshop.tables)),
  )
}
