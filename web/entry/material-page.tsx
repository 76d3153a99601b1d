import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { MaterialBox } from '../parts/material-box.tsx'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type Identified } from './api.ts'
import { setMaterial, strengthTyped, typedMaterial } from './material-draft.ts'
import { SaveMaterial } from './material-save.tsx'
import { Told } from './material-told.tsx'
import { numberTyped } from './number-typed.ts'
import { own } from './own.ts'
import { Choice, History, TextField } from './parts.tsx'
import { StructureField } from './structure-field.tsx'

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
            onText={text => setMaterial({ name: text })}
          />
          <StructureField invalid={told?.problems.some(one => one.code.startsWith('smiles')) ?? false} />
          <TextField
            label="Formula"
            help="Where there is no structure: CuSO4.5H2O. With a structure it follows by itself."
            value={formula}
            invalid={told?.problems.some(one => one.code.startsWith('formula')) ?? false}
            onText={text => setMaterial({ formula: text })}
          />
          <TextField
            label="CAS number"
            help="From the bottle; hazards and lists are found by it. May stay open."
            value={cas}
            onText={text => setMaterial({ cas: text })}
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
            onChoose={chosen => setMaterial({ form: chosen })}
          />
          {form === 'solution' && (
            <>
              <MaterialBox
                label="A solution of"
                placeholder="the compound in it"
                text={typed.of?.name ?? ''}
                onText={text => setMaterial({ of: text === '' ? null : { id: '', name: text } })}
                onTake={hit => setMaterial({ of: { id: hit.id, name: hit.name } })}
              />
              <TextField
                label="Strength"
                help="37 % by mass, or 3 M."
                value={typed.strength}
                invalid={typed.strength !== '' && strengthTyped(typed.strength) === null}
                onText={text => setMaterial({ strength: text })}
              />
            </>
          )}
          {form !== 'solid' && (
            <TextField
              label="Density, g/mL"
              help="At room temperature. Without it volumes cannot be turned into grams."
              value={typed.density}
              invalid={typed.density !== '' && numberTyped(typed.density) === null}
              onText={text => setMaterial({ density: text })}
            />
          )}
          <TextField
            label="Source"
            help="Where this comes from: a catalogue, a data sheet, a book."
            value={typed.source}
            onText={text => setMaterial({ source: text })}
          />
        </div>
        <div class="read">
          <Problems of={problems} />
          {told === null ? <p class="soft">Mass, formula, groups, lists and hazards follow by themselves.</p> : <Told told={told} />}
        </div>
      </div>
      {told !== null && <SaveMaterial told={told} />}
      <History />
    </>
  )
}
