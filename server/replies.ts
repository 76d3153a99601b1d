import type { FastifyReply, FastifyRequest } from 'fastify'
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { Problem } from '../core/problem/problem.ts'
import { drained } from './drained.ts'
import { type RefusalKind, refusalOf } from './refusal.ts'

const statusOf: Readonly<Record<RefusalKind, number>> = { 'bad-input': 400, 'no-answer': 422, 'not-found': 404, conflict: 409 }

export const problemSchema = z
  .object({ code: z.string(), where: z.array(z.string()), what: z.string(), why: z.string(), cure: z.string() })
  .meta({ id: 'Problem', description: 'One thing wrong: where, what, why it matters and how to mend it.' })

export const problemsSchema = z.object({ problems: z.array(problemSchema) }).meta({ id: 'Problems' })

/** Replies that every resource can give besides its own. */
export const refusals = {
  400: problemsSchema,
  403: problemsSchema,
  404: problemsSchema,
  409: problemsSchema,
  413: problemsSchema,
  422: problemsSchema,
  429: problemsSchema,
  500: problemsSchema,
}

/** The one place where whatever went wrong becomes a reply. */
export function replyToError(error: unknown, request: FastifyRequest, reply: FastifyReply): FastifyReply | Promise<FastifyReply> {
  const refusal = refusalOf(error)
  if (refusal !== null) return reply.status(statusOf[refusal.kind]).send({ problems: refusal.problems })
  if (hasZodFastifySchemaValidationErrors(error)) {
    const context = String((error as { validationContext?: string }).validationContext ?? 'request')
    return reply.status(400).send({
      problems: error.validation.map(issue => ({
        code: 'request-shape',
        where: [context, ...issue.instancePath.split('/').filter(Boolean)],
        what: `${issue.message ?? 'It is not as described'}.`.replace(/\.\.$/, '.'),
        why: 'What is not understood is refused, never passed over.',
        cure: 'Compare with /api/v1/openapi.json.',
      })),
    })
  }
  const status = (error as { statusCode?: number }).statusCode ?? 500
  if (status >= 500) request.log.error(error)
  const send = (): FastifyReply => reply.status(status).send({ problems: [problemOfStatus(status, error)] })
  return status === 413 ? drained(request.raw).then(send) : send()
}

function problemOfStatus(status: number, error: unknown): Problem {
  const message = error instanceof Error ? error.message : String(error)
  if (status === 413)
    return {
      code: 'too-large',
      where: ['request'],
      what: 'The request is larger than 20 MB.',
      why: 'The server keeps room for others.',
      cure: 'Split the file.',
    }
  if (status === 429)
    return {
      code: 'too-many',
      where: ['request'],
      what: 'Too many requests in one minute.',
      why: 'The server keeps room for others.',
      cure: 'Wait a minute and try again.',
    }
  if (status < 500)
    return {
      code: 'request',
      where: ['request'],
      what: `${message}.`.replace(/\.\.$/, '.'),
      why: 'The request could not be read.',
      cure: 'Compare with /api/v1/openapi.json.',
    }
  return {
    code: 'fault',
    where: ['server'],
    what: 'Something went wrong inside Waybench.',
    why: 'It is a fault of the program, not of what you typed, and nothing saved was changed.',
    cure: 'Try again; if it stays, keep the text of the server log and report it.',
  }
}

/** For an address under the API that does not exist. */
export const unknownAddress = (request: FastifyRequest, reply: FastifyReply): FastifyReply =>
  reply.status(404).send({
    problems: [
      {
        code: 'address-unknown',
        where: [request.url],
        what: 'There is nothing at this address.',
        why: 'The API is described by one document.',
        cure: 'See /api/v1/openapi.json.',
      },
    ],
  })
