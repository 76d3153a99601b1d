import type { Material } from '../../core/library/material.ts'
import { physicalFigures } from '../../core/library/physical.ts'
import { numberText } from '../../core/quantity/print.ts'
import { Problems } from '../parts/problem.tsx'
import { Formula, Name, Unknown } from '../parts/words.tsx'
import type { Identified } from './api.ts'
import { replaceWriting, writing } from './draft.ts'
import { calledInWriting, mayBeSame, setMaterial, throwAway, typedMaterial } from './material-draft.ts'
import { Hazards } from './material-hazards.tsx'
import { sameness } from './other-form.ts'
import { Drawn } from './parts.tsx'
import { openEntry } from './place.ts'
import { answered } from './record.ts'

/** What follows from what was typed: formula, mass, groups, lists, likely doubles, hazards. */
export function Told({ told }: { readonly told: Identified }) {
  // No button leads round a stop.
  if (told.problems.some(one => one.code === 'stopped')) return <Problems of={told.problems} />
  return (
    <>
      <Problems of={told.problems} />
      <Drawn depiction={told.depiction} name={told.material.name} />
      <table class="t told">
        <tbody>
          {told.material.contains === undefined ? (
            <>
              <tr>
                <th scope="row">formula</th>
                <td>{told.material.formula === undefined ? <Unknown /> : <Formula text={told.material.formula} />}</td>
              </tr>
              <tr>
                <th scope="row">molar mass</th>
                <td>{told.molarMass === null ? <Unknown /> : `${told.molarMass.toFixed(3)} g/mol`}</td>
              </tr>
            </>
          ) : (
            <tr>
              <th scope="row">strength</th>
              <td>{strengthText(told.material.contains)}</td>
            </tr>
          )}
          {physicalFigures(told.material)
            .filter(one => one.figure !== 'strength')
            .map(one => (
              <tr key={one.figure}>
                <th scope="row">{one.figure}</th>
                <td>{one.value}</td>
              </tr>
            ))}
          {/* A record that stands keeps its own. */}
          {typedMaterial.value.over === null && (
            <tr>
              <th scope="row">reactivity groups</th>
              <td>
                {told.groups.length === 0 ? (
                  <Unknown>none found: not the same as harmless</Unknown>
                ) : (
                  told.groups.map(one => one.name).join('; ')
                )}
              </td>
            </tr>
          )}
          <tr>
            <th scope="row">regulated lists</th>
            <td>
              {!told.screened && <Unknown>searched by name alone: give a structure or a CAS number</Unknown>}
              {told.screened &&
                told.regulated.length === 0 &&
                'on none of those searched; schedules of controlled drugs are not among them'}
              {told.regulated.map(one => (
                <div key={`${one.list} ${one.category}`}>
                  § {one.list}, {one.category}: {one.reason}
                </div>
              ))}
            </td>
          </tr>
        </tbody>
      </table>
      {told.matches.length > 0 && (
        <div class="matches" data-field="matches">
          <h3>Is it one of these?</h3>
          <ul class="rows">
            {told.matches.map(one => (
              <li key={one.id}>
                <b>
                  <Name text={one.name} />
                </b>
                <span class="soft">, {sameness(one)}</span>{' '}
                <button type="button" class="do" onClick={() => takeKnown(one.id, one.name)}>
                  It is this one
                </button>
                {!one.named && mayBeSame(one) && <Apart id={one.id} />}
              </li>
            ))}
          </ul>
        </div>
      )}
      <Hazards told={told} />
    </>
  )
}

/** As it was read, in what the library holds. */
const strengthText = ({ massFraction, molPerL }: NonNullable<Material['contains']>): string =>
  massFraction === undefined ? `${numberText(molPerL ?? 0, 4)} mol/L` : `${numberText(massFraction * 100, 4)} % by mass`

/** That it is another all the same: a grade, a form, a racemate beside one hand. */
function Apart({ id }: { readonly id: string }) {
  const { apartFrom } = typedMaterial.value
  const isApart = apartFrom.includes(id)
  return (
    <button
      type="button"
      class="do"
      aria-pressed={isApart}
      onClick={() => setMaterial({ apartFrom: isApart ? apartFrom.filter(one => one !== id) : [...apartFrom, id] })}
    >
      {isApart ? 'Mine is another: said' : 'Mine is another'}
    </button>
  )
}

/** A material that is there already, under another name: the writing says so, and nothing is entered twice. */
function takeKnown(id: string, name: string): void {
  const called = calledInWriting.value
  if (called !== null) {
    const { equation, body } = writing.value
    const named = (text: string): string => text.replaceAll(called.text, `${name} {${id}}`)
    if (called.line === null) replaceWriting({ equation: named(equation), body: named(body) })
    else replaceWriting({ body: answered(body, called.line, id) })
  }
  throwAway()
  openEntry('write')
}
