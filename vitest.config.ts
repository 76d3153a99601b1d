import { defineConfig } from 'vitest/config'

export default defineConfig({
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/bench/**'],
    // By default one core is left free, which on a machine with two is half of it.
    maxWorkers: '100%',
    // Limits end what hangs; they measure nothing, so that a slow or busy machine passes as a quick one does.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 90_000, interval: 100 } },
    reporters: ['default', './tests/support/closing-line.ts'],
  },
})
