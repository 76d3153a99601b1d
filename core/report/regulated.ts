import type { HazardList, RegulatedHit } from '../hazards/hazard-list.ts'
import { citations } from '../library/figure-trust.ts'
import type { Marked } from '../library/mark.ts'
import type { Source } from '../library/source.ts'
import { trustOf } from '../library/trust.ts'
import { sentence } from './words.ts'

/** Marked § wherever it is bought or charged: a licence, a declaration or a report belongs to it. */
export const isRegulated = (hazards: HazardList, material: string): boolean =>
  hazards.regulated.some(hit => hit.material === material && hit.action !== 'note')

export const actionWords: Readonly<Record<RegulatedHit['action'], string>> = {
  stop: 'Stop',
  licence: 'Licence or declaration needed',
  reporting: 'Suspicious transactions are reported',
  note: 'Named in a list',
}

/** One hit as a sentence of law: list, category, reason, and who may not have it. */
export const lawText = (hit: RegulatedHit): string =>
  `${actionWords[hit.action]}: ${hit.list}${hit.category === '' ? '' : `, ${hit.category}`}. ${sentence(hit.reason)}${hit.barred ? ' A private person may not have it.' : ''} ${sentence(hit.legal)}`

/** All hits of one list under one action: the list, and the action, are then named once. */
export interface LawOfList {
  readonly list: string
  readonly action: string
  readonly barred: boolean
  readonly legal: string
  /** How sure the rows are, by their own sources. */
  readonly sure: Marked
  /** Materials under one category with one reason. */
  readonly rows: readonly { readonly materials: readonly string[]; readonly category: string; readonly reason: string }[]
}

/** The law by list, in the order of the hits; nothing that a hit says is lost, and nothing is said twice. */
export function lawByList(hits: readonly RegulatedHit[]): readonly LawOfList[] {
  const lists = new Map<string, { first: RegulatedHit; sources: Source[]; rows: Map<string, { hit: RegulatedHit; materials: string[] }> }>()
  for (const hit of hits) {
    const key = [hit.action, hit.list, hit.barred, hit.legal].join('|')
    const of = lists.get(key) ?? {
      first: hit,
      sources: [] as Source[],
      rows: new Map<string, { hit: RegulatedHit; materials: string[] }>(),
    }
    lists.set(key, of)
    of.sources.push(...hit.sources)
    const row = of.rows.get(`${hit.category}|${hit.reason}`) ?? { hit, materials: [] }
    of.rows.set(`${hit.category}|${hit.reason}`, row)
    if (!row.materials.includes(hit.material)) row.materials.push(hit.material)
  }
  return [...lists.values()].map(({ first, sources, rows }) => ({
    list: first.list,
    action: actionWords[first.action],
    barred: first.barred,
    legal: sentence(first.legal),
    sure: { mark: trustOf(sources), source: citations(sources, trustOf(sources)) },
    rows: [...rows.values()].map(({ hit, materials }) => ({ materials, category: hit.category, reason: sentence(hit.reason) })),
  }))
}
