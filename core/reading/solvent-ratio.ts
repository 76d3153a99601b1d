import { measuresIn } from './measures.ts'

/** "Hexane / ethyl acetate 4:1", "hexane-ethyl acetate (4:1 v/v)". */
const mixed =
  /^(\p{L}[\p{L}\d ,'-]*?)\s*(?:\/|:|\s[-–]\s)\s*(\p{L}[\p{L}\d ,'-]*?)[\s,]*\(?\s*(\d+(?:\.\d+)?)\s*[:/]\s*(\d+(?:\.\d+)?)\s*(?:v\s*\/\s*v|by\s+volume)?\s*\)?$/u
/** More figures than a cylinder shows. */
const figures = 3

/**
 * The lines that a volume of two solvents in a stated proportion stands for; for a person to look at, never taken by itself.
 *
 * @returns null where the line says no such thing
 */
export function solventsInRatio(line: string): readonly [string, string] | null {
  const volumes = measuresIn(line, 'thousands').filter(one => one.kind === 'amount')
  const [only] = volumes
  if (only === undefined || volumes.length > 1 || (only.unit !== 'mL' && only.unit !== 'L')) return null
  const rest = `${line.slice(0, only.from)} ${line.slice(only.to)}`.replace(/^[\s,;:(]*(?:of\s+)?|[\s,;:(]+$/g, '')
  const [, one, other, first, second] = mixed.exec(rest) ?? []
  if (one === undefined || other === undefined) return null
  const [part, counterpart] = [Number(first), Number(second)]
  if (!(part > 0 && counterpart > 0)) return null
  const share = (of: number): string => `${Number(((only.value * of) / (part + counterpart)).toPrecision(figures))} ${only.unit}`
  return [`${share(part)} ${one.trim()}`, `${share(counterpart)} ${other.trim()}`]
}
