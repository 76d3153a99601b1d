import { didYouMean } from '../../problem/nearest.ts'
import type { Material } from '../material.ts'
import type { CheckContext, Finding } from './check.ts'

/** Reactivity groups, storage group, waste stream and peroxide class are keys of their tables. */
export function groupsExist(material: Material, { tables }: CheckContext): readonly Finding[] {
  const findings: Finding[] = []
  const find = (field: readonly string[], value: string, known: readonly string[]) =>
    findings.push({
      severity: 'error',
      code: 'groups-exist',
      field,
      what: `"${value}" is not in the table.`,
      why: 'What may not stand or be poured together is looked up by this key: one that is not there would pass for harmless.',
      cure: `${didYouMean(value, known)}Use one of ${known.join(', ')}, or leave the key out where nothing is known.`,
    })

  const groups = tables.reactivityGroups
  if (groups !== undefined)
    for (const [index, group] of (material.reactivityGroups ?? []).entries())
      if (!groups.has(group)) find(['reactivityGroups', String(index)], String(group), [...groups].map(String))
  for (const [key, known] of [
    ['storageGroup', tables.storageGroups],
    ['wasteStream', tables.wasteStreams],
    ['peroxideClass', tables.peroxideClasses],
  ] as const) {
    const value = material[key]
    if (value !== undefined && known !== undefined && !known.has(value)) find([key], value, [...known])
  }
  return findings
}
