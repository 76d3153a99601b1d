import { useState } from 'preact/hooks'
import { inBase } from '../../core/quantity/convert.ts'
import { quantityText } from '../../core/quantity/print.ts'
import type { PriceFrom } from '../../core/shopping/price-from.ts'
import type { ShoppingLine } from '../../core/shopping/shopping.ts'
import { AmountField } from '../parts/amount-field.tsx'
import { nameOf } from '../state/names.ts'
import { change, plan } from '../state/store.ts'

/** A price that the person knows and the packs do not. */
export function PriceForm({ lines }: { readonly lines: readonly ShoppingLine[] }) {
  const [material, setMaterial] = useState('')
  const [supplier, setSupplier] = useState('')
  const [size, setSize] = useState<{ amount: number; unit: 'g' | 'mL' } | null>(null)
  const [price, setPrice] = useState('')
  const [source, setSource] = useState('')
  const [trust, setTrust] = useState<PriceFrom['trust'] | ''>('')
  const [date, setDate] = useState('')
  if (lines.length === 0) return null
  const chosen = lines.some(line => line.material === material) ? material : (lines[0]?.material ?? '')
  const priceMinor = Math.round(Number(price.replace(',', '.')) * 100)
  const ready = supplier.trim() !== '' && size !== null && priceMinor > 0
  const id =
    supplier
      .trim()
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'supplier'
  return (
    <details class="more-of">
      <summary>I know a price</summary>
      <form
        class="line-form"
        onSubmit={event => {
          event.preventDefault()
          if (!ready || size === null) return
          const priceFrom: PriceFrom = {
            ...(source.trim() === '' ? {} : { source: source.trim() }),
            ...(trust === '' ? {} : { trust }),
            ...(date === '' ? {} : { date }),
          }
          change({
            do: 'price',
            currency: plan.value.packs?.currency ?? 'EUR',
            supplier: { id, name: supplier.trim(), carriageMinor: 0, hazardousFeeMinor: 0 },
            pack: { supplier: id, material: chosen, amount: size.amount, unit: size.unit, priceMinor, priceFrom },
          })
          setPrice('')
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
          <span>price, {plan.value.packs?.currency ?? 'EUR'}</span>
          <input class="blank n" size={6} inputMode="decimal" value={price} onInput={event => setPrice(event.currentTarget.value)} />
        </label>
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
          Put it down
        </button>
      </form>
    </details>
  )
}
