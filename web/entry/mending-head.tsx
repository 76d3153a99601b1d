import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../core/problem/problem.ts'
import { Problems } from '../parts/problem.tsx'
import { Name } from '../parts/words.tsx'
import { problemsOf } from '../state/asked.ts'
import { entryServer } from './api.ts'
import { throwAway, turnTo, typedMaterial } from './material-draft.ts'
import { draftOf } from './material-drafts.ts'
import { emptyMaterial, type TypedMaterial } from './material-typed.ts'
import { filledFrom } from './mending.ts'
import { own, saveOwn } from './own.ts'
import { ChangeRows } from './parts.tsx'
import { entryMaterial, openEntry } from './place.ts'

/** A record of the library as it stands now, as the page says it. */
async function filledWith(id: string): Promise<TypedMaterial> {
  const record = await entryServer.material(id)
  const inIt = [record.contains?.compound, record.contains?.rest].filter(one => one !== undefined)
  const names = new Map(await Promise.all(inIt.map(async one => [one, (await entryServer.material(one)).name] as const)))
  return { ...emptyMaterial, ...filledFrom(record, one => names.get(one) ?? one) }
}

/** Which record is put right, what has been put right of it before, and the ways back. Nothing where the material is a new one. */
export function MendingHead() {
  const { over } = typedMaterial.value
  const wanted = entryMaterial.value
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const told = (fault: unknown): void => setProblems(problemsOf(fault))
  useEffect(() => {
    setProblems([])
    if (wanted === null || wanted === typedMaterial.peek().over?.id) return
    let stays = true
    filledWith(wanted).then(typed => stays && turnTo(draftOf(typed)), told)
    return () => {
      stays = false
    }
  }, [wanted])
  if (over === null) return <Problems of={problems} />
  const before = own.value?.overrides.find(row => row.list === 'materials' && row.id === over.id)
  const fill = (id: string) => filledWith(id).then(typed => throwAway(draftOf(typed)), told)
  const back = async (): Promise<void> => {
    const found = await saveOwn(`${over.name}: back to the bundled record`, { removeMaterials: [over.id] })
    setProblems(found)
    if (found.length === 0) await fill(over.id)
  }
  return (
    <section aria-label="The record">
      <p>
        <b>
          <Name text={over.name} />
        </b>{' '}
        is in the library. Change what is not right: yours is saved in the own library and stands in its place; a bundled record stays as it
        is beneath, and what nobody changes here goes on being its word.
      </p>
      {before !== undefined && <ChangeRows rows={[before]} stands />}
      <Problems of={problems} />
      <p class="dos">
        {before !== undefined && (
          <button type="button" class="do" onClick={() => void back()}>
            Back to the bundled record
          </button>
        )}
        <button type="button" class="do" onClick={() => void fill(over.id)}>
          Undo what is typed here
        </button>
        <button
          type="button"
          class="do"
          onClick={() => {
            turnTo(draftOf(emptyMaterial))
            openEntry('material')
          }}
        >
          Enter a new material instead
        </button>
      </p>
    </section>
  )
}
