import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { Problems } from '../parts/problem.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type PlaceTables } from './api.ts'
import { setMaterial, typedMaterial } from './material-draft.ts'
import { Choice, TextField } from './parts.tsx'

/** What may be said of a material besides: folded, since most are entered without. */
export function MorePart() {
  const typed = typedMaterial.value
  const [isOpen, setOpen] = useState(false)
  const [tables, setTables] = useState<PlaceTables | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  useEffect(() => {
    if (isOpen && tables === null) entryServer.places().then(setTables, fault => setProblems(problemsOf(fault)))
  }, [isOpen])
  const text = (field: 'synonyms' | 'note' | 'twa' | 'stel' | 'ceiling' | 'notation' | 'basis', label: string, help?: string) => (
    <TextField label={label} help={help} field={field} value={typed[field]} onText={said => setMaterial({ [field]: said })} />
  )
  return (
    <details open={isOpen} onToggle={event => setOpen(event.currentTarget.open)}>
      <summary class="do">Other names, note, exposure limit, storage and waste</summary>
      <Problems of={problems} />
      {text('synonyms', 'Other names', 'Parted by semicolons; texts that say one of them mean this material.')}
      {text('note', 'Note', 'A sentence that stands with it.')}
      <div class="three">
        {text('twa', 'Limit over eight hours', '10 mg/m3, 5 ppm.')}
        {text('stel', 'For a short time')}
        {text('ceiling', 'Never above')}
      </div>
      <div class="three">
        {text('basis', 'Whose limit', 'Ontario, EU, a data sheet.')}
        {text('notation', 'Notation', 'skin; may stay open.')}
      </div>
      {tables !== null && (
        <>
          <Choice
            label="Stored with"
            value={typed.storageGroup}
            options={[['', 'not said'], ...rows(tables.storageGroups)]}
            onChoose={storageGroup => setMaterial({ storageGroup })}
          />
          <Choice
            label="Waste goes to"
            value={typed.wasteStream}
            options={[['', 'not said'], ...rows(tables.wasteStreams)]}
            onChoose={wasteStream => setMaterial({ wasteStream })}
          />
        </>
      )}
    </details>
  )
}

const rows = (of: PlaceTables['storageGroups']) => Object.entries(of).map(([id, { name }]) => [id, name] as const)
