import type { Library } from '../../core/library/library.ts'
import type { ShoppingInput } from '../../core/shopping/basket.ts'
import type { PacksFile } from '../../core/shopping/packs.ts'
import type { Solver } from '../../core/shopping/shopping.ts'
import { chargedLine, chargedStep } from './charged-steps.ts'
import { sfc32 } from './networks/sfc32.ts'
import { material, smallLibrary, transformation } from './small-library.ts'

/** What a purchase is made of. */
export interface PurchaseSize {
  readonly materials: number
  readonly packsEach: number
  readonly suppliers: number
  /** Minimum order of every second supplier, minor units; 0 = none. */
  readonly minimumMinor: number
}

/** A seeded purchase: larger packs cheaper by unit, suppliers within a third of each other, every third material hazardous. */
export function largePurchase(seed: number, size: PurchaseSize, solver: Solver): ShoppingInput {
  const draw = sfc32(seed)
  const ids = Array.from({ length: size.materials }, (_, i) => `m${String(i).padStart(3, '0')}`)
  const library: Library = smallLibrary(
    ids.map((id, i) => material({ id, hazards: { codes: i % 3 === 0 ? ['H225'] : [], signalWord: 'none', from: 'label of a bench' } })),
    [transformation({ id: 'step' })],
  )
  const file: PacksFile = {
    format: 'waybench-packs',
    version: 1,
    currency: 'EUR',
    suppliers: Array.from({ length: size.suppliers }, (_, s) => ({
      id: `s${s}`,
      name: `S${s}`,
      carriageMinor: 400 + Math.floor(draw() * 1200),
      hazardousFeeMinor: Math.floor(draw() * 1500),
      ...(size.minimumMinor > 0 && s % 2 === 0 ? { minimumOrderMinor: size.minimumMinor } : {}),
    })),
    packs: [],
  }
  const packs = ids.flatMap(id => {
    const perGram = 5 + draw() * 60
    return file.suppliers.flatMap(supplier => {
      const own = perGram * (0.75 + draw() * 0.5)
      const first = [5, 10, 25][Math.floor(draw() * 3)]!
      return Array.from({ length: size.packsEach }, (_, p) => {
        const grams = first * [1, 2.5, 10, 25, 100][p]!
        return { supplier: supplier.id, material: id, amount: grams, unit: 'g' as const, priceMinor: Math.round(own * grams ** 0.8 + 90) }
      })
    })
  })
  const charges = ids.map(id => chargedLine({ material: id, massG: Math.round(3 + draw() ** 2 * 400) }))
  return {
    library,
    steps: [chargedStep({ transformation: 'step', charges })],
    products: [],
    shelf: [],
    packs: { ...file, packs },
    reserve: 0,
    repeat: false,
    retainedSampleG: 0,
    solver,
  }
}
