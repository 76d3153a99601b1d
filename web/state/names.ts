import { computed } from '@preact/signals'
import type { Material } from '../../core/library/material.ts'
import { facts } from './facts-here.ts'
import { reach } from './questions.ts'

/** Names learnt from the list of what the start can become, where the material itself is not here. */
const reachNames = computed(() => new Map((reach.value.answer?.reach ?? []).map(row => [row.compound, row.name])))

/** The trade name of a material, or its id until it is known. */
export const nameOf = (id: string): string =>
  facts.value.library.materials.get(id)?.name ?? reachNames.value.get(id) ?? id.replaceAll('-', ' ')

export const materialHere = (id: string): Material | null => facts.value.library.materials.get(id) ?? null

/** Name of the transformation's way where several lead to the same: what stands after the comma of its name, or its own name. */
export function wayName(id: string): string {
  const name = facts.value.library.transformations.get(id)?.name ?? id.replaceAll('-', ' ')
  const comma = /^[^,]*\bto\b[^,]*, (.+)$/.exec(name)
  return comma?.[1] ?? name
}
