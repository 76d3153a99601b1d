import { useState } from 'preact/hooks'
import { measured } from '../../core/library/reference-charge.ts'
import { inBase } from '../../core/quantity/convert.ts'
import type { Quantity } from '../../core/quantity/parse.ts'
import { massText, noBreakSpace, numberText } from '../../core/quantity/print.ts'
import { haveAnswer } from '../../core/report/answers.ts'
import { capital, counted } from '../../core/report/words.ts'
import type { ShelfItem } from '../../core/shopping/shelf.ts'
import type { MaterialHit } from '../api/replies.ts'
import { mapName } from '../map/map-name.ts'
import { AmountField } from '../parts/amount-field.tsx'
import { readHave } from '../parts/have-text.ts'
import { MaterialBox } from '../parts/material-box.tsx'
import { Problems } from '../parts/problem.tsx'
import { Clauses, Name, Unknown } from '../parts/words.tsx'
import { bringFacts } from '../state/facts-asked.ts'
import { facts } from '../state/facts-here.ts'
import { materialHere, nameOf } from '../state/names.ts'
import { standing } from '../state/reckoner.ts'
import { nothing } from '../state/sheet-state.ts'
import { change, plan } from '../state/store.ts'
import { Bench } from './bench.tsx'
import { Question } from './question.tsx'
import { ShelfTable } from './stock-tables.tsx'

/** Question 1: what stands on the shelf, what is in hand, what the bench owns. */
export function Have() {
  const { start, shelf } = plan.value
  const clauses =
    start.material !== nothing
      ? haveAnswer(plan.value, id => mapName(nameOf(id)))
      : shelf.length > 0
        ? [`${capital(counted(shelf.length, 'bottle'))} on the shelf;`, 'nothing in hand yet']
        : []
  return (
    <Question
      no={1}
      ask="What have I got?"
      empty={clauses.length === 0}
      answer={clauses.length === 0 ? 'Nothing on the shelf yet' : <Clauses of={clauses} />}
    >
      {() => <HaveBody />}
    </Question>
  )
}

function HaveBody() {
  const { start, shelf } = plan.value
  const { evaluation } = standing.value
  const others = shelf.map((item, at) => ({ item, at })).filter(({ item }) => item.material !== start.material)
  return (
    <>
      <table class="t">
        <thead>
          <tr>
            <th>On the shelf</th>
            <th class="n">amount</th>
            <th class="n">assay</th>
            <th class="n">
              <span class="unseen">take off</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {start.material !== '' && (
            <tr>
              <th scope="row">
                <Name text={nameOf(start.material)} />, the start
              </th>
              <td class="n">
                <StartAmount />
              </td>
              <td class="n soft">{assayText(shelf.find(item => item.material === start.material))}</td>
              <td />
            </tr>
          )}
          {others.map(({ item, at }) => (
            <Bottle item={item} at={at} key={`${item.material} ${at}`} />
          ))}
        </tbody>
      </table>
      {evaluation !== null && evaluation.start.leftG > 0.005 && evaluation.start.haveG !== null && (
        <p class="s soft">
          The goals take {massText(evaluation.start.massG)}; {massText(evaluation.start.leftG)} stay.
        </p>
      )}
      <AddBottle />
      <ShelfTable />
      <ChooseStart />
      <Bench />
    </>
  )
}

const assayText = (item: ShelfItem | undefined): string => (item?.assay === undefined ? '' : asWritten(item.assay * 100, '%'))

/** What is in hand, in g: a volume is turned into g by the material's density. */
export function StartAmount({ class: extra = 'bare n' }: { readonly class?: string }) {
  const { start } = plan.value
  const [wrong, setWrong] = useState<string | null>(null)
  return (
    <>
      <AmountField
        text={start.massG === null ? '' : massText(start.massG)}
        label={`amount of ${nameOf(start.material)} in hand`}
        dimensions={['mass', 'volume', 'amount']}
        mayBeEmpty
        class={extra}
        onWritten={quantity => {
          const massG = quantity === null ? null : massOf(start.material, quantity)
          setWrong(quantity !== null && massG === null ? 'The library has no density for this; weigh it and give grams.' : null)
          if (quantity === null || massG !== null) change({ do: 'have', massG })
        }}
      />
      {start.massG === null && <span class="s soft">as needed</span>}
      {wrong !== null && <span class="s soft">{wrong}</span>}
    </>
  )
}

/** Grams of so much of a material; null where the library cannot tell. */
export function massOf(id: string, quantity: Quantity): number | null {
  const material = materialHere(id)
  const base = inBase(quantity)
  if (quantity.unit === 'g' || quantity.unit === 'kg' || quantity.unit === 'mg' || quantity.unit === 'µg') return base
  if (material === null) return null
  const unit = quantity.unit === 'mol' || quantity.unit === 'mmol' ? 'mol' : 'mL'
  return measured(facts.value.library, material, base, unit).massG
}

