import { type Library, materialOf, transformationOf } from '../library/library.ts'
import { referenceFeedstockG, referenceMoles } from '../library/reference-charge.ts'
import type { Transformation } from '../library/transformation.ts'
import type { ChargedLine } from './charged.ts'

/** One kind of vessel owned. */
export interface Vessel {
  readonly kind: NonNullable<Transformation['vesselKind']>
  readonly volumeMl: number
  readonly count: number
}

/** What fills the vessel at the plan's scale, all batches together, mL. */
export interface ReactionVolume {
  /** Null where nothing in the vessel has a volume. */
  readonly vesselMl: number | null
  /** Vessel and quench, which go into the same one. */
  readonly withQuenchMl: number | null
  /** Some density was assumed, or some line of the vessel has no amount. */
  readonly assumed: boolean
}

/** Density of a solid whose own is unknown, g/mL. Middle of organic crystals; common practice, no source. */
const assumedDensity = 1.2

/**
 * Reaction volume: liquids plus solids by mass over density of what goes into the vessel; or the stated peak, scaled, where solvent is
 * boiled off and topped up.
 */
export function reactionVolume(
  library: Library,
  transformation: Transformation,
  charges: readonly ChargedLine[],
  scale: number,
): ReactionVolume {
  let assumed = false
  const sum = (stage: 'vessel' | 'quench'): number | null => {
    let total: number | null = null
    for (const line of charges) {
      if (line.at !== stage || line.supply === 'free') continue
      const material = materialOf(library, line.material)
      if (material.form === 'gas') continue
      let volume = line.volumeMl
      if (volume === null && line.massG !== null) {
        volume = line.massG / (material.densityGPerMl ?? assumedDensity)
        assumed ||= material.densityGPerMl === undefined
      }
      if (volume === null) assumed = true
      else total = (total ?? 0) + volume
    }
    return total
  }
  const peak = transformation.peakVolumeMl
  const vesselMl = peak === undefined ? sum('vessel') : peak * scale
  const quench = sum('quench')
  return { vesselMl, withQuenchMl: quench === null ? vesselMl : (vesselMl ?? 0) + quench, assumed }
}

/** Thresholds of scale and fill. Scale table: two thirds, one half, three and two times seen in sources there; a fifth and half a gram common practice. */
export const scaleLimits = {
  fill: 2 / 3,
  fillFoaming: 1 / 2,
  above: 3,
  aboveStrongExotherm: 2,
  below: 1 / 5,
  leastProductG: 0.5,
} as const

/** Highest fill of a step's vessel, as a fraction of its nominal volume; the source's own where it filled its vessel fuller. */
export function highestFill(library: Library, transformation: Transformation, sourceVolumeMl: number | null): number {
  const foams =
    transformation.gasEvolved.length > 0 ||
    transformation.foam === true ||
    transformation.exotherm === 'strong' ||
    givesGas(library, transformation)
  const limit = foams ? scaleLimits.fillFoaming : scaleLimits.fill
  const vesselMl = sourceVesselMl(transformation)
  if (vesselMl === null || sourceVolumeMl === null || sourceVolumeMl > vesselMl) return limit
  return Math.max(limit, sourceVolumeMl / vesselMl)
}

const givesGas = (library: Library, transformation: Transformation): boolean =>
  transformation.products.some(p => materialOf(library, p.compound).form === 'gas')

/** Volume of the vessel that the source names ("500 mL flask"), the largest of them; null where it names none. */
export function sourceVesselMl(transformation: Transformation): number | null {
  let largest: number | null = null
  for (const item of transformation.equipment) {
    const found = /(\d+(?:\.\d+)?)\s*(mL|L)\b.*\b(flask|beaker|pot|tube|kettle|jar|bottle)/i.exec(item)
    if (!found) continue
    const volume = Number(found[1]) * (found[2]?.toLowerCase() === 'l' ? 1000 : 1)
    if (largest === null || volume > largest) largest = volume
  }
  return largest
}

/** When a batch is called far from what was published; the fill is no matter of taste. */
export type ScaleFlags = Pick<
  { readonly [key in keyof typeof scaleLimits]: number },
  'above' | 'aboveStrongExotherm' | 'below' | 'leastProductG'
>

export interface BatchInput {
  readonly transformation: string
  readonly volume: ReactionVolume
  readonly scale: number
  /** Grams of limiting compound, all batches. */
  readonly limitingG: number
  readonly productG: number
  readonly vessels: readonly Vessel[]
  /** Batches asked for by the user; null = as many as the vessels need. */
  readonly asked: number | null
  /** In place of the usual thresholds. */
  readonly flags?: { readonly [key in keyof ScaleFlags]?: ScaleFlags[key] | undefined }
}

/** Nobody runs a step more often for one plan; beyond it the amounts or the vessels are mistyped, and reckoning each run would take minutes. */
export const mostBatches = 1000

export interface Batches {
  readonly batches: number
  readonly perBatchMl: number | null
  /** Batches to run and combine so that none lies far above the largest published scale; null where none does. */
  readonly combine: number | null
  readonly notes: readonly string[]
}

/** Batches of a step: as asked, else as the largest fitting vessel owned needs; never more because of scale alone. */
export function batchCount(library: Library, input: BatchInput): number {
  return input.asked ?? neededBatches(vesselFor(library, input)) ?? 1
}

/** The largest vessel owned of the kind a step takes (0 for none), and how far it may be filled. */
interface VesselFor {
  readonly kind: Vessel['kind']
  readonly largestMl: number
  readonly fill: number
  /** Of all batches, quench included, mL. */
  readonly totalMl: number | null
}

