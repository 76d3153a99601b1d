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

addEventListener('popstate', () => {
  entryPlace.value = inAddress()
})

function show(place: EntryPlace | null): void {
  const url = new URL(location.href)
  if (place === null) url.searchParams.delete('entry')
  else url.searchParams.set('entry', place)
  history.pushState(null, '', url.href)
  entryPlace.value = place
  scrollTo(0, 0)
}

/** Opens an entry page beside the plan, which stays as it is. */
export const openEntry = (place: EntryPlace): void => show(place)
export const closeEntry = (): void => show(null)
