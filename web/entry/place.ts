import { signal } from '@preact/signals'

/** The parts of the entry pages: a preparation, a material, a file, the library with its trust, its weak spots. */
export const entryPlaces = ['write', 'material', 'file', 'library', 'weak'] as const
export type EntryPlace = (typeof entryPlaces)[number]

const inAddress = (): EntryPlace | null => {
  const wanted = new URLSearchParams(location.search).get('entry')
  return entryPlaces.find(place => place === wanted) ?? null
}

/** Which entry page stands; null = none, and the plan or the first page is seen. */
export const entryPlace = signal<EntryPlace | null>(inAddress())

const materialInAddress = (): string | null => new URLSearchParams(location.search).get('material')
/** Id of the material that the page of a material is to put right; null = a new one, or whatever stands there. */
export const entryMaterial = signal<string | null>(materialInAddress())

addEventListener('popstate', () => {
  entryPlace.value = inAddress()
  entryMaterial.value = materialInAddress()
})

function show(place: EntryPlace | null, material: string | null = null): void {
  const url = new URL(location.href)
  if (material === null) url.searchParams.delete('material')
  else url.searchParams.set('material', material)
  if (place === null) url.searchParams.delete('entry')
  else url.searchParams.set('entry', place)
  history.pushState(null, '', url.href)
  entryMaterial.value = material
  entryPlace.value = place
  scrollTo(0, 0)
}

/** Opens an entry page beside the plan, which stays as it is. */
export const openEntry = (place: EntryPlace): void => show(place)
/** Opens the page of a material with a record of the library in it, to be put right in the own one. */
export const openMending = (material: string): void => show('material', material)
export const closeEntry = (): void => show(null)
