import { useEffect, useState } from 'preact/hooks'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import { massText } from '../../core/quantity/print.ts'
import { quantityWords } from '../../core/report/amounts.ts'
import { shoppingNotesOf } from '../../core/report/shopping-notes.ts'
import { listed } from '../../core/report/words.ts'
import type { LeftOver } from '../../core/shopping/next-uses.ts'
import { server } from '../api/client.ts'
import { Name } from '../parts/words.tsx'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { change, plan } from '../state/store.ts'
import { RecoveryRuleFields } from './recovery-rule.tsx'

/** What stands under the shopping list: other baskets, second products gained, left-overs, solvents. */
export function UnderTheList({ evaluation }: { readonly evaluation: Evaluation }) {
  const notes = shoppingNotesOf(facts.value.library, plan.value.settings, evaluation)
  return (
    <>
      <Gained evaluation={evaluation} />
      <details class="more-of">
        <summary>Left over, other baskets, solvents</summary>
        <LeftOvers evaluation={evaluation} />
        <Sentences title="Other baskets for the same needs" of={notes.otherBaskets} />
        <Sentences title="Solvents that could be got back" of={notes.solvents} />
        {notes.solvents.length > 0 && <RecoveryRuleFields />}
      </details>
    </>
  )
}

function Sentences({ title, of }: { readonly title: string; readonly of: readonly string[] }) {
  if (of.length === 0) return null
  return (
    <>
      <h3>{title}</h3>
      <ul class="s">
        {of.map(text => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </>
  )
}

/** Second products, each of which can be moved to the shelf of the plan, where other steps find it. */
function Gained({ evaluation }: { readonly evaluation: Evaluation }) {
  const { shelf } = plan.value
  return (
    <>
      {evaluation.coProducts.map(({ compound, step, expectedG }) => {
        const id = evaluation.steps.find(one => one.number === step)?.transformation
        const at = shelf.findIndex(item => item.material === compound && item.gainedIn !== undefined && item.gainedIn === id)
        return (
          <p class="s" key={`${compound} ${step}`}>
            Gained beside step {step}: {massText(expectedG)} of <Name text={nameOf(compound)} />.{' '}
            {id !== undefined && (
              <button
                type="button"
                class="do"
                onClick={() =>
                  change(
                    at >= 0
                      ? { do: 'take-off-shelf', at }
                      : { do: 'put-on-shelf', at: null, item: { material: compound, amount: expectedG, unit: 'g', gainedIn: id } },
                  )
                }
              >
                {at >= 0 ? 'take it off the shelf' : 'put it on the shelf'}
              </button>
            )}
          </p>
        )
      })}
    </>
  )
}

interface NamedLeftOver extends LeftOver {
  readonly couldServe: readonly (LeftOver['couldServe'][number] & { readonly name?: string })[]
}

/** The page holds only its part of the library, so the server is asked what left-overs could serve. */
function LeftOvers({ evaluation }: { readonly evaluation: Evaluation }) {
  const left = evaluation.shopping
    .filter(line => (line.left.amount ?? 0) > 0)
    .map(({ material, left: amount }) => ({ material, left: amount }))
  const [found, setFound] = useState<readonly NamedLeftOver[]>([])
  const key = JSON.stringify(left)
  useEffect(() => {
    if (left.length === 0) return
    let gone = false
    server
      .leftOvers({
        left,
        compounds: [evaluation.start.compound, ...evaluation.steps.map(step => step.makes)],
        transformations: evaluation.steps.map(step => step.transformation),
      })
      .then(
        reply => {
          if (!gone) setFound(reply.leftOvers)
        },
        // Without the server the amounts still stand.
        () => {},
      )
    return () => {
      gone = true
    }
  }, [key])
  if (left.length === 0) return null
  const uses = (material: string) => (found.find(one => one.material === material)?.couldServe ?? []).map(use => use.name ?? use.makes)
  return (
    <>
      <h3>Left over</h3>
      <ul class="s">
        {left.map(({ material, left: amount }) => (
          <li key={material}>
            {quantityWords(amount)} of <Name text={nameOf(material)} />
            {uses(material).length > 0 && `: could serve ${listed(uses(material))}`}
          </li>
        ))}
      </ul>
    </>
  )
}
