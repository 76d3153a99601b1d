import type { TypedMaterial } from './material-typed.ts'
import { Choice, TextField } from './parts.tsx'

/** Hazards as a safety data sheet tells them, with who assigned them. */
export const HazardFields = ({
  typed,
  onType,
}: {
  readonly typed: TypedMaterial
  readonly onType: (patch: Partial<TypedMaterial>) => void
}) => (
  <div class="fields">
    <TextField label="H codes" help="H302, H315; empty = none assigned." value={typed.codes} onText={codes => onType({ codes })} />
    <Choice
      label="Signal word"
      help="As on the label."
      value={typed.signalWord}
      options={[
        ['Danger', 'Danger'],
        ['Warning', 'Warning'],
        ['none', 'none'],
      ]}
      onChoose={signalWord => onType({ signalWord })}
    />
    <TextField
      label="Who assigned them"
      help={
        typed.over === null
          ? 'The data sheet and its date; left empty they count as remembered.'
          : 'The data sheet and its date; “memory” where you only remember them.'
      }
      field="codesFrom"
      value={typed.codesFrom}
      onText={codesFrom => onType({ codesFrom })}
    />
  </div>
)
