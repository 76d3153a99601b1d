import { counted, listed } from '../core/report/words.ts'
import { Triangle } from './parts/problem.tsx'
import { WaysOutOf } from './sheet/step-unknown.tsx'
import { ofPlanAlone } from './state/facts-asked.ts'
import { facts } from './state/facts-here.ts'
import { nameOf } from './state/names.ts'
import { fileOfPlan } from './state/plan-file.ts'
import { sheet } from './state/store.ts'
import { NotFetched, useTaking } from './taking-records.tsx'

/** What the plan brings along and the library here does not hold, with the way to take it over; stands until that is settled. */
export function RecordsBrought() {
  const { steps, materials } = ofPlanAlone.value
  const { shown, failed, look } = useTaking(() => fileOfPlan(sheet.peek(), facts.peek()))
  if (shown === null && steps.length + materials.length === 0) return null
  return (
    <div class="trouble">
      {shown ?? (
        <div class="problem" role="status">
          <Triangle />
          <div>
            <b>
              Your library does not hold {howMany(steps.length, materials.length)} of this plan; the plan brings {theyAre(steps, materials)}
            </b>
            <dl>
              <dt>where</dt>
              <dd>
                <Names of={[...steps.map(id => facts.value.library.transformations.get(id)?.name ?? id), ...materials.map(nameOf)]} />
              </dd>
              <dt>why</dt>
              <dd>This plan reckons with its own records; other plans here do not know them.</dd>
              <dt>cure</dt>
              <dd>
                {failed && <NotFetched />}
                <div class="dos">
                  <button type="button" class="do" onClick={look}>
                    Take these records into your library
                  </button>
                  {steps.length > 0 && <WaysOutOf steps={steps} />}
                </div>
              </dd>
            </dl>
          </div>
        </div>
      )}
    </div>
  )
}

const howMany = (steps: number, materials: number): string =>
  listed([...(steps > 0 ? [counted(steps, 'step')] : []), ...(materials > 0 ? [counted(materials, 'material')] : [])])

const theyAre = (steps: readonly string[], materials: readonly string[]): string => (steps.length + materials.length === 1 ? 'it' : 'them')

/** So many names are told at once. */
const toldAtOnce = 4

const Names = ({ of }: { readonly of: readonly string[] }) =>
  of.length <= toldAtOnce ? (
    <span>{of.join('; ')}</span>
  ) : (
    <details class="more-of">
      <summary>
        {of.slice(0, toldAtOnce - 1).join('; ')}; {counted(of.length - toldAtOnce + 1, 'more', 'more')}
      </summary>
      <p>{of.slice(toldAtOnce - 1).join('; ')}</p>
    </details>
  )
