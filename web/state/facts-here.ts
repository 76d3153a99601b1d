import { computed, signal } from '@preact/signals'
import { type Facts, noFacts } from './facts.ts'
import { plan } from './store.ts'

/** The part of the library that this page holds by now; the tables that are the same for every plan. */
export const facts = signal<Facts>(noFacts)
export const tables = signal<unknown>(null)
/** Counts the changes of the bench's own library that this page has made. */
export const libraryEdition = signal(0)

/** Compound that the start is or contains; the search runs between compounds. */
export const startCompound = computed(() => {
  const { material } = plan.value.start
  const known = facts.value.library.materials.get(material)
  return known?.kind === 'mixture' ? (known.contains?.compound ?? material) : material
})
