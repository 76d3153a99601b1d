import { useState } from 'preact/hooks'
import { type Axis, axes } from '../../core/plan/choosing.ts'
import { counted } from '../../core/report/words.ts'
import { MaterialBox } from '../parts/material-box.tsx'
import { Name } from '../parts/words.tsx'
import { bringFacts } from '../state/facts-asked.ts'
import { facts, tables } from '../state/facts-here.ts'
import { nameOf, wayName } from '../state/names.ts'
import { change, choosing, plan } from '../state/store.ts'
import { Comparing } from './comparing.tsx'

const axisWords: Record<Axis, string> = {
  start: 'least start per product',
  yield: 'overall yield on start',
  steps: 'fewest steps',
  cost: 'least cost',
  'hands-on': 'least hands-on time',
  elapsed: 'least elapsed time',
  'mass-intensity': 'least mass in per product',
  hazard: 'gentlest',
}

/** Statements most often kept clear of, gravest first, in the words of the UN GHS; any other may be written. */
const codesOffered = [
  ['H340', 'may cause genetic defects'],
  ['H350', 'may cause cancer'],
  ['H360', 'may damage fertility or the unborn child'],
  ['H300', 'fatal if swallowed'],
  ['H310', 'fatal in contact with skin'],
  ['H330', 'fatal if inhaled'],
  ['H314', 'severe skin burns'],
  ['H334', 'allergy or asthma if inhaled'],
  ['H317', 'allergic skin reaction'],
  ['H224', 'extremely flammable liquid'],
  ['H271', 'strong oxidizer'],
  ['H410', 'very toxic to aquatic life'],
] as const

/** The lists that the tables screen by: full name, by which a material is marked, and the short one. */
function listsKnown(): readonly (readonly [fullName: string, name: string])[] {
  const { regulated } = (tables.value ?? {}) as { readonly regulated?: { readonly lists: readonly { name: string; fullName: string }[] } }
  return (regulated?.lists ?? []).map(list => [list.fullName, list.name])
}

