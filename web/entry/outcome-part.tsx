import { numberText } from '../../core/quantity/print.ts'
import { Name } from '../parts/words.tsx'
import { replaceWriting, write, writing } from './draft.ts'
import { wrongIn } from './drafting.ts'
import { outcomeWords } from './outcome-words.ts'
import { TextField } from './parts.tsx'
import { readingState } from './reading.ts'

/** What came out, and what it gives on bad and good days. */
export function OutcomePart() {
  const { outcome, low, typical, high } = writing.value
  const { reading, fresh } = readingState.value
  const read = reading?.transformation.yieldPercent
  const main = reading?.transformation.mainProduct
  const words = reading === null || !fresh ? null : outcomeWords(outcome, reading)
  const above = reading?.percentYield != null && reading.percentYield > 100
  return (
    <section class="entry-row" aria-label="Yield">
      <div class="fields">
        <TextField
          label="What came out"
          help="Dry and weighed: 46.5 g, a range such as 45-48 g, or a yield such as 74 %."
          field="outcome"
          value={outcome}
          invalid={above}
          wrong={words?.wrong ?? null}
          onText={text => write({ outcome: text })}
        />
        {words !== null && words.offers.length > 0 && (
          <p class="dos">
            {words.offers.map(offer => (
              <button type="button" class="do" key={offer} onClick={() => replaceWriting({ outcome: offer })}>
                {offer}
              </button>
            ))}
          </p>
        )}
        <div class="three">
          <TextField
            label="On a bad day, %"
            help="One run in ten gives less."
            field="low"
            wrong={wrongIn('low')}
            value={low}
            placeholder={read?.low === undefined ? undefined : String(read.low)}
            onText={text => write({ low: text })}
          />
          <TextField
            label="Usually, %"
            help="Half the runs give more."
            field="typical"
            wrong={wrongIn('typical')}
            value={typical}
            placeholder={read === undefined ? undefined : String(read.typical)}
            onText={text => write({ typical: text })}
          />
          <TextField
            label="On a good day, %"
            help="One run in ten gives more."
            field="high"
            wrong={wrongIn('high')}
            value={high}
            placeholder={read?.high === undefined ? undefined : String(read.high)}
            onText={text => write({ high: text })}
          />
        </div>
      </div>
      <div class="read" data-stale={fresh ? undefined : ''}>
        {reading?.theoreticalG != null && (
          <p>
            Theory on what is charged: <b class="nb">{numberText(reading.theoreticalG, 4)} g</b> of{' '}
            <Name text={main === undefined ? (reading.products[0]?.text ?? 'product') : (reading.materials[main]?.name ?? main)} />.
          </p>
        )}
        {reading?.percentYield != null && reading.theoreticalG === null && (
          <p class="soft">
            {numberText(reading.percentYield, 3)} % as the text states it; theory is told once every reactant and the product are settled.
          </p>
        )}
        {reading?.percentYield != null && reading.theoreticalG !== null && (
          <p role="status">
            What came out is <b class="nb">{numberText(reading.percentYield, 3)} %</b> of theory
            {above ? ': more than there can be. Wet, impure or mis-weighed, or another reactant gives out first.' : '.'}
          </p>
        )}
        <p class="s soft">
          A grey figure in a blank is what the text gives, and is taken where you write none. Three figures and not one, because a plan that
          rests on the best day fails on the others.
        </p>
      </div>
    </section>
  )
}
