import type { ChargedStep } from '../route/charged.ts'
import type { ShelfItem } from './shelf.ts'

/** Which steps a second product on the shelf of its own plan can serve. */
export interface GainedUses {
  /** By transformation: steps whose second product it takes, beside those whose product it takes. */
  readonly after: ReadonlyMap<string, readonly string[]>
  /** Steps that would take it before it is there. */
  readonly tooEarly: readonly { readonly material: string; readonly gainedIn: string; readonly step: string }[]
  /** Grams that the other steps take, by material and where it is gained, for what some step would take too early. */
  readonly mostG: ReadonlyMap<string, number>
}

export const gainedKey = (material: string, gainedIn: string): string => `${material} ${gainedIn}`

/**
 * A step that takes a second product waits for the step that gains it. Where that step waits for it in turn, directly or through others, it
 * is there too late, and what the step takes of it is bought.
 */
export function gainedUses(shelf: readonly ShelfItem[], steps: readonly ChargedStep[]): GainedUses {
  const idOf = (name: string) => steps.find(s => s.transformation === name || s.number === name)?.transformation
  const waits = new Map<string, Set<string>>(steps.map(s => [s.transformation, new Set()]))
  for (const step of steps)
    for (const to of step.goesTo) {
      const id = to.step === null ? undefined : idOf(to.step)
      if (id !== undefined) waits.get(id)!.add(step.transformation)
    }
  const waitsFor = (step: string, other: string, seen = new Set<string>()): boolean => {
    if (step === other) return true
    if (seen.has(step)) return false
    seen.add(step)
    return [...(waits.get(step) ?? [])].some(before => waitsFor(before, other, seen))
  }
  const after = new Map<string, string[]>()
  const tooEarly: { material: string; gainedIn: string; step: string }[] = []
  const mostG = new Map<string, number>()
  for (const { material, gainedIn } of shelf) {
    if (gainedIn === undefined || !waits.has(gainedIn)) continue
    const takers = steps.filter(step => takenG(step, material) > 0)
    const early = takers.filter(step => waitsFor(gainedIn, step.transformation))
    for (const step of early) tooEarly.push({ material, gainedIn, step: step.transformation })
    if (early.length > 0)
      mostG.set(
        gainedKey(material, gainedIn),
        takers.reduce((sum, step) => sum + (early.includes(step) ? 0 : takenG(step, material)), 0),
      )
    for (const { transformation } of takers.filter(step => !early.includes(step))) {
      waits.get(transformation)!.add(gainedIn)
      after.set(transformation, [...(after.get(transformation) ?? []), gainedIn])
    }
  }
  return { after, tooEarly, mostG }
}

const takenG = ({ charges }: ChargedStep, material: string): number =>
  charges.reduce((sum, line) => (line.material === material && line.supply === 'bought' ? sum + (line.massG ?? 0) : sum), 0)

/** The steps in an order in which each comes after those it waits for. */
export function inOrderOf(steps: readonly ChargedStep[], { after }: Pick<GainedUses, 'after'>): readonly ChargedStep[] {
  if (after.size === 0) return steps
  const idOf = (name: string) => steps.find(s => s.transformation === name || s.number === name)?.transformation
  const left = [...steps]
  const ordered: ChargedStep[] = []
  while (left.length > 0) {
    const isFree = (step: ChargedStep) =>
      left.every(
        other =>
          !other.goesTo.some(to => to.step !== null && idOf(to.step) === step.transformation) &&
          !(after.get(step.transformation) ?? []).includes(other.transformation),
      )
    const at = Math.max(0, left.findIndex(isFree))
    ordered.push(...left.splice(at, 1))
  }
  return ordered
}
