import type { Material } from '../library/material.ts'
import type { Source } from '../library/source.ts'
import { bad, type Checked, good } from '../problem/problem.ts'
import { comparable } from './listed-names.ts'
import type { RowOf } from './table-rows.ts'
import { readTableRows, type TableText } from './tables.ts'

export type HazardRecord = RowOf<'hazardRecord'>

/** Hazard data of bench materials by CAS number and by name, for materials that somebody enters. */
export interface HazardRecords {
  /** The record of a material; by CAS number where it has one that is known, else by name or synonym. Null where none is. */
  readonly of: (material: Pick<Material, 'name' | 'synonyms' | 'cas' | 'kind'>) => HazardRecord | null
  readonly count: number
}

/**
 * Reads the collections of hazard records.
 *
 * A CAS number under which several records differ (an acid and its dilutions), and that of a mixture, tell nothing by themselves: then the
 * name decides, and where it does not, there is no record, since the hazards of a solution are not those of the pure compound.
 */
export function loadHazardRecords(files: readonly TableText[]): Checked<HazardRecords> {
  const read = readTableRows(files)
  if (!read.ok) return bad(read.problems)
  const records = read.value.filter((row): row is HazardRecord => row.kind === 'hazardRecord')
  const byCas = new Map<string, HazardRecord[]>()
  const byName = new Map<string, HazardRecord>()
  for (const record of records) {
    if (record.cas !== undefined) byCas.set(record.cas, [...(byCas.get(record.cas) ?? []), record])
    for (const name of [record.id, record.name]) if (!byName.has(comparable(name))) byName.set(comparable(name), record)
  }
  return good({
    count: records.length,
    of: ({ name, synonyms = [], cas, kind }) => {
      const named = [name, ...synonyms].map(one => byName.get(comparable(one))).find(record => record !== undefined) ?? null
      if (cas === undefined) return named
      const numbered = byCas.get(cas) ?? []
      const codes = new Set(numbered.map(record => [...record.hazards.codes].sort().join()))
      if (kind !== 'mixture' && codes.size === 1) return numbered[0]!
      // A name that belongs to another CAS number is somebody else's.
      return named && (named.cas === cas || named.cas === undefined) ? named : null
    },
  })
}

/** What a material takes over from its record, with the sources of each field; what it states itself stays. */
export function withRecord(material: Material, record: HazardRecord): Material {
  const taken: string[] = []
  const take = <K extends keyof Material>(key: K, field: string, value: Material[K] | undefined): Partial<Material> => {
    if (material[key] !== undefined || value === undefined) return {}
    taken.push(field)
    return { [key]: value } as Partial<Material>
  }
  const fields = {
    ...take('hazards', 'hazards', record.hazards),
    ...take('flashC', 'flash', record.flashC),
    ...take('reactivityGroups', 'groups', record.reactivityGroups),
    ...take('storageGroup', 'groups', record.storageGroup),
    ...take('wasteStream', 'groups', record.wasteStream),
    ...take('peroxideClass', 'peroxide', record.peroxideClass),
    ...take('exposureLimit', 'exposure', record.exposureLimit as Material['exposureLimit']),
  }
  const sources: readonly Source[] = record.sources.filter(source => source.for === undefined || taken.includes(source.for))
  return { ...material, ...fields, sources: [...material.sources, ...sources] }
}
