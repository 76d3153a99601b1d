import type { Material } from '../../core/library/material.ts'
import { trustInHazards } from '../../core/library/trust.ts'
import type { Identified } from './api.ts'
import { HazardFields } from './hazard-fields.tsx'
import { setMaterial, typedMaterial } from './material-draft.ts'

/** Where its hazards come from: a row of the tables, to be confirmed; the data sheet; or nowhere, which is unknown. */
export function Hazards({ told }: { readonly told: Identified }) {
  const typed = typedMaterial.value
  return (
    <>
      <fieldset>
        <legend>
          <b>Hazards</b>
        </legend>
        {told.withHazards?.hazards !== undefined && told.record !== null && (
          <label class="dot-choice">
            <input type="radio" name="hazards" checked={typed.hazards === 'tables'} onChange={() => setMaterial({ hazards: 'tables' })} />
            <span>
              take over {told.withHazards.hazards.codes.length === 0 ? 'none assigned' : told.withHazards.hazards.codes.join(', ')} (
              {told.withHazards.hazards.signalWord}) from the tables, row “{told.record.name}”
              {told.record.cas === null ? '' : `, CAS ${told.record.cas}`}; {told.withHazards.hazards.from ?? 'remembered'}
            </span>
          </label>
        )}
        <label class="dot-choice">
          <input type="radio" name="hazards" checked={typed.hazards === 'typed'} onChange={() => setMaterial({ hazards: 'typed' })} />
          <span>enter them from its safety data sheet</span>
        </label>
        <label class="dot-choice">
          <input type="radio" name="hazards" checked={typed.hazards === 'unknown'} onChange={() => setMaterial({ hazards: 'unknown' })} />
          <span>{asItIs(typed.over)}</span>
        </label>
      </fieldset>
      {typed.hazards === 'tables' && told.withHazards !== null && (
        <ul class="s soft">
          {told.withHazards.sources.map(source => (
            <li key={`${source.for} ${source.citation}`}>
              {source.for === undefined ? '' : `${source.for}: `}
              {source.citation}
              {source.checked ? '' : ' (remembered)'}
            </li>
          ))}
        </ul>
      )}
      {typed.hazards === 'typed' && <HazardFields typed={typed} onType={setMaterial} />}
    </>
  )
}

/** What becomes of the hazards where none are taken over and none entered. */
function asItIs(over: Material | null): string {
  const trust = over === null ? 'unknown' : trustInHazards(over)
  if (over?.hazards === undefined || trust === 'unknown') return 'leave them unknown, which is not the same as safe'
  const { codes, signalWord, from } = over.hazards
  return `leave them as they are: ${codes.length === 0 ? 'none assigned' : codes.join(', ')} (${signalWord}), ${trust === 'remembered' ? 'remembered' : from}`
}
