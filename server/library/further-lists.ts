import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { Toolkit } from '../../core/chemistry/structure.ts'
import { listStructureProblems } from '../../core/hazards/list-structures.ts'
import { type HazardTables, loadHazardTables, readTableRows, type TableText } from '../../core/hazards/tables.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { readText } from '../files.ts'
import { Refusal } from '../refusal.ts'
import { bundledTables } from './bundled.ts'

/** Kinds of row that a further list may hold: it adds to what is screened, and takes nothing away. */
const listKinds: ReadonlySet<string> = new Set(['regulatedList', 'regulatedEntry', 'structureAlert', 'regulatedRule'])

/** Files that the names stand for; a folder stands for every .json file in it, in order of name. */
function filesOf(names: readonly string[]): readonly TableText[] {
  const problems: Problem[] = []
  const files = names.flatMap((name): TableText[] => {
    if (!existsSync(name)) {
      problems.push({
        code: 'file-unreadable',
        where: ['command line', '--lists', name],
        what: `There is no such file or folder: ${name}.`,
        why: 'Without its lists a plan would be screened against less than its keeper asked for.',
        cure: 'Check the path.',
      })
      return []
    }
    const paths = statSync(name).isDirectory()
      ? readdirSync(name)
          .filter(file => file.endsWith('.json'))
          .sort()
          .map(file => join(name, file))
      : [name]
    return paths.map(path => ({ name: path, text: readText(path) }))
  })
  if (problems.length > 0) throw new Refusal('bad-input', problems)
  return files
}

/**
 * The bundled tables with further regulated lists beside them.
 *
 * @param names  files in the format of the bundled tables, or folders of such files
 * @throws Refusal with every fault of every file: a list that is not read whole is not read at all
 */
export function tablesWithLists(names: readonly string[], toolkit: Toolkit): HazardTables {
  const files = filesOf(names)
  const read = files.map(file => ({ file, rows: readTableRows([file]) }))
  const problems = read.flatMap(({ file, rows }) => {
    if (!rows.ok) return rows.problems
    const other = rows.value.filter(row => !listKinds.has(row.kind)).map(row => otherKind(file.name, row.kind))
    return [...new Map(other.map(problem => [problem.what, problem])).values(), ...listStructureProblems(file.name, rows.value, toolkit)]
  })
  if (problems.length > 0) throw new Refusal('bad-input', problems)
  const tables = loadHazardTables([...bundledTables(), ...files])
  if (tables.ok) return tables.value
  if (files.length > 0) throw new Refusal('bad-input', tables.problems)
  throw new Error(`The bundled tables break their own rules: ${tables.problems.map(p => p.what).join(' ')}`)
}

const otherKind = (name: string, kind: string): Problem => ({
  code: 'list-kind',
  where: [name, kind],
  what: `Rows of kind ${kind} do not belong in a regulated list.`,
  why: 'A further list adds substances to be screened for; labels and rules of reaction are part of the program.',
  cure: `Keep rows of kind ${[...listKinds].join(', ')} only.`,
})
