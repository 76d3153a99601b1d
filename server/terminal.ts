import { readFile, writeFile } from 'node:fs/promises'
import type { Terminal } from './commands/command.ts'
import { Refusal } from './refusal.ts'

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'it may not be read or written here',
  ENOTDIR: 'part of its path is no folder',
}

function fileFault(path: string, doing: 'read' | 'written', error: unknown): Refusal {
  const code = (error as NodeJS.ErrnoException).code ?? ''
  const cure = doing === 'read' ? 'Check the name and the folder you are in.' : 'Name another place.'
  const what = `${path} cannot be ${doing}: ${reasons[code] ?? code.toLowerCase()}.`
  return new Refusal('bad-input', [{ code: `file-not-${doing}`, where: [path], what, why: 'Nothing was changed.', cure }])
}

/** The terminal of this process. */
export function processTerminal(): Terminal {
  const now = new Date()
  const two = (n: number) => String(n).padStart(2, '0')
  return {
    out: text => void process.stdout.write(text),
    err: text => void process.stderr.write(text),
    readFile: async path => {
      try {
        return await readFile(path, 'utf8')
      } catch (error) {
        throw fileFault(path, 'read', error)
      }
    },
    writeFile: async (path, text) => {
      try {
        await writeFile(path, text)
      } catch (error) {
        throw fileFault(path, 'written', error)
      }
    },
    readInput: async () => {
      const parts: Buffer[] = []
      for await (const part of process.stdin) parts.push(part as Buffer)
      return Buffer.concat(parts).toString('utf8')
    },
    today: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`,
  }
}
