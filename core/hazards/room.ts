import { molarGasVolumeL } from '../chemistry/solution.ts'
import { type Library, materialOf } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import type { ChargedStep } from '../route/charged.ts'
import type { RoomLine } from './hazard-list.ts'

/** Below this a liquid gives vapour that burns at the temperature of a room, C: GHS flammable liquids, categories 1 and 2. */
const flashBelowC = 23
/** A liquid that boils below this evaporates from an open dish while one looks on, C. Common practice, no source. */
const volatileBelowC = 65
/** Taken for every vapour that burns, % by volume: below the lower explosive limits of the usual solvents (hexane, toluene 1.1; ether 1.7; ethanol 3.3). From memory. */
const lowestExplosivePercent = 1
/** Share of it at which rooms are cleared. Common practice, no source. */
const alarmShare = 0.1

/** "40 ppm", "0.7 mg/m3": a limit of the air of a workplace. */
export function limitOf(text: string | undefined): { readonly value: number; readonly unit: 'ppm' | 'mg/m3' } | null {
  const read = /^(\d+(?:\.\d+)?)\s*(ppm|mg\/m3)\b/.exec(text ?? '')
  return read === null ? null : { value: Number(read[1]), unit: read[2] as 'ppm' | 'mg/m3' }
}

/**
 * For every liquid whose vapour burns at room temperature, or that is volatile and has a limit: how much air the most that stands on the
 * bench at once would need if it all evaporated, evenly mixed and with no change of air, to stay at its limit and at a tenth of a lower
 * explosive limit of 1 %. A plain warning: close to a spill it is far worse, and in a hood far better.
 *
 * @param roomM3 null = not stated
 */
export function roomLines(library: Library, steps: readonly ChargedStep[], roomM3: number | null): readonly RoomLine[] {
  const most = new Map<string, { step: string; massG: number }>()
  for (const step of steps) {
    const here = new Map<string, number>()
    for (const { material, massG, supply } of step.charges)
      if (supply !== 'free' && massG !== null) here.set(material, (here.get(material) ?? 0) + massG / Math.max(1, step.batches))
    for (const [id, massG] of here) if (massG > (most.get(id)?.massG ?? 0)) most.set(id, { step: step.number, massG })
  }
  return [...most]
    .map(([id, { step, massG }]) => lineOf(library, materialOf(library, id), step, massG, roomM3))
    .filter(line => line !== null)
    .sort((a, b) => b.needsM3 - a.needsM3)
}

function lineOf(library: Library, material: Material, step: string, massG: number, roomM3: number | null): RoomLine | null {
  const burns = material.flashC !== undefined && material.flashC < flashBelowC
  const limit = limitOf(material.exposureLimit?.twa) ?? limitOf(material.exposureLimit?.ceiling) ?? limitOf(material.exposureLimit?.stel)
  const volatile = burns || (material.boilingC !== undefined && material.boilingC < volatileBelowC)
  if (!['liquid', 'solution'].includes(material.form) || !volatile || (!burns && limit === null)) return null
  const molarMass = library.molarMass.get(material.kind === 'mixture' ? (material.contains?.compound ?? '') : material.id)
  // m3 of pure vapour at 25 C and 1 atm; without a molar mass that of a light one, which is the worse for the room.
  const vapourM3 = ((massG / (molarMass ?? lightMolarMass)) * molarGasVolumeL) / 1000
  const forLimit = limit === null ? 0 : limit.unit === 'ppm' ? vapourM3 / (limit.value * 1e-6) : (massG * 1000) / limit.value
  const forFire = burns ? vapourM3 / ((lowestExplosivePercent / 100) * alarmShare) : 0
  const needsM3 = Math.max(forLimit, forFire)
  return {
    material: material.id,
    step,
    massG,
    volumeMl: material.densityGPerMl === undefined ? null : massG / material.densityGPerMl,
    flashC: material.flashC ?? null,
    limit: limit === null ? null : `${limit.value} ${limit.unit}`,
    limitNeedsM3: limit === null ? null : forLimit,
    fireNeedsM3: burns ? forFire : null,
    needsM3,
    roomM3,
    exceeds: roomM3 === null ? null : needsM3 > roomM3,
  }
}

/** Of a solvent that the library cannot weigh, g/mol: methanol's, the lightest of them. */
const lightMolarMass = 32
