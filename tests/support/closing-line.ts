import type { Reporter, TestModule } from 'vitest/node'

/** Ends the run with one plain line that scripts can read; a file that fails to load counts as a failed test. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    let passed = 0
    let failed = 0
    let skipped = 0
    for (const module of modules) {
      if (module.errors().length > 0) failed++
      for (const test of module.children.allTests()) {
        const { state } = test.result()
        if (state === 'passed') passed++
        else if (state === 'failed') failed++
        else skipped++
      }
    }
    process.stdout.write(`\n${passed} passed, ${failed} failed, ${skipped} skipped\n`)
  }
}
