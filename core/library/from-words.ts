import type { Source } from './source.ts'

/** How the text of a `from` begins whose figure is only remembered. */
export const fromMemory = /^(from )?memory\b/i

/** How the text of a `from` begins whose figure the trade takes for granted: told as remembered. */
export const commonPractice = /^common practice\b/i

/** How the text of a `from` begins whose label was reckoned out of the labels of the parts, all of them seen. */
export const mixtureRules = /^mixture rules of the un ghs\b/i

/** Words of somebody who did not read it anywhere, wherever they stand. */
const doubting =
  /\b(guess\w*|remember\w*|memory|recall\w*|estimat\w*|invent\w*|unknown|unsure|typed|made up|assum\w*|presumabl\w*|probabl\w*|perhaps|maybe)\b|\?\s*$/i

/** What hazards are read in: a data sheet, a label, an official list. */
const documents = /\bdata ?sheets?\b|\b(m?sds|labels?|bottle|annex vi|clp|echa|nite|ccid|hcis|gestis)\b/i

/** An empty list that suppliers stand behind: nobody assigns codes to it in this form. */
const assignedNone = 'common practice: suppliers assign none in this form'

/** A text with which a yield says that it stands in the record's own sources. */
const ofTheSources = /^(sources?|several (sources|runs)|as entered)\b/i

const alike = (text: string): string => text.trim().replace(/\.$/, '').toLowerCase()

/** The text is the citation of sources of the record, all of which were read. */
export function namesReadSource(from: string, sources: readonly Source[]): boolean {
  const named = sources.filter(({ citation }) => alike(citation) === alike(from))
  return named.length > 0 && named.every(({ checked }) => checked) && !doubting.test(from)
}

/** The `from` of hazards tells who assigned them. Any other text is no more than somebody's word. */
export function namesAssigner(from: string, sources: readonly Source[]): boolean {
  if (alike(from) === assignedNone || namesReadSource(from, sources)) return true
  if (doubting.test(from)) return false
  // "page" alone: the one that a source of the hazards names.
  return (
    documents.test(from) ||
    mixtureRules.test(from) ||
    (/^(page|source)$/i.test(from) && sources.some(one => one.checked && one.for?.includes('hazards')))
  )
}

/** The `from` of a yield whose three figures were typed, or read in what was pasted, on the page for new steps. */
export const isAsEntered = (from: string): boolean => alike(from) === 'as entered'

/** The `from` of a yield tells that it stands in what was read. */
export const namesSources = (from: string, sources: readonly Source[]): boolean => ofTheSources.test(from) || namesReadSource(from, sources)
