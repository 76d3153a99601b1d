import { write, writing } from './draft.ts'
import { piecesOf } from './equipment-typed.ts'
import { TextField } from './parts.tsx'
import { readingState } from './reading.ts'

/** What the step needs besides its vessel; what the text suggests is offered, never put in by itself. */
export function EquipmentField() {
  const { equipment } = writing.value
  const has = new Set(piecesOf(equipment).map(piece => piece.toLowerCase()))
  const offered = (readingState.value.reading?.proposed.equipment ?? []).filter(piece => !has.has(piece))
  return (
    <div class="wide">
      <TextField
        label="Equipment"
        help="Parted by commas: reflux condenser, Buchner funnel. It is listed on the bench sheet."
        value={equipment}
        onText={text => write({ equipment: text })}
      />
      {offered.length > 0 && (
        <p class="s">
          A guess from the text:{' '}
          <button type="button" class="do" onClick={() => write({ equipment: [...piecesOf(equipment), ...offered].join(', ') })}>
            add {offered.join(', ')}
          </button>
        </p>
      )}
    </div>
  )
}
