import { useState } from 'preact/hooks'
import type { Trust } from '../../core/library/trust.ts'
import { MaterialList } from './material-list.tsx'
import { own } from './own.ts'
import { ChangeRows, Choice, History, TextField } from './parts.tsx'
import { StepList } from './step-list.tsx'

/** Every transformation with its yield, every material with its hazards and density, and how sure they are; a yield of one's own beside the bundled one. */
export function LibraryPage() {
  const [words, setWords] = useState('')
  const [trust, setTrust] = useState<Trust | ''>('')
  const [list, setList] = useState<'steps' | 'materials'>('steps')
  return (
    <>
      <div class="line-form">
        <Choice
          label="Show"
          help="Yields of the steps, or hazards and densities."
          value={list}
          options={[
            ['steps', 'steps'],
            ['materials', 'materials'],
          ]}
          onChoose={setList}
        />
        <TextField label="Look for" help="A compound or a word of the step." value={words} placeholder="benzil" onText={setWords} />
        <Choice
          label="How sure"
          help="Seen in a source, remembered, or of your own bench."
          value={trust}
          options={[
            ['', 'all'],
            ['seen', 'seen in a source'],
            ['remembered', 'remembered'],
            ['own bench', 'own bench'],
            ['unknown', 'unknown'],
          ]}
          onChoose={setTrust}
        />
      </div>
      {list === 'steps' ? <StepList words={words} trust={trust} /> : <MaterialList words={words} trust={trust} />}
      <Overrides />
      <History />
    </>
  )
}

function Overrides() {
  const rows = own.value?.overrides ?? []
  if (rows.length === 0) return null
  return (
    <section>
      <h2>In place of bundled records</h2>
      <ChangeRows rows={rows} stands />
    </section>
  )
}
