import { runCommand } from '../../server/cli.ts'
import type { Terminal } from '../../server/commands/command.ts'
import { Refusal } from '../../server/refusal.ts'

/**
 * One command line, run in this process on files in memory.
 *
 * @param interruptedAt what it must have told on its error line for the user to interrupt it
 */
export async function waybench(words: readonly string[], files: Map<string, string> = new Map(), input = '', interruptedAt?: RegExp) {
  let out = ''
  let err = ''
  let interrupt: (() => void) | null = null
  const terminal: Terminal = {
    out: text => {
      out += text
    },
    err: text => {
      err += text
      if (interrupt !== null && interruptedAt?.test(err)) setImmediate(interrupt)
    },
    readFile: async path => {
      const text = files.get(path)
      if (text !== undefined) return text
      throw new Refusal('bad-input', [
        {
          code: 'file-not-read',
          where: [path],
          what: `${path} cannot be read: there is no such file.`,
          why: 'Nothing was changed.',
          cure: 'Check the name.',
        },
      ])
    },
    writeFile: async (path, text) => {
      files.set(path, text)
    },
    readInput: async () => input,
    onInterrupt: told => {
      interrupt = told
      return () => {
        interrupt = null
      }
    },
    today: '2026-12-03',
  }
  const code = await runCommand(words, terminal)
  return { code, out, err, files }
}

/** The same with `--json`, read. */
export async function waybenchJson(words: readonly string[], files?: Map<string, string>) {
  const run = await waybench([...words, '--json'], files)
  return {
    ...run,
    json: run.out === '' ? null : JSON.parse(run.out),
    problems: run.err.startsWith('{') ? JSON.parse(run.err).problems : null,
  }
}
