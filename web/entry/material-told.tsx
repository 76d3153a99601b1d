import { Problems } from '../parts/problem.tsx'
import { Formula, Name, Unknown } from '../parts/words.tsx'
import type { Identified } from './api.ts'
import { replaceWriting, writing } from './draft.ts'
import { calledInWriting, emptyMaterial, typedMaterial } from './material-draft.ts'
import { Hazards } from './material-hazards.tsx'
import { Drawn } from './parts.tsx'
import { openEntry } from './place.ts'

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
          <tr>
            <th scope="row">formula</th>
            <td>{told.material.formula === undefined ? <Unknown /> : <Formula text={told.material.formula} />}</td>
          </tr>
          <tr>
            <th scope="row">molar mass</th>
            <td>{told.molarMass === null ? <Unknown /> : `${told.molarMass.toFixed(3)} g/mol`}</td>
          </tr>
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
        <div class="matches">
          <h3>Is it one of these?</h3>
          <ul class="rows">
            {told.matches.map(one => (
              <li key={one.id}>
                <b>
                  <Name text={one.name} />
                </b>
                <span class="soft">, same {one.by}</span>{' '}
                <button type="button" class="do" onClick={() => takeKnown(one.id, one.name)}>
                  It is this one
                </button>
              </li>
            ))}
          </ul>
        </div>
      )}
      <Hazards told={told} />
    </>
  )
}

/** A material that is there already, under another name: the writing says so, and nothing is entered twice. */
function takeKnown(id: string, name: string): void {
  const called = calledInWriting.value
  if (called !== null) {
    const { equation, body } = writing.value
    const named = (text: string): string => text.replaceAll(called, `${name} {${id}}`)
    replaceWriting({ equation: named(equation), body: named(body) })
    calledInWriting.value = null
  }
  typedMaterial.value = emptyMaterial
  openEntry('write')
}
