import type { RegulatedList } from '../hazards/tables.ts'
import type { Traits } from '../hazards/traits.ts'
import type { Library } from '../library/library.ts'
import { isBuyable } from '../library/material.ts'
import { compoundIn } from '../library/reference-charge.ts'
import { provenAxes } from '../network/objectives.ts'
import { type Axis, axes } from '../plan/choosing.ts'
import { type AskedName, askedAs } from '../problem/asked-as.ts'
import { nearest } from '../problem/nearest.ts'
import { bad, type Checked, good, type Problem, problemOf } from '../problem/problem.ts'
import { isCount, notACount } from './not-a-count.ts'

export { type Axis, axes }
export const isProven = (axis: Axis): axis is (typeof provenAxes)[number] => (provenAxes as readonly string[]).includes(axis)

/** What narrows and orders the routes; the same for `routes` and `plan`. Ids as typed. */
export interface ChoosingOptions {
  readonly by?: Axis
  /** Materials, in any role. */
  readonly avoid?: readonly string[]
  /** Transformations. */
  readonly avoidStep?: readonly string[]
  /** Compounds that every route makes or starts from. */
  readonly mustPass?: readonly string[]
  /** Hazard statements, such as H350. */
  readonly avoidCode?: readonly string[]
  /** Regulated lists, by a part of their name. */
  readonly avoidList?: readonly string[]
  readonly ownedOnly?: boolean
  /** Only steps whose charge and yield were seen in a source or run at the own bench. */
  readonly seenOnly?: boolean
  readonly maxSteps?: number
  /** Compounds to make rather than buy; `all` lists every route. */
  readonly make?: readonly string[]
}

export interface RoutesQuery extends ChoosingOptions {
  readonly from: string
  readonly to: string
  /** How many routes to list; default 10. */
  readonly count?: number
  /** Only routes that no other beats on these axes at once; two to four. */
  readonly unbeaten?: readonly Axis[]
  /** A filter: only routes at least so many steps different from every one listed before; default 1, which lists all. */
  readonly apart?: number
  /** Has the integer solver prove the best where the search over distinct steps could not. */
  readonly prove?: boolean
}

/** A query whose every id is known: compounds instead of what they are bought as. */
export interface ReadQuery {
  readonly start: string
  readonly target: string
  readonly by: Axis
  readonly mustPass: readonly string[]
  readonly make: readonly string[]
  readonly makeAll: boolean
}

const whyId = 'Routes run between materials of the library, and nothing is guessed.'

/**
 * Every id of a query looked up; all problems at once.
 *
 * @param lists the lists that are loaded: one that names no material of this library may be avoided all the same
 */
export function readQuery(
  library: Library,
  traits: ReadonlyMap<string, Traits>,
  query: RoutesQuery,
  lists: readonly RegulatedList[] = [],
): Checked<ReadQuery> {
  const problems: Problem[] = []
  const start = startOf(library, query.from, problems)
  const target = targetOf(library, query.to, problems)
  const makeAll = query.make?.includes('all') ?? false
  const make = (query.make ?? []).filter(id => id !== 'all').flatMap(id => compoundOf(library, 'make', id, problems))
  for (const id of make) {
    if (!library.makers.has(id))
      problems.push(
        problemOf(
          'never-made',
          [askedAs('make'), id],
          `No transformation of the library makes ${id}.`,
          'It can only be bought.',
          'Leave it out, or add a transformation that makes it.',
        ),
      )
  }
  const mustPass = (query.mustPass ?? []).flatMap(id => compoundOf(library, 'mustPass', id, problems))
  for (const id of query.avoid ?? []) materialIn(library, 'avoid', id, problems)
  for (const id of query.avoidStep ?? []) {
    if (!library.transformations.has(id)) problems.push(unknownId('transformation', 'avoidStep', id, library.transformations.keys()))
  }
  for (const code of query.avoidCode ?? []) {
    if (!/^(EUH|H)\d{3}[A-Za-z]*$/.test(code))
      problems.push(
        problemOf(
          'code-unreadable',
          [askedAs('avoidCode'), code],
          `"${code}" is no hazard statement.`,
          'Routes are filtered by the codes of their materials.',
          'Give a code such as H350; it covers H350i as well.',
        ),
      )
  }
  for (const name of query.avoidList ?? []) {
    const known = new Set([...listNames(traits), ...lists.map(list => list.fullName)])
    if (![...known].some(list => matchesList(list, name)))
      problems.push(
        problemOf(
          'list-unknown',
          [askedAs('avoidList'), name],
          `No list is called "${name}".`,
          'A misspelt list would filter nothing.',
          known.size > 0 ? `Give a part of one of these: ${[...known].sort().join('; ')}.` : 'No list is loaded.',
        ),
      )
  }
  for (const name of ['maxSteps', 'count', 'apart'] as const) {
    const value = query[name]
    if (value !== undefined && !isCount(value)) problems.push(notACount(name, value))
  }
  const compared = query.unbeaten ?? []
  if (compared.length > 0 && (compared.length < 2 || compared.length > 4 || new Set(compared).size < compared.length))
    problems.push(
      problemOf(
        'axes-to-compare',
        [askedAs('unbeaten'), compared.join(',')],
        `${compared.length === 1 ? 'One axis is' : 'These axes are'} not two to four different ones.`,
        'On one axis the first route is the best; on many nearly every route is unbeaten on some.',
        'Name two to four, such as start,cost.',
      ),
    )
  if (start !== null && start === target)
    problems.push(
      problemOf(
        'start-is-target',
        [askedAs('to'), query.to],
        'Start and target are the same compound.',
        'A route has at least one step.',
        `Name a target that is made from the start; ${askedAs('reach')} lists them.`,
      ),
    )
  if (problems.length > 0 || start === null || target === null) return bad(problems)
  return good({ start, target, by: query.by ?? 'start', mustPass, make, makeAll })
}

