import { noBreakSpace, volumeText } from '../quantity/print.ts'
import type { ChargedStep } from '../route/charged.ts'

/** Beakers as they are commonly sold, mL. From memory, no source looked up. */
const beakersMl = [100, 150, 250, 400, 600, 1000, 2000, 3000, 5000] as const
/** Foam and splashes want a third of it free. Common practice, no source. */
const fullest = 2 / 3

/**
 * The vessel that a batch is poured into, sized for what then stands in it; null where nothing is quenched or a volume is not known.
 *
 * @param batches the charge is divided into
 */
export function quenchVesselText(step: ChargedStep, batches: number): string | null {
  const quench = step.charges.filter(line => line.at === 'quench')
  const { perBatch } = step.volumeMl
  if (quench.length === 0 || perBatch === null) return null
  // What is weighed out as a solid (ice) is taken at the density of water.
  const volumes = quench.map(line => line.volumeMl ?? line.massG)
  if (volumes.some(one => one === null)) return null
  const holdsMl = perBatch + volumes.reduce<number>((sum, one) => sum + (one ?? 0), 0) / Math.max(1, batches)
  const size = beakersMl.find(one => holdsMl <= one * fullest)
  const what =
    size === undefined ? 'a vessel' : `a beaker of ${size < 1000 ? `${size}${noBreakSpace}mL` : `${size / 1000}${noBreakSpace}L`}`
  return `${what} for the quench, which then holds about ${volumeText(holdsMl)}`
}
