import type { Transformation } from '../../core/library/transformation.ts'

/** Longest name in the second line of a reaction file, characters. Source: CTfile formats, header block. */
const longest = 80

/** The name of a step as a form of reactions holds it: one line, in a reaction file a short one; no mark of the format at its head. */
export function titleOf({ name }: Transformation, form: 'smi' | 'rxn'): string {
  const line = name
    .replace(/\s+/g, ' ')
    .replace(form === 'smi' ? /^[\s|]+/ : /^[\s$]+/, '')
    .trim()
  return form === 'rxn' ? [...line].slice(0, longest).join('').trim() : line
}