/** The reader's own figure, without zeros that nobody wrote. */
const asWritten = (value: number, unit: string): string =>
  `${numberText(value, 6, 4)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '')}${noBreakSpace}${unit}`

const shelfUnits = ['g', 'kg', 'mg', 'mL', 'L', 'mol', 'mmol'] as const

/** A quantity as a shelf file holds it. */
function shelfAmount(quantity: Quantity): Pick<ShelfItem, 'amount' | 'unit'> {
  const unit = shelfUnits.find(known => known === quantity.unit)
  if (unit !== undefined) return { amount: quantity.value, unit }
  return { amount: inBase(quantity), unit: quantity.unit === 'µL' ? 'mL' : 'g' }
}

function Bottle({ item, at }: { readonly item: ShelfItem; readonly at: number }) {
  const name = nameOf(item.material)
  return (
    <tr>
      <th scope="row" class="plain">
        <Name text={name} />
      </th>
      <td class="n">
        <AmountField
          text={asWritten(item.amount, item.unit)}
          label={`amount of ${name} on the shelf`}
          dimensions={['mass', 'volume', 'amount']}
          class="bare n"
          onWritten={quantity => quantity !== null && change({ do: 'put-on-shelf', at, item: { ...item, ...shelfAmount(quantity) } })}
        />
      </td>
      <td class="n">
        <AmountField
          text={assayText(item)}
          label={`assay of ${name}`}
          dimensions={['share']}
          size={6}
          mayBeEmpty
          class="bare n"
          onWritten={quantity => {
            const { assay: _, ...rest } = item
            change({ do: 'put-on-shelf', at, item: quantity === null ? rest : { ...rest, assay: Math.min(1, inBase(quantity)) } })
          }}
        />
      </td>
      <td class="n">
        <button type="button" class="do s" onClick={() => change({ do: 'take-off-shelf', at })}>
          drop<span class="unseen"> {name} from the shelf</span>
        </button>
      </td>
    </tr>
  )
}

function AddBottle() {
  const [text, setText] = useState('')
  const [hit, setHit] = useState<MaterialHit | null>(null)
  const [wrong, setWrong] = useState<readonly import('../../core/problem/problem.ts').Problem[]>([])
  const put = (taken: MaterialHit, amount: Quantity): void => {
    void bringFacts([], [taken.id])
    change({ do: 'put-on-shelf', at: null, item: { material: taken.id, ...shelfAmount(amount) } })
    setText('')
    setHit(null)
    setWrong([])
  }
  const take = (taken: MaterialHit): void => {
    const { amount } = readHave(text)
    if (amount !== null) {
      put(taken, amount)
      return
    }
    setHit(taken)
    setText(taken.name)
  }
  return (
    <div class="line-form">
      <MaterialBox
        label="Add a bottle"
        placeholder="250 mL ethanol"
        text={text}
        wordsOf={written => readHave(written).name}
        onText={written => {
          setText(written)
          setHit(null)
        }}
        onTake={take}
      />
      {hit !== null && (
        <span class="field">
          <span>amount</span>
          <AmountField
            text=""
            label={`amount of ${hit.name}`}
            dimensions={['mass', 'volume', 'amount']}
            onWritten={amount => amount !== null && put(hit, amount)}
          />
        </span>
      )}
      <Problems of={wrong} />
    </div>
  )
}

/** Another start: from the shelf or from the whole library. */
function ChooseStart() {
  const { start, shelf } = plan.value
  const [text, setText] = useState('')
  const begin = (material: string, massG: number | null): void => {
    void bringFacts([], [material])
    change({ do: 'start', material, massG })
    setText('')
  }
  const solid = shelf.filter(item => item.material !== start.material && materialHere(item.material)?.kind === 'compound')
  return (
    <details class="more-of">
      <summary>Start from something else</summary>
      <MaterialBox
        label="I have"
        placeholder="24 g benzoin"
        text={text}
        wordsOf={written => readHave(written).name}
        onText={setText}
        onTake={hit => {
          const { amount } = readHave(text)
          begin(hit.id, amount === null ? null : massOf(hit.id, amount))
        }}
      />
      {solid.length > 0 && (
        <p class="dos s">
          {solid.slice(0, 6).map(item => (
            <button
              type="button"
              class="do"
              key={item.material}
              onClick={() => begin(item.material, massOf(item.material, { value: item.amount, unit: item.unit }))}
            >
              <Name text={nameOf(item.material)} />
            </button>
          ))}
        </p>
      )}
      {plan.value.goals.length > 0 && <p class="s soft">Another start clears the goals; Undo brings them back.</p>}
      {start.material === '' && (
        <p class="s soft">
          In hand: <Unknown>nothing yet</Unknown>
        </p>
      )}
    </details>
  )
}
