import { defineConfig } from 'vitest/config'

export default defineConfig({
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/bench/**'],
    // By default one core is left free, which on a machine with two is half of it.
    maxWorkers: '100%',
    testTimeout: 60_000,
    hookTimeout: 120_000,
    reporters: ['default', './tests/support/closing-line.ts'],
  },
})