function vesselFor(library: Library, input: BatchInput): VesselFor {
  const transformation = transformationOf(library, input.transformation)
  const kind = transformation.vesselKind ?? 'flask'
  const totalMl = input.volume.withQuenchMl
  const sourceMl = totalMl === null || input.scale === 0 ? null : totalMl / input.scale
  let largestMl = 0
  for (const vessel of input.vessels) if (kind === 'other' || vessel.kind === kind) largestMl = Math.max(largestMl, vessel.volumeMl)
  return { kind, largestMl, fill: highestFill(library, transformation, sourceMl), totalMl }
}

/** Null where no vessel is stated or the volume is not known. A rounding error must not cost a batch. */
const neededBatches = ({ largestMl, fill, totalMl }: VesselFor): number | null =>
  totalMl === null || largestMl <= 0 ? null : Math.max(1, Math.ceil(totalMl / (fill * largestMl) - 1e-9))

/**
 * Batches of a step and what to say of them. Without vessels stated one batch, its volume told. Flags both ways, by batch: far above the
 * largest published scale, far below the smallest, hardly any product.
 */
export function batchesOf(library: Library, input: BatchInput): Batches {
  const transformation = transformationOf(library, input.transformation)
  const notes: string[] = []
  const vessel = vesselFor(library, input)
  const { kind, largestMl, fill, totalMl } = vessel
  const needed = neededBatches(vessel)
  const batches = batchCount(library, input)
  if (needed !== null) {
    if (input.asked !== null && input.asked < needed)
      notes.push(`${input.asked} batches fill the ${largestMl} mL ${kind} beyond ${fillText(fill)}: ${needed} are needed.`)
  } else if (input.vessels.length > 0 && totalMl !== null) {
    const what = kind === 'other' ? 'vessel' : kind
    notes.push(`No ${what} is listed among the vessels; one batch would need a ${what} of at least ${roundUp(totalMl / fill)} mL.`)
  }
  const flags = scaleFlags(library, transformation, input, batches)
  notes.push(...flags.notes)
  const perBatchMl = input.volume.vesselMl === null ? null : input.volume.vesselMl / batches
  return { batches, perBatchMl, combine: flags.combine, notes }
}

const fillText = (fill: number): string =>
  fill === scaleLimits.fill ? 'two thirds' : fill === scaleLimits.fillFoaming ? 'one half' : `${Math.round(fill * 100)} %`
const roundUp = (volumeMl: number): number => {
  const step = volumeMl < 100 ? 5 : volumeMl < 1000 ? 50 : 500
  return Math.ceil(volumeMl / step) * step
}

/** Grams of limiting compound at the reference charge. */
function referenceG(library: Library, transformation: Transformation): number | null {
  if (transformation.kind === 'isolation') return referenceFeedstockG(library, transformation)
  const moles = referenceMoles(library, transformation, transformation.limiting)
  const molarMass = library.molarMass.get(transformation.limiting)
  return moles === null || molarMass === undefined ? null : moles * molarMass
}

function scaleFlags(
  library: Library,
  transformation: Transformation,
  input: BatchInput,
  batches: number,
): { readonly notes: readonly string[]; readonly combine: number | null } {
  if (input.limitingG <= 0) return { notes: [], combine: null }
  let combine: number | null = null
  const notes: string[] = []
  const reference = referenceG(library, transformation)
  const stated = transformation.largestProvenG !== undefined || transformation.smallestProvenG !== undefined
  const largest = Math.max(transformation.largestProvenG ?? 0, reference ?? 0)
  const smallest = Math.min(transformation.smallestProvenG ?? Number.POSITIVE_INFINITY, reference ?? Number.POSITIVE_INFINITY)
  const perBatch = input.limitingG / batches
  const scale = (g: number) => `${Number(g.toPrecision(3))} g`
  // Where the library states neither scale, its own charge stands for both, and the flag says so.
  const published = stated ? 'published' : 'published (its own charge, which stands for both; no other is known)'
  const limits = { ...scaleLimits, ...input.flags } as ScaleFlags
  const limit = transformation.exotherm === 'strong' ? limits.aboveStrongExotherm : limits.above
  if (largest > 0 && perBatch > limit * largest * (1 + 1e-9)) {
    const times = perBatch / largest
    combine = Math.ceil(input.limitingG / (limit * largest) - 1e-9)
    const often = combine === 2 ? 'twice' : `${combine} times`
    notes.push(
      `${Number(times.toPrecision(2))} times the largest scale ${published}, ${scale(largest)} of ${transformation.limiting}: try a small run first, or run it ${often} and combine.`,
    )
    if (transformation.exotherm === 'strong') {
      notes.push(`Strong exotherm: dosing takes at least ${Number(Math.cbrt(times).toPrecision(2))} times as long as in the source.`)
    }
  }
  if (smallest < Number.POSITIVE_INFINITY && perBatch < limits.below * smallest) {
    const part = limits.below === scaleLimits.below ? 'a fifth' : `${Number((limits.below * 100).toPrecision(3))} %`
    notes.push(`Below ${part} of the smallest scale ${published}, ${scale(smallest)} of ${transformation.limiting}: losses weigh more.`)
  }
  const productPerBatch = input.productG / batches
  const perReference = input.productG / input.limitingG
  if (productPerBatch < limits.leastProductG && perReference * smallest > productPerBatch) {
    notes.push(`Under ${limits.leastProductG} g of product in a batch: hard to isolate without small glassware.`)
  }
  return { notes, combine }
}
