import type { ComponentChildren } from 'preact'
import { numberText } from '../../core/quantity/print.ts'
import { Problems } from '../parts/problem.tsx'
import { Formula, Name, Unknown } from '../parts/words.tsx'
import { HazardFields } from './hazard-fields.tsx'
import { knownOptions } from './known-options.ts'
import { mayBeSame } from './material-draft.ts'
import type { TypedMaterial } from './material-typed.ts'
import { isFormSaid, type NewMaterial, news, saidOf, sayOfStructure, takeForHeld } from './new-structures.ts'
import { sameness } from './other-form.ts'
import { Choice, Drawn, TextField } from './parts.tsx'
import { queue } from './reactions.ts'

/** The structures of a file that the library does not hold, as they would be added with the reactions; each may be named. */
export function NewStructureList() {
  const { all, problems } = news.value
  if (all.length + problems.length === 0) return null
  return (
    <section aria-label="New materials">
      <h3>{all.length === 1 ? 'One new material will be added with them' : `${all.length} new materials will be added with them`}</h3>
      <p class="s soft">
        The library does not hold these structures. They are taken over together with the reactions that name them, or not at all.
      </p>
      <Problems of={problems} />
      {all.map(one => (
        <NewOne of={one} key={one.told.structures[0]} />
      ))}
    </section>
  )
}

function NewOne({ of: { told, lacking } }: { readonly of: NewMaterial }) {
  const [first = ''] = told.structures
  // As it stands now, whatever was asked about it last.
  const typed = saidOf(queue.value ?? {}, first)
  const wrong = (field: string): string | null => lacking.find(one => one.field === field)?.wrong ?? null
  const { material } = told
  const isLiquid = typed.form === 'liquid'
  return (
    <div class="entry-row new-structure">
      <div class="read">
        <Drawn depiction={told.depiction} name={material.name} />
        <p>
          {material.formula === undefined ? <Unknown /> : <Formula text={material.formula} />}
          {told.molarMass !== null && <>, {numberText(told.molarMass, 5)} g/mol</>}
        </p>
        <p class="s mono">{told.structures.join(' or ')}</p>
        <p class="s">
          {told.regulated.length === 0
            ? 'On none of the lists searched; schedules of controlled drugs are not among them.'
            : told.regulated.map(one => `§ ${one.list}, ${one.category}: ${one.reason}`).join('; ')}
        </p>
        <Problems of={told.problems} />
      </div>
      <div class="fields">
        <TextField
          label={material.formula === undefined ? 'Name' : `Name (${material.formula})`}
          help="As your bench calls it. Left empty it is called by its formula."
          value={typed.name}
          placeholder={material.name}
          wrong={wrong('name')}
          onText={name => sayOfStructure(told, { name })}
        />
        <TextField
          label="CAS number"
          help="From the bottle; hazards are found by it or by the name. May stay open."
          value={typed.cas}
          wrong={wrong('cas')}
          onText={cas => sayOfStructure(told, { cas })}
        />
        <Choice
          label="At the bench it is"
          help="A structure does not tell."
          value={isFormSaid(queue.value ?? {}, told.structures) ? typed.form : ''}
          options={[
            ['', 'say which'],
            ['solid', 'a solid'],
            ['liquid', 'a liquid'],
            ['gas', 'a gas'],
          ]}
          onChoose={form => form !== '' && sayOfStructure(told, { form })}
        />
        {isLiquid && (
          <TextField
            label="Density, g/mL"
            help="At room temperature. Without it volumes cannot be turned into grams."
            value={typed.density}
            wrong={wrong('density')}
            onText={density => sayOfStructure(told, { density })}
          />
        )}
        {isLiquid && typed.density.trim() !== '' && <DensityFrom typed={typed} told={told} />}
        {told.matches
          .filter(one => !one.named && (mayBeSame(one) || one.form !== null))
          .map(one => (
            <p key={one.id}>
              Is it{' '}
              <b>
                <Name text={one.name} />
              </b>
              ?<span class="soft"> {sameness(one)}.</span>{' '}
              <button type="button" class="do" onClick={() => takeForHeld(told, one.id)}>
                It is this one
              </button>{' '}
              {mayBeSame(one) && (
                <button
                  type="button"
                  class="do"
                  aria-pressed={typed.apartFrom.includes(one.id)}
                  onClick={() =>
                    sayOfStructure(told, {
                      apartFrom: typed.apartFrom.includes(one.id)
                        ? typed.apartFrom.filter(id => id !== one.id)
                        : [...typed.apartFrom, one.id],
                    })
                  }
                >
                  {typed.apartFrom.includes(one.id) ? 'Mine is another: said' : 'Mine is another'}
                </button>
              )}
            </p>
          ))}
        <HazardsOf typed={typed} told={told} name={first} />
        {lacking.length > 0 && <p class="wrong">Still to be said: {lacking.map(one => one.what).join('; ')}.</p>}
      </div>
    </div>
  )
}

type Of = Pick<NewMaterial, 'typed' | 'told'>

/** By whose word the density stands. */
const DensityFrom = ({ typed, told }: Of) => (
  <>
    <Choice label="The density is" value={typed.known} options={knownOptions} onChoose={known => sayOfStructure(told, { known })} />
    <TextField label="Source" value={typed.source} onText={source => sayOfStructure(told, { source })} />
  </>
)

/** Hazards of the tables, which wait for a yes; those of its data sheet; else unknown. */
function HazardsOf({ typed, told, name }: Of & { readonly name: string }) {
  const found = told.withHazards?.hazards
  const row = told.record
  const choice = (hazards: TypedMaterial['hazards'], words: ComponentChildren) => (
    <label class="dot-choice">
      <input type="radio" name={`hazards ${name}`} checked={typed.hazards === hazards} onChange={() => sayOfStructure(told, { hazards })} />
      <span>{words}</span>
    </label>
  )
  return (
    <fieldset>
      <legend>
        <b>Hazards</b>
      </legend>
      {found !== undefined && row !== null
        ? choice(
            'tables',
            <>
              confirm {found.codes.length === 0 ? 'none assigned' : found.codes.join(', ')} ({found.signalWord}) of the row “{row.name}”
              {row.cas === null ? '' : `, CAS ${row.cas}`}; {found.from ?? 'remembered'}
            </>,
          )
        : null}
      {choice('typed', 'enter them from its safety data sheet')}
      {choice(
        'unknown',
        found === undefined ? (
          <>
            <Unknown>unknown until entered, which is not the same as safe</Unknown>: the tables hold no row of this name or CAS number
          </>
        ) : (
          'leave them unknown, which is not the same as safe'
        ),
      )}
      {typed.hazards === 'typed' && <HazardFields typed={typed} onType={patch => sayOfStructure(told, patch)} />}
    </fieldset>
  )
}
