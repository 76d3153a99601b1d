import { materialWords } from './field-words.ts'
import type { Source } from './source.ts'
import { isOwnBench, unsourced } from './trust.ts'

/**
 * What a source of a material names one by one only where somebody put the record right. Hazards are not among them: any library has sources
 * for these alone, so that they do not tell who changed them.
 */
const figures: ReadonlySet<string> = new Set(
  (['smiles', 'formula', 'cas', 'densityGPerMl', 'meltingC', 'boilingC', 'flashC'] as const).map(key => materialWords[key].label),
)

const namesFigures = ({ for: speaksFor = '' }: Source): boolean => speaksFor.split(/\s*[,;]\s*/).some(piece => figures.has(piece))

/** Somebody's own word stands in the record: of their bench, for a figure of a material that they put right, or for one changed without a source. */
export const isOwnWord = ({ sources }: { readonly sources: readonly Source[] }): boolean =>
  sources.some(source => isOwnBench(source) || source.citation === unsourced || namesFigures(source))