/** The compound of a start; null with a problem where it can be none. */
export function startOf(library: Library, id: string, problems: Problem[]): string | null {
  const compound = compoundOf(library, 'from', id, problems)[0]
  if (compound === undefined) return null
  if (compound === 'water' || compound === 'oxygen') {
    problems.push(
      problemOf(
        'start-is-free',
        [askedAs('from'), id],
        `${id} is no start.`,
        'Water and the oxygen of the air are at every bench; a plan begins with what is scarce.',
        'Name the material whose amount settles how much is made.',
      ),
    )
    return null
  }
  if (!library.users.has(compound)) {
    const contained = [...library.materials.values()].filter(m => m.kind === 'mixture' && m.contains?.compound === compound).length
    problems.push(
      problemOf(
        'start-unused',
        [askedAs('from'), id],
        `No transformation of the library takes ${compound} as a reactant.`,
        contained > 0 ? 'It is charged at most as a solvent, catalyst or wash, which is bought.' : 'Nothing can be made from it here.',
        'Name another start, or add a transformation that uses it.',
      ),
    )
    return null
  }
  return compound
}

function targetOf(library: Library, id: string, problems: Problem[]): string | null {
  const compound = compoundOf(library, 'to', id, problems)[0]
  if (compound === undefined) return null
  if (library.makers.has(compound)) return compound
  const material = library.materials.get(compound)
  const asBy = [...library.transformations.values()].find(t => t.products.some(p => p.compound === compound))
  problems.push(
    problemOf(
      'target-never-made',
      [askedAs('to'), id],
      `No transformation of the library makes ${compound}.`,
      asBy
        ? `It comes only as a by-product of ${asBy.id}, which goes to the shelf of a plan.`
        : material && isBuyable(material)
          ? 'It can only be bought.'
          : 'Routes end in the main product of a transformation.',
      'Name another target, or add a transformation that makes it.',
    ),
  )
  return null
}

/** The compound a material is or contains, as a list of one; empty with a problem where the library has none. */
function compoundOf(library: Library, name: AskedName, id: string, problems: Problem[]): string[] {
  const material = materialIn(library, name, id, problems)
  if (material === null) return []
  const compound = compoundIn(material)
  if (compound !== null) return [compound]
  problems.push(
    problemOf('no-compound', [askedAs(name), id], `${id} is a mixture without a compound that counts.`, whyId, 'Name the compound itself.'),
  )
  return []
}

function materialIn(library: Library, name: AskedName, id: string, problems: Problem[]) {
  const material = library.materials.get(id)
  if (material) return material
  const typed = id.toLowerCase()
  const named = [...library.materials.values()].find(
    m => m.name.toLowerCase() === typed || m.synonyms?.some(s => s.toLowerCase() === typed),
  )
  problems.push(
    named
      ? problemOf('id-unknown', [askedAs(name), id], `"${id}" is a name, not an id.`, whyId, `Write "${named.id}".`)
      : unknownId('material', name, id, library.materials.keys()),
  )
  return null
}

function unknownId(kind: string, name: AskedName, id: string, known: Iterable<string>): Problem {
  const meant = nearest(id, known)
  return problemOf(
    'id-unknown',
    [askedAs(name), id],
    `The library has no ${kind} "${id}".`,
    whyId,
    meant === null ? `Look the id up among the library's ${kind}s.` : `Did you mean "${meant}"?`,
  )
}

const listNames = (traits: ReadonlyMap<string, Traits>): Set<string> =>
  new Set([...traits.values()].flatMap(t => t.regulated.map(r => r.list)))

/** Does a part of the name, whatever its case and punctuation, name this list? */
export const matchesList = (list: string, name: string): boolean => plain(list).includes(plain(name))

const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]+/g, '')
