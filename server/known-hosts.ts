import type { FastifyReply, FastifyRequest } from 'fastify'
import type { Problem } from '../core/problem/problem.ts'

/** Names of the machine itself, by which a browser on it reaches the server. */
const itself = ['localhost', '127.0.0.1', '[::1]']
/** Addresses that mean "every one of this machine" and are no name of it. */
const everywhere = ['0.0.0.0', '::', '[::]', '']
/** What only reads. */
const reading = ['GET', 'HEAD', 'OPTIONS']

/**
 * Refuses what a page of somebody else's makes a browser send. Such a page can have its own name point to this machine and then ask as if it
 * were the server's own page: the name it asks for gives it away. And what changes anything must come from the page that this server served.
 *
 * @param host    address that is listened on; a name or a single address is one that it may be asked by
 * @param knownAs further names, which whoever keeps the server gives
 */
export function onlyKnownHosts(host: string, knownAs: readonly string[]) {
  const names = new Set([...itself, ...[host, ...knownAs].filter(name => !everywhere.includes(name)).map(bracketed)])
  return async ({ headers, method }: FastifyRequest, reply: FastifyReply): Promise<FastifyReply | undefined> => {
    const asked = headers.host ?? ''
    if (!names.has(nameIn(asked))) return reply.status(403).send({ problems: [unknownHost(asked)] })
    const { origin } = headers
    const isForeign = origin !== undefined ? origin.replace(/^https?:\/\//, '') !== asked : headers['sec-fetch-site'] === 'cross-site'
    if (!reading.includes(method) && isForeign) return reply.status(403).send({ problems: [foreignPage(origin ?? 'another page')] })
    return undefined
  }
}

/** The name without its port, in small letters. */
const nameIn = (host: string): string => host.replace(/:\d*$/, '').toLowerCase()

/** An address of IP version 6 stands in brackets, as browsers write it. */
const bracketed = (name: string): string => (name.includes(':') && !name.startsWith('[') ? `[${name}]` : name).toLowerCase()

const unknownHost = (host: string): Problem => ({
  code: 'host-unknown',
  where: ['request', 'Host', host],
  what: `This server does not go by the name "${nameIn(host)}".`,
  why: 'A page elsewhere could else read and change what is kept here, by a name of its own that leads to this machine.',
  cure: 'Ask for it as localhost or 127.0.0.1; or have its keeper start it with --known-as and that name.',
})

const foreignPage = (origin: string): Problem => ({
  code: 'origin-unknown',
  where: ['request', 'Origin', origin],
  what: `${origin} may change nothing here.`,
  why: 'Only the page that this server itself serves, and programs that are no page, may write.',
  cure: 'Open the page of this server; or send the request from a program, without an Origin.',
})
