import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { MaterialBox } from '../parts/material-box.tsx'
import { Problems } from '../parts/problem.tsx'
import { Formula, Name, Unknown } from '../parts/words.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type Identified, type Trial } from './api.ts'
import { replaceWriting, writing } from './draft.ts'
import { calledInWriting, emptyMaterial, materialRecord, strengthTyped, type TypedMaterial, typedMaterial } from './material-draft.ts'
import { own, saveOwn, undoOwn } from './own.ts'
import { ChangeRows, Choice, Drawn, History, TextField } from './parts.tsx'
import { openEntry } from './place.ts'
import { numberTyped } from './record.ts'

const set = (patch: Partial<TypedMaterial>): void => {
  typedMaterial.value = { ...typedMaterial.value, ...patch }
}

/** A new material: what is typed on the left, what follows from it on the right. */
export function MaterialPage() {
  const typed = typedMaterial.value
  const [told, setTold] = useState<Identified | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const { name, smiles, formula, cas, form } = typed
  const version = own.value?.version ?? 0
  useEffect(() => {
    if ([name, smiles, formula, cas].every(text => text.trim() === '')) return setTold(null)
    const stop = new AbortController()
    const timer = setTimeout(() => {
      entryServer.identify({ name, smiles, formula, cas, form }, stop.signal).then(
        answer => {
          setTold(answer)
          setProblems([])
        },
        fault => !stop.signal.aborted && setProblems(problemsOf(fault)),
      )
    }, 200)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [name, smiles, formula, cas, form, version])
  return (
    <>
      <div class="entry-row">
        <div class="fields">
          <TextField
            label="Name"
            help="As it is called at your bench; synonyms of known materials are found."
            value={name}
            onText={text => set({ name: text })}
          />
          <TextField
            label="SMILES"
            help="The structure as a line, from a data sheet or a drawing program: CC(=O)OCC is ethyl acetate. It is drawn as you type."
            value={smiles}
            placeholder="O=C(c1ccccc1)C(O)c1ccccc1"
            invalid={told?.problems.some(one => one.code.startsWith('smiles')) ?? false}
            onText={text => set({ smiles: text })}
          />
          <TextField
            label="Formula"
            help="Where there is no structure: CuSO4.5H2O. With a structure it follows by itself."
            value={formula}
            invalid={told?.problems.some(one => one.code.startsWith('formula')) ?? false}
            onText={text => set({ formula: text })}
          />
          <TextField
            label="CAS number"
            help="From the bottle; hazards and lists are found by it. May stay open."
            value={cas}
            onText={text => set({ cas: text })}
          />
          <Choice
            label="At the bench it is"
            help="Liquids are measured by volume and want a density."
            value={form}
            options={[
              ['solid', 'a solid'],
              ['liquid', 'a liquid'],
              ['gas', 'a gas'],
              ['solution', 'a solution'],
            ]}
            onChoose={chosen => set({ form: chosen })}
          />
          {form === 'solution' && (
            <>
              <MaterialBox
                label="A solution of"
                placeholder="the compound in it"
                text={typed.of?.name ?? ''}
                onText={text => set({ of: text === '' ? null : { id: '', name: text } })}
                onTake={hit => set({ of: { id: hit.id, name: hit.name } })}
              />
              <TextField
                label="Strength"
                help="37 % by mass, or 3 M."
                value={typed.strength}
                invalid={typed.strength !== '' && strengthTyped(typed.strength) === null}
                onText={text => set({ strength: text })}
              />
            </>
          )}
          {form !== 'solid' && (
            <TextField
              label="Density, g/mL"
              help="At room temperature. Without it volumes cannot be turned into grams."
              value={typed.density}
              invalid={typed.density !== '' && numberTyped(typed.density) === null}
              onText={text => set({ density: text })}
            />
          )}
          <TextField
            label="Source"
            help="Where this comes from: a catalogue, a data sheet, a book."
            value={typed.source}
            onText={text => set({ source: text })}
          />
        </div>
        <div class="read">
          <Problems of={problems} />
          {told === null ? <p class="soft">Mass, formula, groups, lists and hazards follow by themselves.</p> : <Told told={told} />}
        </div>
      </div>
      {told !== null && <Save told={told} />}
      <History />
    </>
  )
}

function Told({ told }: { readonly told: Identified }) {
  const typed = typedMaterial.value
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
      <fieldset>
        <legend>
          <b>Hazards</b>
        </legend>
        {told.withHazards?.hazards !== undefined && told.record !== null && (
          <label class="dot-choice">
            <input type="radio" name="hazards" checked={typed.hazards === 'tables'} onChange={() => set({ hazards: 'tables' })} />
            <span>
              take over {told.withHazards.hazards.codes.length === 0 ? 'none assigned' : told.withHazards.hazards.codes.join(', ')} (
              {told.withHazards.hazards.signalWord}) from the tables, row “{told.record.name}”
              {told.record.cas === null ? '' : `, CAS ${told.record.cas}`}; {told.withHazards.hazards.from ?? 'remembered'}
            </span>
          </label>
        )}
        <label class="dot-choice">
          <input type="radio" name="hazards" checked={typed.hazards === 'typed'} onChange={() => set({ hazards: 'typed' })} />
          <span>enter them from its safety data sheet</span>
        </label>
        <label class="dot-choice">
          <input type="radio" name="hazards" checked={typed.hazards === 'unknown'} onChange={() => set({ hazards: 'unknown' })} />
          <span>leave them unknown, which is not the same as safe</span>
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
      {typed.hazards === 'typed' && (
        <div class="fields">
          <TextField label="H codes" help="H302, H315; empty = none assigned." value={typed.codes} onText={codes => set({ codes })} />
          <Choice
            label="Signal word"
            help="As on the label."
            value={typed.signalWord}
            options={[
              ['Danger', 'Danger'],
              ['Warning', 'Warning'],
              ['none', 'none'],
            ]}
            onChoose={signalWord => set({ signalWord })}
          />
          <TextField
            label="Who assigned them"
            help="The data sheet and its date; left empty they count as remembered."
            value={typed.codesFrom}
            onText={codesFrom => set({ codesFrom })}
          />
        </div>
      )}
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

function Save({ told }: { readonly told: Identified }) {
  const [trial, setTrial] = useState<Trial | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [savedId, setSavedId] = useState<string | null>(null)
  const record = materialRecord(typedMaterial.value, told)
  const isSaved = savedId !== null && own.value?.materials.some(one => one.id === savedId) === true
  const blocked = told.problems.some(one => one.code !== 'material-without-formula')
  const key = JSON.stringify(record)
  useEffect(() => {
    const stop = new AbortController()
    setTrial(null)
    const timer = setTimeout(() => {
      entryServer
        .check({ materials: [record] }, stop.signal)
        .then(setTrial, fault => !stop.signal.aborted && setProblems(problemsOf(fault)))
    }, 250)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [key, own.value?.version])
  const save = async (): Promise<void> => {
    const found = await saveOwn(String(record.name), { materials: [record] })
    setProblems(found)
    if (found.length > 0) return
    setSavedId(String(record.id))
    if (calledInWriting.value !== null) {
      calledInWriting.value = null
      typedMaterial.value = emptyMaterial
      openEntry('write')
    }
  }
  return (
    <section class="entry-save" aria-label="Save">
      <h2>{trial === null ? 'Being checked' : trial.refused.length > 0 || blocked ? 'It would be refused' : 'Ready to be saved'}</h2>
      {trial !== null && (
        <>
          <ChangeRows rows={trial.rows} refused={trial.refused} />
          <Problems of={told.problems.some(one => one.code === 'stopped') ? [] : trial.refused} />
          <Problems of={trial.warnings.filter(one => one.where.includes(String(record.id)))} />
        </>
      )}
      <Problems of={problems} />
      <p class="dos">
        <button
          type="button"
          class="do strong"
          disabled={trial === null || trial.refused.length > 0 || blocked}
          onClick={() => void save()}
        >
          {calledInWriting.value === null ? 'Save to the own library' : 'Save, and back to the preparation'}
        </button>
        {isSaved && (
          <button type="button" class="do" onClick={() => void undoOwn()}>
            Take it back
          </button>
        )}
        <button type="button" class="do" onClick={() => set(emptyMaterial)}>
          Empty the page
        </button>
      </p>
    </section>
  )
}
