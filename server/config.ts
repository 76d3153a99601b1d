import { dirname, join } from 'node:path'
import { dataFolder } from './library/bundled.ts'

/** The folder of the project, in a checkout and in a build alike. */
export const projectRoot: string = dirname(dataFolder())

export interface ServerConfig {
  readonly host: string
  readonly port: number
  /** Names by which it may be asked, beside those of the machine itself and `host`. */
  readonly knownAs: readonly string[]
  /** Folder of the saved plans, or `:memory:`. */
  readonly plansFolder: string
  /** Requests a minute from one address; null = no limit. */
  readonly rateLimit: number | null
  /** Built page; null = none is served. */
  readonly pageFolder: string | null
}

export const defaultConfig: ServerConfig = {
  host: '127.0.0.1',
  port: 4780,
  knownAs: [],
  plansFolder: join(projectRoot, 'data'),
  rateLimit: 1200,
  pageFolder: join(projectRoot, 'dist', 'web'),
}
