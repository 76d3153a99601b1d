interface NumberBlankProps {
  readonly label: string
  readonly least: number
  readonly most: number
  readonly value: number
  readonly onValue: (value: number) => void
}

/** A labelled blank for a figure, kept within its bounds; what is no number is passed over. */
export const NumberBlank = ({ label, least, most, value, onValue }: NumberBlankProps) => (
  <label class="line">
    <span>{label}</span>
    <input
      class="blank"
      type="number"
      step="any"
      min={least}
      max={most}
      value={Number(value.toPrecision(9))}
      onChange={event => {
        const written = event.currentTarget.valueAsNumber
        if (!Number.isNaN(written)) onValue(Math.min(most, Math.max(least, written)))
      }}
    />
  </label>
)
