import type { Toolkit } from '../../core/chemistry/structure.ts'
import type { Library } from '../../core/library/library.ts'
import { type LibraryText, loadLibrary } from '../../core/library/load.ts'
import { bad, type Checked, good, type Problem } from '../../core/problem/problem.ts'
import { readText } from '../files.ts'
import { Refusal } from '../refusal.ts'
import { bundled, bundledFiles, bundledTables, bundledTitle, keysOf } from './bundled.ts'

/**
 * The library that the options name: files by path, merged in any order; the word `bundled` stands for the one that comes with the program.
 *
 * @param names  values of `--library`; none = the bundled library alone
 * @param toolkit  where handed in, formulas are held against structures, which takes longer: `waybench check` does
 */
export function openLibrary(names: readonly string[], toolkit?: Toolkit): Checked<Library> {
  if (toolkit === undefined && names.every(name => name === 'bundled')) return good(bundled().library, bundled().warnings)
  const problems: Problem[] = []
  const files: LibraryText[] = []
  for (const name of names.length > 0 ? new Set(names) : ['bundled']) {
    if (name === 'bundled') files.push(...bundledFiles())
    else {
      const text = readOrProblem(name)
      if (typeof text === 'string') files.push({ name, text })
      else problems.push(text)
    }
  }
  const loaded = loadLibrary(files, {
    tables: keysOf(bundledTables()),
    ...(names.length === 0 || names.includes('bundled') ? { title: bundledTitle } : {}),
    ...(toolkit && { toolkit }),
  })
  if (problems.length === 0) return loaded
  return bad([...problems, ...(loaded.ok ? [] : loaded.problems)])
}

function readOrProblem(path: string): string | Problem {
  try {
    return readText(path)
  } catch (error) {
    const problem = error instanceof Refusal ? error.problems[0] : undefined
    if (problem === undefined) throw error
    return {
      ...problem,
      code: 'file-unreadable',
      why: 'A library is read from the files that are named.',
      cure: 'Check the path; "bundled" without a path names the library that comes with the program.',
    }
  }
}
