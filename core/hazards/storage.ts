import { type Library, materialOf } from '../library/library.ts'
import { freeCompounds } from '../library/reference-charge.ts'
import type { RouteMaterial } from '../route/materials.ts'
import type { Meeting } from './hazard-list.ts'
import { daysKept, daysTogether, type Timing } from './kept.ts'
import { isOnlyEvolved } from './known.ts'
import { type HazardTables, storagePairKey } from './tables.ts'

/**
 * Which cabinet groups may not stand together, for everything bought or made; gases that a step gives off are not stored. Materials whose
 * group is not known are told apart: they stand by themselves until their data sheet is read.
 *
 * @param timing what the calendar tells; each finding then says for how many days
 */
export function storageMeetings(
  library: Library,
  tables: HazardTables,
  materials: readonly RouteMaterial[],
  timing: Timing | null = null,
): readonly Meeting[] {
  const byGroup = new Map<string, string[]>()
  for (const { material: id, as } of materials) {
    const material = materialOf(library, id)
    if (freeCompounds.has(id) || isOnlyEvolved(material, as)) continue
    const group = material.storageGroup ?? ''
    const there = byGroup.get(group)
    if (there) there.push(id)
    else byGroup.set(group, [id])
  }
  const unknown = byGroup.get('') ?? []
  byGroup.delete('')
  const groups = [...byGroup.keys()].sort()
  const meetings = groups.flatMap((a, index) => groups.slice(index).flatMap(b => meetingOf(tables, a, b, byGroup, timing)))
  return unknown.length === 0 ? meetings : [...meetings, notPlaced(unknown, timing)]
}

function meetingOf(
  tables: HazardTables,
  a: string,
  b: string,
  byGroup: ReadonlyMap<string, readonly string[]>,
  timing: Timing | null,
): readonly Meeting[] {
  const pair = tables.storagePairs[storagePairKey(a, b)]
  const here = byGroup.get(a) ?? []
  if (!pair || pair.share === 'same-cabinet' || (a === b && here.length < 2)) return []
  const name = (group: string): string => tables.storageGroups[group]?.name ?? group
  const apart = pair.share === 'separate-cabinet'
  return [
    {
      where: 'storage',
      place: a === b ? a : `${a} with ${b}`,
      severity: apart ? 'care' : 'note',
      materials: a === b ? here : [...here, ...(byGroup.get(b) ?? [])],
      title: a === b ? name(a) : `${name(a)} beside ${lower(name(b))}`,
      consequence: pair.why === undefined || pair.why.startsWith('default') ? 'Leaks and vapours would meet.' : sentence(pair.why),
      do: apart ? 'Keep them in separate cabinets.' : 'One cabinet is enough, each group in its own tray.',
      intended: false,
      conditions: [],
      sources: pair.sources,
      days: daysTogether(timing, here, byGroup.get(b) ?? []),
    },
  ]
}

const notPlaced = (materials: readonly string[], timing: Timing | null): Meeting => ({
  where: 'storage',
  place: 'not known',
  severity: 'care',
  materials,
  title: 'No storage group known',
  consequence: 'What they may stand beside is not known.',
  do: 'Keep each by itself until its data sheet is read.',
  intended: false,
  conditions: [],
  sources: [],
  days: longest(materials.map(id => daysKept(timing, id))),
})

/** Null where one of them is not known: it may stand there the longest. */
const longest = (days: readonly (number | null)[]): number | null => (days.includes(null) ? null : Math.max(...days.map(one => one ?? 0)))

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)
const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}${text.endsWith('.') ? '' : '.'}`
