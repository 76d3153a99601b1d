/** Atoms as SMILES writes them. Source: OpenSMILES specification, sections 3.1 (organic subset, aromatic forms) and 3.1.1 (bracket atoms). */
const atom =
  /Cl|Br|[BCNOPSFIbcnops*]|\[\d*(?:[A-Z][a-z]?|se|as|[bcnops]|\*)(?:@(?:@|[A-Z]{2}\d{1,2})?)?(?:H\d?)?(?:[+-]\d{1,2}|\++|-+)?(?::\d+)?\]/y
const ring = /%\d\d|\d/y
const bond = /[-=#$:/\\]/y

/**
 * Whether a text is written by the grammar of SMILES to its end, branches and rings closed: whether it is a sensible structure is for a toolkit
 * to say. What stands behind a blank in bars (CXSMILES) is passed over.
 */
export function isSmilesSyntax(text: string): boolean {
  const smiles = text.replace(/\s+\|[^|]*\|$/, '')
  const open = new Set<string>()
  let [at, depth] = [0, 0]
  let follows: 'start' | 'atom' | 'bond' | 'branch' = 'start'
  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at
    const found = pattern.exec(smiles)?.[0] ?? null
    if (found !== null) at += found.length
    return found
  }
  while (at < smiles.length) {
    const mark = smiles[at]!
    if (take(atom) !== null) follows = 'atom'
    else if (follows === 'start') return false
    else if (mark === '(' && follows === 'atom') [at, depth, follows] = [at + 1, depth + 1, 'branch']
    else if (mark === ')' && follows === 'atom' && depth > 0) [at, depth] = [at + 1, depth - 1]
    else if (mark === '.' && follows === 'atom' && depth === 0) [at, follows] = [at + 1, 'start']
    else if (follows !== 'bond' && take(bond) !== null) follows = 'bond'
    else {
      const closing = follows === 'branch' ? null : take(ring)
      if (closing === null) return false
      const number = closing.replace('%', '')
      if (!open.delete(number)) open.add(number)
      follows = 'atom'
    }
  }
  return follows === 'atom' && depth === 0 && open.size === 0
}
