import { useState } from 'preact/hooks'
import type { WantedMark } from '../../core/library/mark.ts'
import { wantedOfRecords } from '../parts/wanted-mark.ts'
import { MaterialList } from './material-list.tsx'
import { own } from './own.ts'
import { ChangeRows, Choice, History, TextField } from './parts.tsx'
import { PriceList } from './price-list.tsx'
import { StepList } from './step-list.tsx'

/** Every transformation and every material with its figures, the prices of the plan in hand, and how sure all of it is; a yield of one's own beside the bundled one. */
export function LibraryPage() {
  const [words, setWords] = useState('')
  const [trust, setTrust] = useState<WantedMark | ''>('')
  const [list, setList] = useState<List>('steps')
  const [figure, setFigure] = useState('')
  const kept = { trust, figure }
  return (
    <>
      <div class="line-form">
        <Choice
          label="Show"
          help="Steps, materials, or the prices of the plan in hand."
          value={list}
          options={[
            ['steps', 'steps'],
            ['materials', 'materials'],
            ['prices', 'prices'],
          ]}
          onChoose={chosen => {
            setList(chosen)
            setFigure('')
          }}
        />
        <TextField label="Look for" help="A compound or a word of the step." value={words} placeholder="benzil" onText={setWords} />
        <Choice label="How sure" help="What a figure rests on." value={trust} options={wantedOfRecords} onChoose={setTrust} />
        {list !== 'prices' && (
          <Choice
            label="Which figure"
            help="That the choice before is about."
            value={figure}
            options={figuresOf[list]}
            onChoose={setFigure}
          />
        )}
      </div>
      {list === 'steps' && <StepList words={words} kept={kept} />}
      {list === 'materials' && <MaterialList words={words} kept={kept} />}
      {list === 'prices' && <PriceList words={words} wanted={trust} />}
      <Overrides />
      <History />
    </>
  )
}

type List = 'steps' | 'materials' | 'prices'

const same = (figure: string): readonly [string, string] => [figure, figure]
/** The first of each is what is asked about where nothing is chosen. */
const figuresOf: Readonly<Record<'steps' | 'materials', readonly (readonly [string, string])[]>> = {
  steps: [
    ['', 'yield'],
    ['any', 'any of them'],
    ...['range of the yield', 'charges', 'times', 'temperature', 'largest scale', 'smallest scale', 'hold point'].map(same),
  ],
  materials: [
    ['', 'any of them'],
    ...['hazards', 'density', 'melting point', 'boiling point', 'flash point', 'strength', 'exposure limit'].map(same),
  ],
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
