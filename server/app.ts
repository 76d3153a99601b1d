import helmet from '@fastify/helmet'
import rateLimit from '@fastify/rate-limit'
import fastifyStatic from '@fastify/static'
import swagger from '@fastify/swagger'
import Fastify, { type FastifyInstance } from 'fastify'
import {
  jsonSchemaTransform,
  jsonSchemaTransformObject,
  serializerCompiler,
  validatorCompiler,
  type ZodTypeProvider,
} from 'fastify-type-provider-zod'
import { cheapest } from './api/cheapest.ts'
import { demo } from './api/demo.ts'
import { evaluations } from './api/evaluations.ts'
import { library } from './api/library.ts'
import { materials } from './api/materials.ts'
import { newMaterials } from './api/new-materials.ts'
import { newStructuresResource } from './api/new-structures.ts'
import { openApi } from './api/open-api.ts'
import { ownLibraryResource } from './api/own-library.ts'
import { plans } from './api/plans.ts'
import { reach } from './api/reach.ts'
import { readings } from './api/readings.ts'
import { routes } from './api/routes.ts'
import { slices } from './api/slices.ts'
import { stock } from './api/stock.ts'
import { tables } from './api/tables.ts'
import { transformations } from './api/transformations.ts'
import { weakSpotsResource } from './api/weak-spots.ts'
import type { Backing, Foundation } from './backing.ts'
import type { ServerConfig } from './config.ts'
import { jsonBody } from './json-body.ts'
import { onlyKnownHosts } from './known-hosts.ts'
import { ownLibrary } from './library/own-library.ts'
import { replyToError, unknownAddress } from './replies.ts'

export type App = FastifyInstance

/**
 * The server, built but not listening, so that tests can inject requests.
 *
 * The page and the API share one origin; helmet's policy is written out because its default forbids WebAssembly, which the solver needs,
 * and would force https on a bench's own network.
 */
export async function buildApp(
  foundation: Foundation,
  config: Pick<ServerConfig, 'rateLimit' | 'pageFolder'> & Partial<Pick<ServerConfig, 'host' | 'knownAs'>>,
  logger: boolean,
): Promise<App> {
  const own = ownLibrary(foundation.workshop, foundation.store.own)
  const backing: Backing = { ...foundation, workshop: own.workshop, own }
  const app = Fastify({
    logger: logger ? { level: 'warn' } : false,
    bodyLimit: 20 * 1024 * 1024,
    routerOptions: { ignoreTrailingSlash: true, maxParamLength: 200 },
    frameworkErrors: replyToError,
  })
  app.addHook('onRequest', onlyKnownHosts(config.host ?? '127.0.0.1', config.knownAs ?? []))
  app.setValidatorCompiler(validatorCompiler)
  app.setSerializerCompiler(serializerCompiler)
  app.setErrorHandler(replyToError)
  app.addContentTypeParser('application/json', { parseAs: 'string' }, async (_request: unknown, body: string | Buffer) =>
    jsonBody(String(body)),
  )
  app.setNotFoundHandler(unknownAddress)
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: ["'self'", 'data:'],
        connectSrc: ["'self'"],
        workerSrc: ["'self'", 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'self'"],
        formAction: ["'self'"],
        frameAncestors: ["'self'"],
      },
    },
    hsts: false,
    crossOriginOpenerPolicy: false,
    crossOriginEmbedderPolicy: false,
    originAgentCluster: false,
  })
  if (config.rateLimit !== null) await app.register(rateLimit, { max: config.rateLimit, timeWindow: '1 minute' })
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Waybench',
        version: '1',
        description:
          'Routes from an intermediate in hand, their amounts, shopping, hazards and days. Quantities are estimates; read the safety data sheets.',
      },
    },
    transform: jsonSchemaTransform,
    transformObject: jsonSchemaTransformObject,
  })
  await app.register(
    async api => {
      const typed = api.withTypeProvider<ZodTypeProvider>()
      const resources = [
        materials,
        newMaterials,
        newStructuresResource,
        readings,
        ownLibraryResource,
        transformations,
        library,
        weakSpotsResource,
        reach,
        routes,
        slices,
        tables,
        demo,
      ]
      for (const resource of [...resources, cheapest, stock, evaluations, plans]) await resource(typed, backing)
      openApi(typed)
      api.setNotFoundHandler(unknownAddress)
    },
    { prefix: '/api/v1' },
  )
  if (config.pageFolder !== null) {
    await app.register(fastifyStatic, {
      root: config.pageFolder,
      preCompressed: true,
      setHeaders: (reply, path) => {
        // Built files carry a hash in their name; the page that names them must be asked for each time.
        reply.setHeader('cache-control', /[\\/]assets[\\/]/.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache')
      },
    })
  }
  return app
}
