import type { ComponentChildren } from 'preact'
import type { Marked as MarkedFigure } from '../../core/library/mark.ts'
import { minorDigitsOf, moneyText } from '../../core/quantity/money.ts'
import { noBreakSpace } from '../../core/quantity/print.ts'
import { packText, quantityWords } from '../../core/report/amounts.ts'
import { carriageOpen, hasNoPrice } from '../../core/report/basket-gaps.ts'
import { nameIn } from '../../core/report/names.ts'
import { reserveMark } from '../../core/report/plan-figures.ts'
import { marksOfPacks, priceMarked, priceSentence, pricesOf } from '../../core/report/price-words.ts'
import { isRegulated } from '../../core/report/regulated.ts'
import { shoppingNotesOf } from '../../core/report/shopping-notes.ts'
import { shoppingSheetOf } from '../../core/report/shopping-sheet.ts'
import { capital } from '../../core/report/words.ts'
import type { ShoppingLine } from '../../core/shopping/shopping.ts'
import { Marked, MarkSign } from '../parts/mark.tsx'
import { Name, Unknown } from '../parts/words.tsx'
import { LawElsewhere } from './law.tsx'
import { MetricsTable } from './metrics-table.tsx'
import type { PackProps } from './pack-props.ts'
import { Blank, Leaf, Tick } from './parts.tsx'

/** The combined shopping list: price unknown first and spelt out, then supplier by supplier, ruled off twice. */
export function ShoppingPage(props: PackProps) {
  const { library, plan, evaluation } = props
  const { basket } = evaluation
  const sheet = shoppingSheetOf(library, evaluation)
  const under = shoppingNotesOf(library, plan.settings, evaluation)
  const nameOf = nameIn(library)
  const currency = basket?.currency ?? 'EUR'
  const rows = (lines: readonly ShoppingLine[], supplier?: string) =>
    lines.map(line => <BuyRow {...props} line={line} supplier={supplier} currency={currency} key={line.material} />)
  const anyOpen = evaluation.shopping.some(line => line.open || line.atLeast)
  return (
    <Leaf title={<Name text={sheet.title} />} used={[...pricesOf(evaluation).map(one => one.mark), shelfMark.mark, reserveMark(plan).mark]}>
      {sheet.unknown.length > 0 && (
        <BuyTable title="Price unknown" currency={currency}>
          {rows(sheet.unknown)}
        </BuyTable>
      )}
      {sheet.unplaced.length > 0 && (
        <BuyTable title="To buy, supplier open" currency={currency}>
          {rows(sheet.unplaced)}
        </BuyTable>
      )}
      {sheet.suppliers.map(({ order, name, invented, lines }) => (
        <BuyTable
          title={
            <>
              {name} {invented && <i class="soft plain">invented</i>}
            </>
          }
          currency={currency}
          key={order.supplier}
        >
          {rows(lines, order.supplier)}
          <tr class="sum">
            <td />
            <td colSpan={5}>
              carriage {order.carriageUnknown ? 'not stated' : bare(order.carriageMinor, currency)}
              {order.hazardousFeeMinor > 0 && `, hazardous-goods fee ${bare(order.hazardousFeeMinor, currency)}`}
            </td>
            <td class="n">
              {order.carriageUnknown ? (
                <Unknown>unknown</Unknown>
              ) : (
                <Marked of={order.carriageMinor + order.hazardousFeeMinor === 0 ? noFee : priceMarked(order.priceFrom)}>
                  {bare(order.carriageMinor + order.hazardousFeeMinor, currency)}
                </Marked>
              )}
            </td>
            <td />
          </tr>
          <tr>
            <td />
            <td colSpan={5}>
              <b>{order.carriageUnknown ? 'Order, at least' : 'Order'}</b>
            </td>
            <td class="n" data-mark="reckoned">
              <b>{bare(order.totalMinor, currency)}</b>
            </td>
            <td />
          </tr>
        </BuyTable>
      ))}
      {basket !== null && evaluation.shopping.length > 0 && (
        <p class="total" data-mark="reckoned">
          {basket.complete && carriageOpen(basket) === null ? 'Altogether' : 'All that has a price and an amount'}{' '}
          <b class="answer">{hasNoPrice(basket) ? 'no price known' : moneyText(basket.totalMinor ?? 0, currency)}</b>
        </p>
      )}
      {basket === null && <p>No basket was reckoned: packs and prices are left open.</p>}
      {sheet.missing !== null && (
        <p data-mark="reckoned">
          <b>{sheet.missing}</b>
        </p>
      )}
      <p class="s soft">
        {anyOpen && '+ The source gives no amount, or only for a part: at least this much. '}
        Need holds{' '}
        <Marked of={reserveMark(plan)}>
          {Math.round(plan.settings.reserve * 100)}
          {noBreakSpace}%
        </Marked>{' '}
        in reserve. {sheet.suppliers.some(one => one.invented) && 'Prices and suppliers of this example are invented. '}
        {priceSentence(evaluation)} {basket !== null && !basket.proven && 'Not proven to be the cheapest. '}
      </p>
      {sheet.madeUp.length > 0 && (
        <section>
          <h2>Made up at the bench</h2>
          {sheet.madeUp.map(line => (
            <p key={line.material} data-mark="reckoned">
              <Tick /> <b>{capital(nameOf(line.material))}</b>, {quantityWords(line.need)}. {line.madeUp?.how}
            </p>
          ))}
        </section>
      )}
      <LawElsewhere {...props} />
      <div class="two" data-mark="reckoned">
        <Amounts title="From the shelf" rows={sheet.shelf.map(line => [nameOf(line.material), quantityWords(line.shelf)])} />
        <Amounts
          title="Left over"
          rows={sheet.left.map(line => [nameOf(line.material), `${line.open ? 'up to ' : ''}${quantityWords(line.left)}`])}
        />
      </div>
      {under.gap !== null && <p data-mark="reckoned">{under.gap}</p>}
      {under.leftOvers.length > 0 && (
        <section data-mark="reckoned">
          <h2>What is left over could serve</h2>
          {under.leftOvers.map(text => (
            <p class="s" key={text}>
              {text}
            </p>
          ))}
        </section>
      )}
      {[...under.otherBaskets, ...under.solvents].map(text => (
        <p class="s soft" key={text} data-mark="reckoned">
          {text}
        </p>
      ))}
      {sheet.notes.map(note => (
        <p class="s soft" key={note} data-mark="reckoned">
          {note}
        </p>
      ))}
      <MetricsTable evaluation={evaluation} nameOf={nameOf} />
    </Leaf>
  )
}

