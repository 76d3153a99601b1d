import { readdirSync, readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../../', import.meta.url))

/** Files below a folder of the project, as paths from its root with forward slashes. */
export function filesBelow(folder: string, ending: RegExp): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile() && ending.test(entry.name))
    .map(entry => posix.join(...join(entry.parentPath, entry.name).slice(root.length).split(/[\\/]/)))
    .sort()
}

export const textOf = (path: string): string => readFileSync(join(root, path), 'utf8')

/** What a source file imports, in the order written: static, type-only and dynamic imports, re-exports and workers' addresses. */
function specifiersOf(path: string): string[] {
  const patterns = [
    /^(?:import|export|\})[^'"\n]*\bfrom ['"]([^'"]+)['"]/gm,
    /^import ['"]([^'"]+)['"]/gm,
    /\bimport\(\s*['"]([^'"]+)['"]/g,
    /\bnew URL\(\s*['"]([^'"]+)['"], import\.meta\.url\)/g,
  ]
  const text = textOf(path)
  return patterns.flatMap(pattern => [...text.matchAll(pattern)].map(match => match[1]!))
}

/** Relative imports of a source file, as paths from the root. */
export const importsOf = (path: string): string[] =>
  specifiersOf(path)
    .filter(name => name.startsWith('.'))
    .map(name => posix.normalize(posix.join(posix.dirname(path), name.replace(/\?.*$/, ''))))

/** Packages and Node modules a source file imports. */
export const packagesOf = (path: string): string[] => specifiersOf(path).filter(name => !name.startsWith('.'))