/** What routes are ranked by, what they go through and what they keep clear of. */
export function Choosing() {
  const asked = choosing.value
  const steps = [...new Set(plan.value.goals.flatMap(goal => goal.route.steps.map(step => step.transformation)))]
  const set = (patch: Partial<typeof asked>): void => change({ do: 'choosing', patch })
  const nameOfList = new Map(listsKnown())
  const lists = listsKnown().filter(([fullName]) => !asked.avoidList.includes(fullName))
  return (
    <div class="lines">
      <label class="line">
        <span>Ranked by</span>
        <select class="blank" value={asked.by} onChange={event => set({ by: event.currentTarget.value as Axis })}>
          {axes.map(axis => (
            <option value={axis} key={axis}>
              {axisWords[axis]}
            </option>
          ))}
        </select>
      </label>
      <div class="line">
        <span>Avoid</span>
        <div>
          {asked.avoid.map(id => (
            <Item key={id} name={nameOf(id)} undo="allow" onUndo={() => set({ avoid: asked.avoid.filter(one => one !== id) })} />
          ))}
          {asked.avoidStep.map(id => (
            <Item
              key={id}
              name={`the step “${wayName(id)}”`}
              undo="allow"
              onUndo={() => set({ avoidStep: asked.avoidStep.filter(one => one !== id) })}
            />
          ))}
          {asked.avoidCode.map(code => (
            <Item
              key={code}
              name={`anything with ${code}`}
              undo="allow"
              onUndo={() => set({ avoidCode: asked.avoidCode.filter(one => one !== code) })}
            />
          ))}
          {asked.avoidList.map(list => (
            <Item
              key={list}
              name={`anything on ${nameOfList.get(list) ?? list}`}
              undo="allow"
              onUndo={() => set({ avoidList: asked.avoidList.filter(one => one !== list) })}
            />
          ))}
          <MaterialAdded
            label="a material to avoid, in any role"
            placeholder="a material, in any role"
            onTake={id => set({ avoid: [...new Set([...asked.avoid, id])] })}
          />
          {steps.length > 0 && (
            <Offered
              label="a step to avoid"
              first="a step of this plan"
              options={steps.map(id => [id, wayName(id)])}
              onTake={id => set({ avoidStep: [...new Set([...asked.avoidStep, id])] })}
            />
          )}
          <Offered
            label="a hazard statement to avoid"
            first="a hazard statement"
            options={codesOffered.filter(([code]) => !asked.avoidCode.includes(code)).map(([code, words]) => [code, `${code} ${words}`])}
            onTake={code => set({ avoidCode: [...asked.avoidCode, code] })}
          />
          {lists.length > 0 && (
            <Offered
              label="a regulated list to avoid"
              first="a regulated list"
              options={lists}
              onTake={name => set({ avoidList: [...asked.avoidList, name] })}
            />
          )}
        </div>
      </div>
      <div class="line">
        <span>Through</span>
        <div>
          {asked.mustPass.map(id => (
            <Item key={id} name={nameOf(id)} undo="drop" onUndo={() => set({ mustPass: asked.mustPass.filter(one => one !== id) })} />
          ))}
          <MaterialAdded
            label="a compound that every way goes through"
            placeholder="any compound"
            onTake={id => set({ mustPass: [...new Set([...asked.mustPass, id])] })}
          />
        </div>
      </div>
      <label class="line">
        <span>At most</span>
        <select
          class="blank"
          value={asked.maxSteps ?? ''}
          onChange={event => set({ maxSteps: event.currentTarget.value === '' ? null : Number(event.currentTarget.value) })}
        >
          <option value="">as many steps as it takes</option>
          {[1, 2, 3, 4, 5, 6, 8, 10].map(count => (
            <option value={count} key={count}>
              {counted(count, 'step')}
            </option>
          ))}
        </select>
      </label>
      <label class="line">
        <span>Make or buy</span>
        <span class="dot-choice">
          <input
            type="checkbox"
            checked={asked.make.includes('all')}
            onChange={event =>
              set({ make: event.currentTarget.checked ? [...asked.make, 'all'] : asked.make.filter(one => one !== 'all') })
            }
          />
          also ways that make what could be bought
        </span>
      </label>
      <label class="line">
        <span>Equipment</span>
        <span class="dot-choice">
          <input type="checkbox" checked={asked.ownedOnly} onChange={event => set({ ownedOnly: event.currentTarget.checked })} />
          only what the bench owns
        </span>
      </label>
      <label class="line">
        <span>How sure</span>
        <span class="dot-choice">
          <input type="checkbox" checked={asked.seenOnly} onChange={event => set({ seenOnly: event.currentTarget.checked })} />
          only yields seen in a source or at your bench
        </span>
      </label>
      <Comparing set={set} />
    </div>
  )
}

interface ItemProps {
  readonly name: string
  /** The word that takes it back. */
  readonly undo: string
  readonly onUndo: () => void
}

const Item = ({ name, undo, onUndo }: ItemProps) => (
  <span class="item">
    <Name text={name} />{' '}
    <button type="button" class="do s" onClick={onUndo}>
      {undo}
      <span class="unseen"> {name}</span>
    </button>
  </span>
)

interface OfferedProps {
  readonly label: string
  readonly first: string
  readonly options: readonly (readonly [value: string, words: string])[]
  readonly onTake: (value: string) => void
}

/** A list from which one is taken at a time; what is taken stands above it. */
const Offered = ({ label, first, options, onTake }: OfferedProps) => (
  <select
    class="blank"
    aria-label={label}
    value=""
    onChange={event => {
      const { value } = event.currentTarget
      event.currentTarget.value = ''
      if (value !== '') onTake(value)
    }}
  >
    <option value="">{first}</option>
    {options.map(([value, words]) => (
      <option value={value} key={value}>
        {words}
      </option>
    ))}
  </select>
)

interface AddedProps {
  readonly label: string
  readonly placeholder: string
  readonly onTake: (id: string) => void
}

function MaterialAdded({ label, placeholder, onTake }: AddedProps) {
  const [text, setText] = useState('')
  return (
    <MaterialBox
      label={label}
      labelSeen={false}
      placeholder={placeholder}
      text={text}
      onText={setText}
      onTake={hit => {
        // Its name is to be shown, though no step of the plan may use it.
        if (!facts.value.library.materials.has(hit.id)) void bringFacts([], [hit.id])
        onTake(hit.id)
        setText('')
      }}
    />
  )
}
