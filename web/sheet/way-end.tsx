import { boundText, listEnd, unbeatenText } from '../../core/report/list-end.ts'
import { Name } from '../parts/words.tsx'
import { facts, startCompound } from '../state/facts-here.ts'
import { moreRoutes, routesMore, routesMost, routesTo, stopRoutes, stopUnbeaten, unbeatenTo } from '../state/route-lists.ts'
import { choosing, plan } from '../state/store.ts'
import { LookingLine } from './looking.tsx'

const ways = ['way', 'ways'] as const

/** Under the ways: how the search fares, or whether these are all, how sure their order is, and more on demand. */
export function WayEnd({ target }: { readonly target: string }) {
  const { answer, waiting, looking, stopped } = routesTo(target)
  const { by } = choosing.value
  const between = {
    library: facts.value.library,
    start: startCompound.value,
    target,
    currency: plan.value.packs?.currency ?? null,
  }
  if (waiting)
    return (
      <LookingLine
        looking={looking}
        what={ways}
        bound={looking?.bound == null ? null : boundText(between, by, looking.bound)}
        onStop={() => stopRoutes(target)}
      />
    )
  if (answer === null || answer.routes.length === 0) return null
  const count = answer.routes.length
  const sentences = [...listEnd(between, by, answer, count, stopped), ...unbeatenSentence(target)]
  return (
    <div class="s soft way-end">
      <p>
        <Name text={sentences.join(' ')} />
      </p>
      {!answer.complete && count < routesMost && (
        <button type="button" class="do s" onClick={() => moreRoutes(target)}>
          {stopped ? `Look on, for ${routesMore} more` : `Show ${routesMore} more`}
        </button>
      )}
      <LookingLine looking={unbeatenTo(target).looking} what={ways} done="compared" onStop={() => stopUnbeaten(target)} />
    </div>
  )
}

function unbeatenSentence(target: string): readonly string[] {
  const { answer } = unbeatenTo(target)
  return answer?.unbeaten === undefined
    ? []
    : [unbeatenText(answer.unbeaten.axes, answer.unbeaten.exact, answer.routes.length).replace(/:/, ', marked above:')]
}
