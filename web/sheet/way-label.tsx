import { capital, listed } from '../../core/report/words.ts'
import { conditionsOf } from '../map/conditions.ts'
import type { Item } from '../map/scheme/types.ts'
import { Runs } from '../parts/runs.tsx'
import { wayName } from '../state/names.ts'
import { facts } from '../state/questions.ts'

const most = 2

/** The steps by which a way is told from the others, as a chemist would say them: reagent and solvent. */
export function wayItems(steps: readonly string[]): readonly Item[] {
  const { library } = facts.value
  return steps.slice(0, most).flatMap(id => {
    const transformation = library.transformations.get(id)
    if (transformation === undefined) return [[{ t: wayName(id) }]]
    const brief = conditionsOf(library, transformation, new Set([transformation.limiting])).brief
    return brief.length > 0 ? [brief[0]!] : [[{ t: wayName(id) }]]
  })
}

/** A way in a sentence: what its names say after "A to B," or, where they say nothing, its telling reagents. */
export function WayWords({ steps, start = false }: { readonly steps: readonly string[]; readonly start?: boolean }) {
  const names = steps.map(id => [id, wayName(id)] as const)
  const told = names.filter(([id, name]) => name !== (facts.value.library.transformations.get(id)?.name ?? ''))
  if (told.length === 0) return <WayLabel steps={steps} />
  const text = listed(told.slice(0, most).map(([, name]) => name))
  return <>{start ? capital(text) : text}</>
}

/** A way by its telling reagents, one a line. */
export const WayLabel = ({ steps }: { readonly steps: readonly string[] }) => (
  <>
    {wayItems(steps).map((item, at) => (
      <span class="way-item" key={at}>
        <Runs of={item} />
      </span>
    ))}
    {steps.length > most && <span class="way-item soft">and {steps.length - most} more</span>}
  </>
)
