import { Amount } from './amount.tsx'
import { Become } from './become.tsx'
import { Have } from './have.tsx'
import { Hurt } from './hurt.tsx'
import { Log } from './log.tsx'
import { Need } from './need.tsx'
import { TakeAway } from './take-away.tsx'
import { Way } from './way.tsx'

/** The seven questions, always in this order; folded, their headings are the plan. */
export const Sheet = () => (
  <section class="sheet" aria-label="The seven questions">
    <Have />
    <Become />
    <Way />
    <Amount />
    <Need />
    <Hurt />
    <Log />
    <TakeAway />
  </section>
)
