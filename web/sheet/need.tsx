import type { Evaluation } from '../../core/plan/evaluation.ts'
import { moneyText } from '../../core/quantity/money.ts'
import { noBreakSpace, numberText, quantityText } from '../../core/quantity/print.ts'
import { needAnswer } from '../../core/report/answers.ts'
import { asPacked, packForReserve, reservePackText } from '../../core/report/as-packed.ts'
import { barredClause } from '../../core/report/barred-clause.ts'
import { carriageOpen, hasNoPrice } from '../../core/report/basket-gaps.ts'
import { marksOfPacks, priceMarked, priceSentence } from '../../core/report/price-words.ts'
import { counted, listed } from '../../core/report/words.ts'
import type { Basket, Quantity, ShoppingLine } from '../../core/shopping/shopping.ts'
import { Figure, figureOf } from '../parts/figure.tsx'
import { Marked, MarkSign } from '../parts/mark.tsx'
import { Clauses, Name, Unknown } from '../parts/words.tsx'
import { WorkingRow } from '../parts/working.tsx'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { standing } from '../state/reckoner.ts'
import { plan } from '../state/store.ts'
import { Cheapest } from './cheapest.tsx'
import { DaysStrip } from './days-strip.tsx'
import { PriceForm } from './price-form.tsx'
import { Question } from './question.tsx'
import { Solving } from './solving.tsx'
import { Spare } from './spare.tsx'
import { PacksTable } from './stock-tables.tsx'
import { UnderTheList } from './under-the-list.tsx'

/** Question 5: one shopping list for all goals, and the days. */
export function Need() {
  const { evaluation, basketFresh } = standing.value
  const clauses =
    evaluation === null ? [] : [...barredClause(evaluation.hazards, nameOf), ...needAnswer(evaluation, plan.value.settings.windows)]
  return (
    <Question
      no={5}
      ask="What do I need?"
      empty={evaluation === null}
      stale={!basketFresh}
      answer={evaluation === null ? 'Nothing yet' : <Clauses of={clauses} />}
    >
      {() =>
        evaluation === null ? (
          <p>The shopping list and the days follow from the amounts in question 4.</p>
        ) : (
          <NeedBody evaluation={evaluation} />
        )
      }
    </Question>
  )
}

function NeedBody({ evaluation }: { readonly evaluation: Evaluation }) {
  const { basketFresh } = standing.value
  const { shopping, basket, hazards } = evaluation
  const shown = shopping.map(line => asPacked(facts.value.library, line))
  const regulated = new Set(
    hazards.regulated.filter(hit => hit.action === 'licence' || hit.action === 'reporting').map(hit => hit.material),
  )
  const toBuy = shown.filter(line => line.buy.amount === null || line.buy.amount > 0 || line.packs.length > 0)
  const covered = shown.filter(line => !toBuy.includes(line) && line.madeUp === null)
  const { settings, packs } = plan.value
  return (
    <>
      <table class="t shop" data-stale={basketFresh ? undefined : ''}>
        <thead>
          <tr>
            <th>To buy</th>
            <th class="n">need</th>
            <th class="n">shelf</th>
            <th class="n">buy</th>
            <th>packs</th>
            <th class="n">cost</th>
          </tr>
        </thead>
        <tbody>
          {toBuy.map(line => (
            <BuyRow line={line} regulated={regulated.has(line.material)} key={line.material} />
          ))}
        </tbody>
        {basket !== null && (
          <tbody class="sums">
            {basket.orders.map(order => (
              <tr key={order.supplier}>
                <th scope="row" class="plain" colSpan={5}>
                  {order.name}, carriage{order.hazardousFeeMinor > 0 ? ' and hazardous-goods fee' : ''}
                </th>
                <td class="n">
                  {order.carriageUnknown ? (
                    <Unknown>not stated</Unknown>
                  ) : order.carriageMinor + order.hazardousFeeMinor === 0 ? (
                    bareMoney(0)
                  ) : (
                    <Marked of={priceMarked(order.priceFrom)}>{bareMoney(order.carriageMinor + order.hazardousFeeMinor)}</Marked>
                  )}
                </td>
              </tr>
            ))}
            <tr class="total">
              <th scope="row" colSpan={4}>
                {missingText(basket) === '' ? 'Altogether' : `At least; ${missingText(basket)}`}
              </th>
              <td class="n" colSpan={2}>
                {hasNoPrice(basket) ? (
                  <Unknown>no price known</Unknown>
                ) : (
                  <b class="answer">{moneyText(basket.totalMinor ?? 0, basket.currency)}</b>
                )}
              </td>
            </tr>
          </tbody>
        )}
      </table>
      {toBuy.length === 0 && <p>The shelf covers everything.</p>}
      <p class="s soft">
        Need holds {Math.round(settings.reserve * 100)}
        {noBreakSpace}% in reserve. +: the source gives no amount, or only for a part; at least this much. § licence or report.{' '}
        {priceSentence(evaluation) ?? ''} {packs?.note ?? ''}
        {basket !== null && basket.priceUnknown.length > 0 && ` Nobody quotes ${listed(basket.priceUnknown.map(nameOf))}.`}
        {covered.length > 0 && ` The shelf covers ${covered.map(line => nameOf(line.material)).join(', ')}.`}
      </p>
      <Solving />
      <MadeUpNotes lines={shopping} />
      <PriceForm lines={toBuy} />
      <UnderTheList evaluation={evaluation} />
      <Cheapest />
      <PacksTable />
      <Spare evaluation={evaluation} />
      <DaysStrip evaluation={evaluation} />
    </>
  )
}

