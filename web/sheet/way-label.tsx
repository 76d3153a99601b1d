import { Runs } from '../parts/runs.tsx'
import { mostTelling, wayItems } from './way-words.ts'

/** A way by its telling reagents, one a line in the head of a column. */
export const WayLabel = ({ steps }: { readonly steps: readonly string[] }) => (
  <>
    {wayItems(steps).map((item, at) => (
      <span class="way-item" key={at}>
        {at > 0 && <span class="way-sep">, </span>}
        <Runs of={item} />
      </span>
    ))}
    {steps.length > mostTelling && <span class="way-item soft"> and {steps.length - mostTelling} more</span>}
  </>
)
