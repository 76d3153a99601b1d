import type { Library } from '../library/library.ts'

/** A material's trade name; an id that the library does not hold comes back in words. */
export const nameIn =
  (library: Library) =>
  (id: string): string =>
    library.materials.get(id)?.name ?? id.replaceAll('-', ' ')
