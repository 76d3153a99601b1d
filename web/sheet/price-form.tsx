import { useRef, useState } from 'preact/hooks'
import { hyphened } from '../../core/library/plain-letters.ts'
import { inBase } from '../../core/quantity/convert.ts'
import { minorDigitsOf, moneyText } from '../../core/quantity/money.ts'
import { quantityText } from '../../core/quantity/print.ts'
import type { Pack, PacksFile } from '../../core/shopping/packs.ts'
import type { PriceFrom } from '../../core/shopping/price-from.ts'
import type { ShoppingLine } from '../../core/shopping/shopping.ts'
import { AmountField } from '../parts/amount-field.tsx'
import { nameOf } from '../state/names.ts'
import { isSamePack } from '../state/prices.ts'
import { change, plan } from '../state/store.ts'
import { KnownPrices } from './known-prices.tsx'

/** A price that the person knows: one that the packs do not have, or another than they have. */
export function PriceForm({ lines }: { readonly lines: readonly ShoppingLine[] }) {
  const [material, setMaterial] = useState('')
  const [supplier, setSupplier] = useState('')
  const [size, setSize] = useState<Pick<Pack, 'amount' | 'unit'> | null>(null)
  const [price, setPrice] = useState('')
  const [carriage, setCarriage] = useState('')
  const [source, setSource] = useState('')
  const [trust, setTrust] = useState<PriceFrom['trust'] | ''>('')
  const [date, setDate] = useState('')
  const priceField = useRef<HTMLInputElement>(null)
  if (lines.length === 0) return null
  const first = lines.find(line => line.costMinor === null) ?? lines[0]
  const chosen = lines.some(line => line.material === material) ? material : (first?.material ?? '')
  const { packs } = plan.value
  const id = supplierId(packs, supplier.trim())
  const pack = size === null ? null : { supplier: id, material: chosen, ...size, priceMinor: 0 }
  const known = pack === null ? undefined : packs?.packs.find(one => isSamePack(one, pack))
  const currency = known?.currency ?? packs?.currency ?? 'EUR'
  const minorOf = (text: string, of: string): number => Math.round(Number(text.replace(',', '.')) * 10 ** minorDigitsOf(of))
  const priceMinor = minorOf(price, currency)
  // Carriage is the supplier's, in the currency of the whole list.
  const listCurrency = packs?.currency ?? currency
  const carriageMinor = minorOf(carriage, listCurrency)
  const seller = packs?.suppliers.find(one => one.id === id)
  const asksCarriage = supplier.trim() !== '' && (seller === undefined || seller.carriageUnknown === true)
  const ready = supplier.trim() !== '' && size !== null && priceMinor > 0 && (!asksCarriage || carriageMinor >= 0)
  const take = (one: Pack): void => {
    setSupplier(packs?.suppliers.find(of => of.id === one.supplier)?.name ?? one.supplier)
    setSize({ amount: one.amount, unit: one.unit })
    setPrice('')
    priceField.current?.focus()
  }
  return (
    <details class="more-of">
      <summary>I know a price, or another one</summary>
      <form
        class="line-form"
        onSubmit={event => {
          event.preventDefault()
          if (!ready || pack === null) return
          const priceFrom: PriceFrom = {
            ...(source.trim() === '' ? {} : { source: source.trim() }),
            ...(trust === '' ? {} : { trust }),
            ...(date === '' ? {} : { date }),
          }
          change({
            do: 'price',
            currency,
            supplier: {
              ...{ id, name: supplier.trim(), hazardousFeeMinor: 0 },
              ...(carriage.trim() === '' ? { carriageMinor: 0, carriageUnknown: true as const } : { carriageMinor }),
            },
            pack: { ...pack, priceMinor, priceFrom },
          })
          setPrice('')
          setCarriage('')
          setSize(null)
        }}
      >
        <label class="field">
          <span>material</span>
          <select class="blank" value={chosen} onChange={event => setMaterial(event.currentTarget.value)}>
            {lines.map(line => (
              <option value={line.material} key={line.material}>
                {nameOf(line.material)}
              </option>
            ))}
          </select>
        </label>
        <label class="field">
          <span>supplier</span>
          <input class="blank" size={14} value={supplier} onInput={event => setSupplier(event.currentTarget.value)} />
        </label>
        <span class="field">
          <span>pack</span>
          <AmountField
            text={size === null ? '' : quantityText({ value: size.amount, unit: size.unit })}
            label="size of the pack"
            dimensions={['mass', 'volume']}
            size={7}
            onWritten={quantity => quantity !== null && setSize({ amount: inBase(quantity), unit: /g$/.test(quantity.unit) ? 'g' : 'mL' })}
          />
        </span>
        <label class="field">
          <span>price, {currency}</span>
          <input
            ref={priceField}
            class="blank n"
            size={6}
            inputMode="decimal"
            value={price}
            onInput={event => setPrice(event.currentTarget.value)}
          />
        </label>
        {asksCarriage && (
          <label class="field">
            <span>carriage and fees of an order, {listCurrency}</span>
            <input
              class="blank n"
              size={6}
              inputMode="decimal"
              placeholder="unknown"
              value={carriage}
              onInput={event => setCarriage(event.currentTarget.value)}
            />
          </label>
        )}
        <label class="field">
          <span>where it is from</span>
          <input
            class="blank"
            size={22}
            placeholder="list, page, shop"
            value={source}
            onInput={event => setSource(event.currentTarget.value)}
          />
        </label>
        <label class="field">
          <span>how sure</span>
          <select class="blank" value={trust} onChange={event => setTrust(event.currentTarget.value as PriceFrom['trust'] | '')}>
            <option value="">not stated</option>
            <option value="seen">seen there</option>
            <option value="remembered">remembered</option>
            <option value="own bench">paid by this bench</option>
            <option value="invented">invented</option>
          </select>
        </label>
        <label class="field">
          <span>on</span>
          <input class="blank" type="date" value={date} onInput={event => setDate(event.currentTarget.value)} />
        </label>
        <button type="submit" class="do" disabled={!ready}>
          {known === undefined ? 'Put it down' : `Put it in place of ${moneyText(known.priceMinor, currency)}`}
        </button>
      </form>
      <KnownPrices material={chosen} onTake={take} />
    </details>
  )
}

/** Id of the supplier that is called so, or one made from the name of a new one. */
function supplierId(packs: PacksFile | null, name: string): string {
  const known = packs?.suppliers.find(one => one.name.toLowerCase() === name.toLowerCase() || one.id === name)
  return known?.id ?? (hyphened(name) || 'supplier')
}