function missingText(basket: Basket): string {
  const [prices, amounts] = [basket.priceUnknown.length, basket.amountUnknown.length]
  const parts = [
    prices > 0 ? `${counted(prices, 'price')} unknown` : '',
    amounts > 0 ? `${counted(amounts, 'amount')} left open` : '',
    carriageOpen(basket) ?? '',
  ]
  return parts.filter(part => part !== '').join(', ')
}

/** Cents without the sign of the currency, which the total carries. */
const bareMoney = (minor: number): string => moneyText(minor, 'EUR').replace(/^\D+/, '')

const amountText = ({ amount, unit }: Quantity): string => (amount === null ? 'as needed' : quantityText({ value: amount, unit }))

function BuyRow({ line, regulated }: { readonly line: ShoppingLine; readonly regulated: boolean }) {
  const name = figureOf({ of: 'buy', material: line.material })
  const least = line.open || line.atLeast
  const { settings, packs } = plan.value
  const spared = packForReserve(facts.value.library, line, settings.reserve)
  const shown = (quantity: Quantity) =>
    quantity.amount === null ? <Unknown>as needed</Unknown> : least ? <i>{amountText(quantity)} +</i> : amountText(quantity)
  return (
    <>
      <tr>
        <th scope="row" class={line.costMinor === null ? '' : 'plain'}>
          <Name text={nameOf(line.material)} />
          {regulated && <span title="licence or report: see question 6"> §</span>}
        </th>
        <td class="n" data-label="need">
          <Figure name={name} label={`need of ${nameOf(line.material)}`}>
            {shown(line.need)}
          </Figure>
        </td>
        <td class="n" data-label="shelf">
          {line.shelf.amount === null ? <Unknown /> : line.shelf.amount === 0 ? '0' : amountText(line.shelf)}
        </td>
        <td class="n" data-label="buy">
          {shown(line.buy)}
        </td>
        {line.costMinor === null ? (
          <td class="n" colSpan={2}>
            <b>price unknown</b>
          </td>
        ) : (
          <>
            <td data-label="packs">
              {line.packs.map(pack => (
                <span class="nb" key={`${pack.supplier} ${pack.amount}`}>
                  {pack.count} × {numberText(pack.amount, 3, 1).replace(/\.0+$/, '')} {pack.unit}{' '}
                </span>
              ))}
            </td>
            <td class="n">
              <span data-mark={line.packs.length > 0 ? priceMarked(line.packs[0]!.priceFrom).mark : 'reckoned'}>
                {bareMoney(line.costMinor)}
                {marksOfPacks(line.packs).map(of => (
                  <MarkSign of={of} key={`${of.mark}${of.source}`} />
                ))}
              </span>
            </td>
          </>
        )}
      </tr>
      <WorkingRow name={name} span={6} />
      {[...line.notes, ...(spared === null ? [] : [reservePackText(spared, packs?.currency ?? 'EUR')])].map(note => (
        <tr class="in" key={note}>
          <td colSpan={6} class="s soft under">
            {note}
          </td>
        </tr>
      ))}
    </>
  )
}

function MadeUpNotes({ lines }: { readonly lines: readonly ShoppingLine[] }) {
  const made = lines.filter(line => line.madeUp !== null)
  if (made.length === 0) return null
  return (
    <div>
      <h3>Made up on the bench</h3>
      {made.map(line => (
        <p class="s" key={line.material}>
          <b>
            <Name text={nameOf(line.material)} />
          </b>
          : {line.madeUp?.how}
        </p>
      ))}
    </div>
  )
}
