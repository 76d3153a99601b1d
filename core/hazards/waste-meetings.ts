import type { Library } from '../library/library.ts'
import type { Meeting, WasteLine } from './hazard-list.ts'
import { asQuestion, type Present, presentAs, waysToFire } from './present.ts'
import type { HazardTables } from './tables.ts'
import type { Traits } from './traits.ts'

/** What a consequence code of the matrix weighs. Own grading: fire, explosion and poison gas never; heat, flammable gas and polymerisation with care. */
const weight: Readonly<Record<string, Meeting['severity']>> = {
  E: 'never',
  F: 'never',
  GT: 'never',
  X: 'never',
  H: 'care',
  GF: 'care',
  P: 'care',
  U: 'care',
  S: 'note',
  G: 'note',
}
const severityOrder: readonly Meeting['severity'][] = ['never', 'care', 'note']

/**
 * What may not come together in a waste container over the whole plan: the incident rules that apply to waste, and the reactivity matrix
 * between different residues. Within one residue the matrix is silent: what stands in it has already met in its step.
 */
export function wasteMeetings(
  library: Library,
  tables: HazardTables,
  traits: ReadonlyMap<string, Traits>,
  waste: readonly WasteLine[],
): readonly Meeting[] {
  const rules = tables.incidentRules.filter(rule => rule.applies.includes('waste'))
  return waste.flatMap(line => {
    const residues = line.from.map(part => part.materials.map(id => presentAs(library, traits, id)))
    const byId = new Map(residues.flat().map(one => [one.material.id, one]))
    const byRule = rules.flatMap((rule): readonly Meeting[] => {
      const ways = waysToFire(rule, [...byId.values()])
      if (ways.length === 0) return []
      return [
        {
          where: 'waste',
          place: line.stream,
          severity: rule.severity,
          materials: [...new Set(ways.flatMap(way => way.map(one => one.material.id)))],
          title: rule.title,
          consequence: rule.consequence,
          do: rule.do,
          intended: false,
          // A condition that only asks whether it is waste is answered: it is.
          conditions: rule.trigger.conditions.filter(condition => !/\bwastes?\b/.test(condition)).map(asQuestion),
          sources: rule.sources,
        },
      ]
    })
    return [...byRule, ...byMatrix(tables, line, residues)]
  })
}

function byMatrix(tables: HazardTables, line: WasteLine, residues: readonly (readonly Present[])[]): readonly Meeting[] {
  const cells = new Map<
    string,
    { readonly groups: readonly [number, number]; readonly codes: readonly string[]; readonly materials: Set<string> }
  >()
  for (let a = 0; a < residues.length; a++) {
    for (let b = a + 1; b < residues.length; b++) {
      for (const one of residues[a]!) {
        for (const other of residues[b]!) {
          if (one.material.id === other.material.id) continue
          for (const [p, q] of pairs(one.traits.groups, other.traits.groups)) {
            const codes = tables.matrix[String(p)]?.[String(q)] ?? []
            if (codes.length === 0) continue
            const key = `${p}|${q}`
            const cell = cells.get(key) ?? { groups: [p, q], codes, materials: new Set() }
            cell.materials.add(one.material.id).add(other.material.id)
            cells.set(key, cell)
          }
        }
      }
    }
  }
  const name = (group: number): string => tables.reactivityGroups.find(one => one.number === group)?.name ?? `group ${group}`
  return [...cells.values()].map(
    ({ groups: [p, q], codes, materials }): Meeting => ({
      where: 'waste',
      place: line.stream,
      severity: severityOrder.find(severity => codes.some(code => (weight[code] ?? 'never') === severity)) ?? 'never',
      materials: [...materials].sort(),
      title: p === q ? `${name(p)} with each other` : `${name(p)} with ${decapitalised(name(q))}`,
      consequence: `${capitalised(codes.map(code => tables.consequences[code] ?? code).join(', '))}.`,
      do: 'Collect the residues in separate containers, or destroy the reactive one first.',
      intended: false,
      conditions: [],
      sources: tables.matrixSources,
    }),
  )
}

/** Group pairs in rising order; a group meets itself only in group 107, which the matrix does not hold. */
function pairs(a: readonly number[], b: readonly number[]): readonly (readonly [number, number])[] {
  const found = new Map<string, readonly [number, number]>()
  for (const one of a) {
    for (const other of b) {
      if (one === other) continue
      const pair: readonly [number, number] = one < other ? [one, other] : [other, one]
      found.set(pair.join(), pair)
    }
  }
  return [...found.values()]
}

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
const decapitalised = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)
