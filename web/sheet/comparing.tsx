import { type Axis, axes, type Choosing } from '../../core/plan/choosing.ts'
import { axisWords } from '../../core/report/list-end.ts'
import { choosing } from '../state/store.ts'

const mostAxes = 4

interface ComparingProps {
  readonly set: (patch: Partial<Choosing>) => void
}

/** What ways are compared by at once, how far apart they are to be, and whether the best is to be proven. */
export function Comparing({ set }: ComparingProps) {
  const { unbeaten, apart, prove, by } = choosing.value
  const turn = (axis: Axis): void =>
    set({
      unbeaten: unbeaten.includes(axis) ? unbeaten.filter(one => one !== axis) : axes.filter(one => one === axis || unbeaten.includes(one)),
    })
  return (
    <>
      <fieldset class="line">
        <legend>Unbeaten on</legend>
        <div>
          {axes.map(axis => (
            <label class="dot-choice" key={axis}>
              <input
                type="checkbox"
                checked={unbeaten.includes(axis)}
                disabled={!unbeaten.includes(axis) && unbeaten.length >= mostAxes}
                onChange={() => turn(axis)}
              />
              {axisWords[axis]}
            </label>
          ))}
          <span class="s soft">
            {unbeaten.length < 2 ? 'Choose two to four; the ways that no other beats on all of them are then marked.' : 'At most four.'}
          </span>
        </div>
      </fieldset>
      <label class="line">
        <span>Apart</span>
        <select class="blank" value={apart} onChange={event => set({ apart: Number(event.currentTarget.value) })}>
          <option value={1}>all ways</option>
          {[2, 3, 4, 5].map(steps => (
            <option value={steps} key={steps}>
              only ways at least {steps} steps different from those before
            </option>
          ))}
        </select>
      </label>
      {(by === 'steps' || by === 'hands-on') && (
        <label class="line">
          <span>Proof</span>
          <span class="dot-choice">
            <input type="checkbox" checked={prove} onChange={event => set({ prove: event.currentTarget.checked })} />
            have the first proven the best, which may take seconds
          </span>
        </label>
      )}
    </>
  )
}
