import { createHash } from 'node:crypto'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'
import type { RegulatedList } from '../../core/hazards/tables.ts'
import type { Traits } from '../../core/hazards/traits.ts'
import type { Library } from '../../core/library/library.ts'
import type { Workshop } from '../library/workshop.ts'
import { handedOut } from './handed-out.ts'

/** A library larger than this is searched on the server alone: what the page would hold is some 5 kB a transformation. */
export const mostTransformations = 10_000

/** The whole library as one reply. */
export interface WholeLibrary {
  /** Names just these records and traits: another text has another edition. Null = too large to be handed out. */
  readonly edition: string | null
  readonly encoded: (as: Encoding) => Promise<Buffer>
}

export type Encoding = 'br' | 'gzip' | 'identity'

/** By the library itself and its traits, which other lists make others of: a change makes new ones, and then this is written anew. */
const written = new WeakMap<Library, WeakMap<ReadonlyMap<string, Traits>, WholeLibrary>>()

/** The library of a workshop as it is now, with the traits that filters and lists are looked up in. */
export function wholeLibrary(workshop: Workshop): WholeLibrary {
  const { library } = workshop
  if (library.transformations.size > mostTransformations) return encodedOnce(tooLarge(library))
  const traits = workshop.traits()
  const { lists } = workshop.tables.regulated
  const ofLibrary = written.get(library) ?? new WeakMap<ReadonlyMap<string, Traits>, WholeLibrary>()
  const whole = ofLibrary.get(traits) ?? encodedOnce(textOf(library, traits, lists))
  written.set(library, ofLibrary.set(traits, whole))
  return whole
}

interface Text {
  readonly edition: string | null
  readonly text: string
}

const tooLarge = (library: Library): Text => ({
  edition: null,
  text: JSON.stringify({ edition: null, transformations: library.transformations.size, library: null, traits: null }),
})

function textOf(library: Library, ofMaterials: ReadonlyMap<string, Traits>, ofTables: readonly RegulatedList[]): Text {
  const records = JSON.stringify(handedOut(library, ofMaterials))
  const traits = JSON.stringify(Object.fromEntries(ofMaterials))
  const lists = JSON.stringify(ofTables)
  const edition = createHash('sha256')
    .update(records)
    .update('\0')
    .update(traits)
    .update('\0')
    .update(lists)
    .digest('base64url')
    .slice(0, 22)
  const text = `{"edition":"${edition}","transformations":${library.transformations.size},"library":${records},"traits":${traits},"lists":${lists}}`
  return { edition, text }
}

/** Packed once for whoever asks, beside the thread that answers others. */
function encodedOnce({ edition, text }: Text): WholeLibrary {
  const packed = new Map<Encoding, Promise<Buffer>>()
  const pack = (as: Encoding): Promise<Buffer> => {
    if (as === 'br') return promisify(brotliCompress)(text, { params: { [constants.BROTLI_PARAM_QUALITY]: 5 } })
    return as === 'gzip' ? promisify(gzip)(text) : Promise.resolve(Buffer.from(text))
  }
  return {
    edition,
    encoded: as => {
      const before = packed.get(as)
      if (before !== undefined) return before
      const fresh = pack(as)
      packed.set(as, fresh)
      return fresh
    },
  }
}
