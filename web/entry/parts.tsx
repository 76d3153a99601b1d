import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import type { Depiction } from '../../core/chemistry/drawing.ts'
import type { RecordDifference } from '../../core/library/differences.ts'
import { fewerHazards, losesHazards } from '../../core/library/hazards-lost.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { marksOf } from '../map/depict/svg-of.ts'
import { markNode } from '../map/scheme/scheme-svg.tsx'
import { Problems, Triangle } from '../parts/problem.tsx'
import { Formula, Name } from '../parts/words.tsx'
import { own, ownProblems, undoOwn } from './own.ts'

interface FieldProps {
  readonly label: string
  /** Absent where the label and what stands around it say all. */
  readonly help?: ComponentChildren
  /** Ids of help that stands elsewhere: for fields that come again and again. */
  readonly helpAt?: string
  /** What is wrong with what stands in it, and how to write it; null = nothing. */
  readonly wrong?: string | null
  /** By which what is still to be said leads here. */
  readonly field?: string
  readonly class?: string
}

export interface FieldIds {
  readonly id: string
  readonly 'aria-describedby'?: string
  readonly 'aria-invalid'?: boolean
}

/** A field with its help under it, and with what is wrong in it; both are read out with it. */
export function Field({
  label,
  help,
  helpAt,
  wrong = null,
  field,
  children,
  class: extra = '',
}: FieldProps & { readonly children: (ids: FieldIds) => ComponentChildren }) {
  const id = useId()
  const told = [help === undefined ? helpAt : `${id}-help`, wrong === null ? undefined : `${id}-wrong`].filter(one => one !== undefined)
  return (
    <div class={`field entry-field ${extra}`} data-field={field}>
      <label for={id}>{label}</label>
      {children({
        id,
        ...(told.length === 0 ? {} : { 'aria-describedby': told.join(' ') }),
        ...(wrong === null ? {} : { 'aria-invalid': true }),
      })}
      {wrong !== null && (
        <p class="s wrong" id={`${id}-wrong`} role="status">
          {wrong}
        </p>
      )}
      {help !== undefined && (
        <p class="s soft help" id={`${id}-help`}>
          {help}
        </p>
      )}
    </div>
  )
}

export function TextField({
  value,
  placeholder,
  invalid = false,
  onText,
  ...field
}: FieldProps & {
  readonly value: string
  readonly placeholder?: string | undefined
  /** Marked without a word of its own: what stands beside says it. */
  readonly invalid?: boolean
  readonly onText: (text: string) => void
}) {
  return (
    <Field {...field}>
      {ids => (
        <input
          {...ids}
          class="blank"
          type="text"
          autocomplete="off"
          spellcheck={false}
          value={value}
          placeholder={placeholder}
          aria-invalid={ids['aria-invalid'] ?? invalid}
          onInput={event => onText(event.currentTarget.value)}
        />
      )}
    </Field>
  )
}

export function Choice<V extends string>({
  value,
  options,
  onChoose,
  ...field
}: FieldProps & {
  readonly value: V
  readonly options: readonly (readonly [V, string])[]
  readonly onChoose: (value: V) => void
}) {
  return (
    <Field {...field}>
      {ids => (
        <select {...ids} class="blank" value={value} onChange={event => onChoose(event.currentTarget.value as V)}>
          {options.map(([option, words]) => (
            <option value={option} key={option}>
              {words}
            </option>
          ))}
        </select>
      )}
    </Field>
  )
}

/** A compound as it would stand on the map. */
export function Drawn({ depiction, name }: { readonly depiction: Depiction; readonly name: string }) {
  if (depiction.kind === 'words') return null
  if (depiction.kind === 'formula') return <Formula text={depiction.formula} />
  const { w, h } = depiction.drawing
  return (
    <svg class="structure" width={w} height={h} viewBox={`${-w / 2} ${-h / 2} ${w} ${h}`} role="img" aria-label={`structure of ${name}`}>
      {marksOf(depiction.drawing).map((mark, at) => markNode(mark, at))}
    </svg>
  )
}

const changeWords: Readonly<Record<RecordDifference['change'], string>> = {
  added: 'would be added',
  overrides: 'would stand in place of the bundled one, which stays as it is',
  changed: 'would be changed',
  same: 'is there already, the same',
  removed: 'would be taken out',
}

/**
 * What a save would do, record by record.
 *
 * @param refused  what keeps it from being saved: the records named there are marked
 * @param blocked  something else keeps it from being saved
 * @param stands   it has been saved
 */
export function ChangeRows({
  rows,
  refused = [],
  blocked = false,
  stands = false,
}: {
  readonly rows: readonly RecordDifference[]
  readonly refused?: readonly Problem[]
  readonly blocked?: boolean
  readonly stands?: boolean
}) {
  const named = new Set(refused.flatMap(problem => problem.where))
  // A step may be called what its product is called.
  const hasBoth = new Set(rows.map(row => row.list)).size > 1
  return (
    <ul class="rows">
      {rows.map(row => (
        <li key={`${row.list} ${row.id}`}>
          <b>
            <Name text={row.name} />
          </b>{' '}
          {hasBoth && (row.list === 'materials' ? 'as a material ' : 'as a step ')}
          {named.has(row.id)
            ? 'is refused'
            : stands
              ? 'stands in place of the bundled one, which stays as it is'
              : `${changeWords[row.change]}${(blocked || refused.length > 0) && row.change !== 'same' ? ', once what is refused is mended' : ''}`}
          .
          {losesHazards(row) && (
            <p class="wrong">
              <Triangle /> Its hazards become unknown: no plan would warn of them any more.
            </p>
          )}
          <FewerHazards of={row} />
          {row.fields.length > 0 && (
            <ul class="s soft">
              {row.fields.map(field => (
                <li key={field.key}>{field.text}</li>
              ))}
            </ul>
          )}
        </li>
      ))}
    </ul>
  )
}

/** A known hazard that a record tells no more. */
function FewerHazards({ of }: { readonly of: RecordDifference }) {
  const fewer = fewerHazards(of)
  if (fewer === null) return null
  return (
    <p class="wrong">
      <Triangle /> {fewer} No plan would warn of it any more.
    </p>
  )
}

/** The saves so far and the way back. */
export function History() {
  const stands = own.value
  if (stands === null) return <Problems of={ownProblems.value} />
  const undone = new Set(stands.history.map(one => one.undoes))
  const last = stands.history.find(one => one.undoes === null && !undone.has(one.version))
  return (
    <section>
      <h2>Saved here</h2>
      <Problems of={ownProblems.value} />
      {stands.broken.length > 0 && (
        <>
          <p>
            <b>The saved records are kept, but left out of planning</b>: the library beneath them has changed.
          </p>
          <Problems of={stands.broken} />
        </>
      )}
      <p>
        {stands.materials.length} of your materials, {stands.transformations.length} of your transformations, {stands.overrides.length} in
        place of bundled ones.
      </p>
      {last !== undefined && (
        <p class="dos">
          <button type="button" class="do" onClick={() => void undoOwn()}>
            Take back “{last.what}”
          </button>
        </p>
      )}
      {stands.history.length > 0 && (
        <details>
          <summary class="do">{stands.history.length === 1 ? 'The one save' : `All ${stands.history.length} saves`}</summary>
          <ul class="rows s">
            {stands.history.map(one => (
              <li key={one.version} class={undone.has(one.version) || one.undoes !== null ? 'alt' : ''}>
                version {one.version}, {one.savedAt.slice(0, 10)}: {one.what}
                {undone.has(one.version) ? ' (taken back)' : ''}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}
