import type { Plan } from '../../core/plan/plan.ts'
import type { Pack, PacksFile, Supplier } from '../../core/shopping/packs.ts'

const bases = { g: [1, 'mass'], kg: [1000, 'mass'], mL: [1, 'volume'], L: [1000, 'volume'] } as const

/** The same size of the same material from the same supplier, whatever unit it is written in. */
export function isSamePack(one: Pack, other: Pack): boolean {
  const [scale, of] = bases[one.unit]
  const [otherScale, otherOf] = bases[other.unit]
  const sizes = [one.amount * scale, other.amount * otherScale] as const
  return (
    one.supplier === other.supplier &&
    one.material === other.material &&
    of === otherOf &&
    Math.abs(sizes[0] - sizes[1]) <= 1e-9 * Math.max(...sizes)
  )
}

/** What the person asks to be put down: a pack that is not in the list yet, or another price for one that is, which is kept beside it. */
export function withPrice(
  plan: Plan,
  { supplier, pack, currency }: { readonly supplier: Supplier; readonly pack: Pack; readonly currency: string },
): PacksFile {
  const packs = plan.packs ?? { format: 'waybench-packs', version: 1, currency, suppliers: [], packs: [] }
  const suppliers = withSupplier(packs.suppliers, supplier)
  const known = packs.packs.find(one => isSamePack(one, pack))
  if (known === undefined) return { ...packs, suppliers, packs: [...packs.packs, pack] }
  const { priceMinor, priceFrom } = known
  // Written over twice, the first one is still what the list of packs said.
  const before = known.inPlaceOf ?? { priceMinor, ...(priceFrom === undefined ? {} : { priceFrom }) }
  const { priceFrom: _known, ...same } = known
  const fresh = { ...same, priceMinor: pack.priceMinor, ...(pack.priceFrom === undefined ? {} : { priceFrom: pack.priceFrom }) }
  return { ...packs, suppliers, packs: packs.packs.map(one => (one === known ? { ...fresh, inPlaceOf: before } : one)) }
}

/** A supplier that is known stays as it is, but for a carriage that nobody had stated before. */
function withSupplier(suppliers: readonly Supplier[], stated: Supplier): Supplier[] {
  const known = suppliers.find(one => one.id === stated.id)
  if (known === undefined) return [...suppliers, stated]
  if (!known.carriageUnknown || stated.carriageUnknown) return [...suppliers]
  const { carriageUnknown: _open, ...rest } = known
  const { carriageMinor, hazardousFeeMinor } = stated
  return suppliers.map(one => (one === known ? { ...rest, carriageMinor, hazardousFeeMinor } : one))
}

/** A price goes back to the one that it was written over. */
export function withPriceBefore(packs: PacksFile | null, pack: Pack): PacksFile | null {
  if (packs === null) return null
  return {
    ...packs,
    packs: packs.packs.map(one => {
      if (!isSamePack(one, pack) || one.inPlaceOf === undefined) return one
      const { inPlaceOf, priceFrom: _own, ...rest } = one
      return { ...rest, ...inPlaceOf }
    }),
  }
}
