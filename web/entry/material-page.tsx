import { useEffect, useState } from 'preact/hooks'
import type { Material } from '../../core/library/material.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { MaterialBox } from '../parts/material-box.tsx'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type Identified } from './api.ts'
import { knownOptions } from './known-options.ts'
import { asked, materialLacks, materialRecord, setMaterial, tooLong, typedMaterial, wanted } from './material-draft.ts'
import { SaveMaterial } from './material-save.tsx'
import { Told } from './material-told.tsx'
import { MendingHead } from './mending-head.tsx'
import { MorePart } from './more-part.tsx'
import { own } from './own.ts'
import { Choice, History, TextField } from './parts.tsx'
import { sameRecord } from './same-record.ts'
import { StructureField } from './structure-field.tsx'
import { today } from './today.ts'
import { WaitingMaterials } from './waiting-materials.tsx'

/** What was told, and of what. */
interface Answer {
  readonly of: string
  readonly told: Identified
}

/** A new material, or one of the library that is put right: what is typed on the left, what follows from it on the right. */
export function MaterialPage() {
  const typed = typedMaterial.value
  const [answer, setAnswer] = useState<Answer | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const { name, smiles, formula, cas, form } = typed
  const version = own.value?.version ?? 0
  const long = tooLong(typed)
  const question = JSON.stringify(asked(typed))
  useEffect(() => {
    if (long.length > 0 || [name, smiles, formula, cas].every(text => text.trim() === '')) return setAnswer(null)
    const stop = new AbortController()
    const timer = setTimeout(() => {
      entryServer.identify(asked(typed), stop.signal).then(
        told => {
          setAnswer({ of: question, told })
          setProblems([])
        },
        fault => !stop.signal.aborted && setProblems(problemsOf(fault)),
      )
    }, 200)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [question, version])
  const told = answer?.told ?? null
  const fresh = answer?.of === question
  const typedRecord = told === null ? null : materialRecord(typed, told, today())
  const { over } = typed
  const ours = own.value?.materials ?? []
  const kept =
    typedRecord === null || !fresh ? null : sameRecord(typedRecord, over === null ? ours : ours.filter(one => one.id === over.id))
  // Saved, it is found under its own name and structure: that is no double.
  const lacking = told === null ? long : kept !== null ? [] : materialLacks(typed, told)
  const wrong = (field: string): string | null => lacking.find(one => one.field === field)?.wrong ?? null
  return (
    <>
      <MendingHead />
      <WaitingMaterials />
      <div class="entry-row">
        <div class="fields">
          <TextField
            label="Name"
            help="As it is called at your bench; synonyms of known materials are found."
            field="name"
            value={name}
            wrong={fresh || told === null ? wrong('name') : null}
            onText={text => setMaterial({ name: text })}
          />
          <StructureField wrong={wrong('smiles')} invalid={told?.problems.some(one => one.code.startsWith('smiles')) ?? false} />
          <TextField
            label="Formula"
            help="Where there is no structure: CuSO4.5H2O. With a structure it follows by itself."
            wrong={wrong('formula')}
            value={formula}
            invalid={told?.problems.some(one => one.code.startsWith('formula')) ?? false}
            onText={text => setMaterial({ formula: text })}
          />
          <TextField
            label="CAS number"
            help="From the bottle; hazards and lists are found by it. May stay open."
            wrong={wrong('cas')}
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
          {form === 'solution' && <SolutionFields wrong={wrong} />}
          <TextField
            label="Density, g/mL"
            help={
              form === 'solid'
                ? 'May stay open: the room a solid takes in the vessel is then reckoned with 1.2.'
                : 'At room temperature. Without it volumes cannot be turned into grams.'
            }
            field="density"
            value={typed.density}
            wrong={wrong('density')}
            onText={text => setMaterial({ density: text })}
          />
          <Points wrong={wrong} />
          <MorePart />
          <Choice
            label={over === null ? 'The figures are' : 'What differs is'}
            help="Three things are never mixed up: seen in a source, remembered, of your own bench. Hazards have a source of their own."
            field="known"
            value={typed.known}
            options={knownOptions}
            onChoose={known => setMaterial({ known })}
          />
          <TextField
            label="Source"
            help="A catalogue, a data sheet, a book; for your own bench the notebook page."
            field="source"
            value={typed.source}
            onText={text => setMaterial({ source: text })}
          />
        </div>
        <div class="read">
          <Problems of={problems} />
          {told === null ? (
            <p class="soft">Mass, formula, groups, lists and hazards follow by themselves.</p>
          ) : (
            <Told
              told={{
                ...told,
                ...(over === null || typedRecord === null ? {} : { material: typedRecord as unknown as Material }),
                problems: told.problems.filter(one => !Object.hasOwn(wanted, one.where[1] ?? '')),
                matches: told.matches.filter(one => one.id !== kept?.id),
              }}
            />
          )}
        </div>
      </div>
      {told !== null && typedRecord !== null && (
        <SaveMaterial
          told={told}
          fresh={fresh}
          lacking={lacking}
          record={kept ?? typedRecord}
          isKept={kept !== null}
          isMended={over !== null}
        />
      )}
      <History />
    </>
  )
}

/** Melting, boiling and flash point, side by side. */
const Points = ({ wrong }: { readonly wrong: (field: string) => string | null }) => (
  <div class="three">
    {(['melting', 'boiling', 'flash'] as const).map(field => (
      <TextField
        label={pointLabels[field]}
        help={field === 'flash' ? 'All three may stay open.' : undefined}
        field={field}
        value={typedMaterial.value[field]}
        wrong={wrong(field)}
        onText={text => setMaterial({ [field]: text })}
        key={field}
      />
    ))}
  </div>
)
const pointLabels = { melting: 'Melting point, °C', boiling: 'Boiling point, °C', flash: 'Flash point, °C' } as const

/** What a solution is of, how strong, and made up with what. */
function SolutionFields({ wrong }: { readonly wrong: (field: string) => string | null }) {
  const { of, strength, rest } = typedMaterial.value
  return (
    <>
      <div data-field="of">
        <MaterialBox
          label="A solution of"
          placeholder="the compound in it"
          text={of?.name ?? ''}
          invalid={wrong('of') !== null}
          onText={text => setMaterial({ of: text === '' ? null : { id: '', name: text } })}
          onTake={hit => setMaterial({ of: { id: hit.id, name: hit.name } })}
        />
        <Beside text={wrong('of')} help="The pure compound, chosen from the list: moles are counted on it." />
      </div>
      <TextField
        label="Strength"
        help="37 % by mass, 3 M, 0.5 N, 2 % w/v or 40 g/L."
        field="strength"
        value={strength}
        wrong={wrong('strength')}
        onText={text => setMaterial({ strength: text })}
      />
      <div data-field="rest">
        <MaterialBox
          label="Made up with"
          placeholder="water"
          text={rest?.name ?? ''}
          invalid={wrong('rest') !== null}
          onText={text => setMaterial({ rest: text === '' ? null : { id: '', name: text } })}
          onTake={hit => setMaterial({ rest: { id: hit.id, name: hit.name } })}
        />
        <Beside text={wrong('rest')} help="Left empty it is water." />
      </div>
    </>
  )
}

const Beside = ({ text, help }: { readonly text: string | null; readonly help: string }) => (
  <>
    {text !== null && (
      <p class="s wrong" role="status">
        {text}
      </p>
    )}
    <p class="s soft help">{help}</p>
  </>
)
