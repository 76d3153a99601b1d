import { isWanted, type WantedMark } from '../../core/library/mark.ts'
import { moneyText } from '../../core/quantity/money.ts'
import { priceFromOfPack } from '../../core/shopping/packs.ts'
import { priceFigure, sourceNotStated } from '../../core/shopping/price-from.ts'
import { TrustWord } from '../parts/trust-word.tsx'
import { Name } from '../parts/words.tsx'
import { nameOf } from '../state/names.ts'
import { plan } from '../state/store.ts'

/** The prices of the plan in hand, each with where it was got. */
export function PriceList({ words, wanted }: { readonly words: string; readonly wanted: WantedMark | '' }) {
  const { packs } = plan.value
  if (packs === null || packs.packs.length === 0) return <p class="soft">The plan in hand has no prices: question 5 takes them.</p>
  const asked = words.trim().toLowerCase()
  const rows = packs.packs
    .map(pack => ({
      pack,
      name: nameOf(pack.material),
      supplier: packs.suppliers.find(one => one.id === pack.supplier)?.name ?? pack.supplier,
      ...priceFigure(priceFromOfPack(packs, pack)),
    }))
    .filter(row => `${row.name} ${row.supplier}`.toLowerCase().includes(asked) && (wanted === '' || isWanted(wanted, row.mark)))
  return (
    <>
      <p class="soft" role="status">
        {rows.length} {rows.length === 1 ? 'price' : 'prices'}.
      </p>
      <ul class="rows">
        {rows.map(({ pack, name, supplier, trust, mark, source }, at) => (
          <li key={`${pack.supplier} ${pack.material} ${pack.amount} ${at}`}>
            <b>
              <Name text={name} />
            </b>
            <span class="soft">
              , {pack.amount} {pack.unit}, {supplier}
            </span>{' '}
            <span class="nb">{moneyText(pack.priceMinor, pack.currency ?? packs.currency)}</span>{' '}
            {pack.inPlaceOf !== undefined && (
              <span class="own">in place of {moneyText(pack.inPlaceOf.priceMinor, pack.currency ?? packs.currency)} </span>
            )}
            <TrustWord trust={trust} mark={mark} source={source} />
            <span class="s soft block">{source ?? sourceNotStated}</span>
          </li>
        ))}
      </ul>
    </>
  )
}