function BuyTable({
  title,
  currency,
  children,
}: {
  readonly title: ComponentChildren
  readonly currency: string
  readonly children: ComponentChildren
}) {
  return (
    <table class="t buy">
      <caption>{title}</caption>
      <colgroup>
        {['6mm', '46mm', '22mm', '19mm', '22mm', '27mm', '14mm', 'auto'].map((width, at) => (
          <col style={`width:${width}`} key={at} />
        ))}
      </colgroup>
      <thead>
        <tr>
          <th colSpan={2}>material</th>
          <th class="n">need</th>
          <th class="n">
            shelf
            <MarkSign of={shelfMark} />
          </th>
          <th class="n">buy</th>
          <th>packs</th>
          <th class="n">{moneyText(0, currency).split(noBreakSpace)[0]}</th>
          <th>paid, lot</th>
        </tr>
      </thead>
      <tbody>{children}</tbody>
    </table>
  )
}

function BuyRow({
  library,
  evaluation,
  line,
  supplier,
  currency,
}: PackProps & { readonly line: ShoppingLine; readonly supplier: string | undefined; readonly currency: string }) {
  const packs = line.packs.filter(pack => supplier === undefined || pack.supplier === supplier)
  const costMinor = packs.reduce((sum, pack) => sum + pack.count * pack.priceMinor, 0)
  const marked = marksOfPacks(packs)
  const plus = line.open || line.atLeast
  const amount = (text: string) => (plus ? <i>{`${text}${noBreakSpace}+`}</i> : text)
  return (
    <tr>
      <td class="bx">
        <Tick />
      </td>
      <td class="mat">
        <Name text={nameIn(library)(line.material)} />
        {isRegulated(evaluation.hazards, line.material) && ' §'}
        {line.planned && <i class="s soft block">partly planned, not from the source</i>}
      </td>
      <td class="n" data-mark="reckoned">
        {line.need.amount === null ? <i>as needed</i> : amount(quantityWords(line.need))}
      </td>
      <td class="n" data-mark="typed">
        {quantityWords(line.shelf)}
      </td>
      <td class="n" data-mark="reckoned">
        {line.buy.amount === null ? <i>as needed</i> : amount(quantityWords(line.buy))}
      </td>
      <td data-mark="reckoned">
        {packs.length === 0 ? <Blank /> : packs.map(pack => `${pack.count} × ${packText(pack.amount, pack.unit)}`).join(', ')}
      </td>
      <td class="n">
        {packs.length === 0 ? (
          <b>?</b>
        ) : (
          <span data-mark={marked[0]!.mark}>
            {bare(costMinor, currency)}
            {marked.map(of => (
              <MarkSign of={of} key={`${of.mark} ${of.source}`} />
            ))}
          </span>
        )}
      </td>
      <td class="wr">
        <Blank />
      </td>
    </tr>
  )
}

const shelfMark: MarkedFigure = { mark: 'typed', source: 'the shelf of this plan' }

/** Nothing is asked: there is no price whose source could be told. */
const noFee: MarkedFigure = { mark: 'reckoned', source: null }

function Amounts({ title, rows }: { readonly title: string; readonly rows: readonly (readonly [string, string])[] }) {
  if (rows.length === 0) return null
  return (
    <table class="t">
      <caption>{title}</caption>
      <tbody>
        {rows.map(([name, amount]) => (
          <tr key={name}>
            <td>
              <Name text={name} />
            </td>
            <td class="n">{amount}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** A sum without its sign, under a head that has it. */
const bare = (minor: number, currency: string): string => (minor / 10 ** minorDigitsOf(currency)).toFixed(minorDigitsOf(currency))
