import type { Library } from '../../core/library/library.ts'
import { exposureTold } from '../../core/report/physical-words.ts'
import { Marked } from './mark.tsx'

/** "Exposure limit 2 ppm over 8 h (Ontario)." with its letter, on the sheet and in print; nothing where none is known. */
export function Exposure({ library, of }: { readonly library: Library; readonly of: Parameters<typeof exposureTold>[1] }) {
  const told = exposureTold(library, of)
  return told === null ? null : <Marked of={told.sure}>{told.text}.</Marked>
}
