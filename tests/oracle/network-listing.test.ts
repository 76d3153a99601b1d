import { describe, expect, it } from 'vitest'
import { GainingCircle } from '../../core/network/routes.ts'
import { differences, searched } from '../support/networks/ask.ts'
import { listRoutes } from '../support/networks/listing.ts'
import { smallNetwork } from '../support/networks/small.ts'

/**
 * The search against the definition: every way of giving each compound one maker or none is tried, and what is a route by definition is kept.
 * The listing shares no code with the search. WAYBENCH_FUZZ sets the number of networks.
 */
const networks = Number(process.env.WAYBENCH_FUZZ ?? 10_000)
const patiences = [0, 3, 50, Number.POSITIVE_INFINITY]

describe.each(['sum', 'max', 'distinct'] as const)('all routes of %s networks, in order', form => {
  it.each(['default', 'all'] as const)('%s', { timeout: 3_600_000 }, mode => {
    let routes = 0
    let circles = 0
    for (let seed = 1; seed <= networks; seed++) {
      const small = smallNetwork(seed, form, seed % 3 === 0)
      const listed = listRoutes(small.network, small.weights, { ...small, mode })
      if (small.start === small.target) continue
      try {
        const wrong = differences(searched(small, { mode }, { patience: patiences[seed % 4]! }), listed)
        if (wrong !== '') expect.fail(`seed ${seed}: ${wrong}`)
        routes += listed.length
      } catch (error) {
        if (!(error instanceof GainingCircle)) throw error
        circles++
      }
    }
    // A test that compares nothing proves nothing.
    expect(routes).toBeGreaterThan(networks / 2)
    expect(circles).toBeLessThan(networks / 100)
  })
})
