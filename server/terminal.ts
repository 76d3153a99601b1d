import type { Terminal } from './commands/command.ts'
import { readText, textOf, writeText } from './files.ts'

/** The terminal of this process. */
export function processTerminal(): Terminal {
  const now = new Date()
  const two = (n: number) => String(n).padStart(2, '0')
  return {
    out: text => void process.stdout.write(text),
    err: text => void process.stderr.write(text),
    readFile: async path => readText(path),
    writeFile: async (path, text) => writeText(path, text),
    readInput: async () => {
      const parts: Buffer[] = []
      for await (const part of process.stdin) parts.push(part as Buffer)
      return textOf('standard input', Buffer.concat(parts))
    },
    onInterrupt: told => {
      process.once('SIGINT', told)
      return () => void process.removeListener('SIGINT', told)
    },
    today: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`,
  }
}
