import { moneyText } from '../../core/quantity/money.ts'
import { type Pack, priceFromOfPack } from '../../core/shopping/packs.ts'
import { priceFigure, sourceNotStated } from '../../core/shopping/price-from.ts'
import { TrustWord } from '../parts/trust-word.tsx'
import { Name } from '../parts/words.tsx'
import { nameOf } from '../state/names.ts'
import { change, plan } from '../state/store.ts'

/** The prices of one material that the plan has, each to be written over; one that was goes back. */
export function KnownPrices({ material, onTake }: { readonly material: string; readonly onTake: (pack: Pack) => void }) {
  const { packs } = plan.value
  const known = packs?.packs.filter(pack => pack.material === material) ?? []
  if (packs === null || known.length === 0) return null
  return (
    <ul class="rows s known-prices" aria-label={`prices of ${nameOf(material)}`}>
      {known.map((pack, at) => {
        const currency = pack.currency ?? packs.currency
        const { trust, mark, source } = priceFigure(priceFromOfPack(packs, pack))
        const what = `${pack.amount} ${pack.unit}, ${packs.suppliers.find(one => one.id === pack.supplier)?.name ?? pack.supplier}`
        return (
          <li key={`${what} ${at}`}>
            <Name text={nameOf(material)} />, {what}: <b class="nb">{moneyText(pack.priceMinor, currency)}</b>{' '}
            <TrustWord trust={trust} mark={mark} source={source ?? sourceNotStated} />
            {pack.inPlaceOf !== undefined && <span class="own"> in place of {moneyText(pack.inPlaceOf.priceMinor, currency)}</span>}{' '}
            <button type="button" class="do" onClick={() => onTake(pack)}>
              another price<span class="unseen"> for {what}</span>
            </button>{' '}
            {pack.inPlaceOf !== undefined && (
              <button type="button" class="do" onClick={() => change({ do: 'price-back', pack })}>
                back to {moneyText(pack.inPlaceOf.priceMinor, currency)}
                <span class="unseen"> for {what}</span>
              </button>
            )}
          </li>
        )
      })}
    </ul>
  )
}
