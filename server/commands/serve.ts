import { randomBytes } from 'node:crypto'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { networkOf } from '../../core/network/network.ts'
import { buildApp } from '../app.ts'
import { defaultConfig } from '../config.ts'
import { warmUp } from '../planning/warm-up.ts'
import { badOption, type Command } from './command.ts'
import { storeIn } from './data-folder.ts'
import { workshopFor } from './workshop-for.ts'

/** Longer than any answer but a search takes. */
const graceMs = 2000

export const serve: Command = {
  name: 'serve',
  summary: 'serves the page and the API',
  usage: '[--port N] [--host H [--known-as NAME]] [--data DIR]',
  options: {
    port: { type: 'string', value: 'N', help: `port (default ${defaultConfig.port}; 0 = any free one)` },
    host: { type: 'string', value: 'H', help: `address to listen on (default ${defaultConfig.host}: this machine alone)` },
    'known-as': {
      type: 'string',
      multiple: true,
      value: 'NAME',
      help: 'a name by which other machines ask for this one, where --host lets them: others are refused; repeatable',
    },
    data: { type: 'string', value: 'DIR', help: 'folder of the saved plans (default: data, beside the program)' },
  },
  async run(given, terminal) {
    const port = given.whole('port', 0, 65535, defaultConfig.port)
    const host = given.text('host') ?? defaultConfig.host
    const workshop = await workshopFor(given)
    // What a large library needs a moment for is done before anybody can be kept waiting by it.
    workshop.traits()
    networkOf(workshop.library)
    const store = storeIn(given.text('data') ?? defaultConfig.plansFolder)
    const pageFolder =
      defaultConfig.pageFolder !== null && existsSync(join(defaultConfig.pageFolder, 'index.html')) ? defaultConfig.pageFolder : null
    const app = await buildApp(
      { workshop, store, now: () => new Date().toISOString(), newId: () => randomBytes(9).toString('base64url') },
      { rateLimit: defaultConfig.rateLimit, pageFolder, host, knownAs: given.texts('known-as') },
      true,
    )
    const closed = new Promise<void>(resolve => {
      // Registered before the ready line is printed: a quick stop must still close the database.
      const stop = () => {
        // A connection that never asks for anything would keep the server open; what was being answered has been by then.
        setTimeout(() => app.server.closeAllConnections(), graceMs).unref()
        void app.close().then(() => resolve())
      }
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, stop)
    })
    app.addHook('onClose', () => store.close())
    try {
      await app.listen({ port, host })
    } catch (error) {
      await app.close()
      const code = (error as NodeJS.ErrnoException).code
      if (code === 'EADDRINUSE')
        throw badOption(
          '--port',
          `${port} is in use by another program.`,
          'Two programs cannot listen on one port.',
          'Stop the other one, or give --port with another number.',
        )
      if (code === 'EACCES' || code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
        throw badOption(
          '--host',
          `${host} with port ${port} cannot be listened on here (${code}).`,
          'The address must be one of this machine and the port free to you.',
          'Give another --host or --port.',
        )
      throw error
    }
    const address = app.server.address()
    const shown =
      address === null || typeof address === 'string'
        ? `${host}:${port}`
        : `${address.family === 'IPv6' ? `[${address.address}]` : address.address}:${address.port}`
    terminal.out(`Waybench is at http://${shown}${pageFolder === null ? ' (API only: the page is not built)' : ''}. Stop it with Ctrl+C.\n`)
    const stopWarmUp = warmUp(workshop)
    await closed
    stopWarmUp()
    return 0
  },
}
