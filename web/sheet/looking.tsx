import type { Looking } from '../state/asked.ts'

interface LookingLineProps {
  /** Absent for the first moment, in which nothing need be said. */
  readonly looking: Looking | undefined
  /** What is looked for: "way". */
  readonly what: readonly [one: string, many: string]
  /** What was done with so many of them. */
  readonly done?: 'found' | 'compared'
  /** What can be said of all that is still to come, after "none left can"; null = nothing. */
  readonly bound?: string | null
  readonly onStop: () => void
}

/** How a search fares, and the way to end it: nobody waits without being told. */
export const LookingLine = ({ looking, what: [one, many], done = 'found', bound = null, onStop }: LookingLineProps) =>
  looking === undefined ? null : (
    <p class="s looking">
      <span role="status">
        {looking.found === 0 ? `No ${one} ${done} yet` : `${looking.found} ${looking.found === 1 ? one : many} ${done}`}, still looking
        {far(looking)} …{bound !== null && ` None that is left can ${bound}.`}
      </span>{' '}
      <button type="button" class="do s" disabled={looking.stopping} onClick={onStop}>
        {looking.stopping ? 'Stopping …' : 'Stop looking'}
      </button>
    </p>
  )

/** How far it is, where that is known. */
function far({ of }: Looking): string {
  if (!of || of.all === 0) return ''
  const share = `${of.done} of ${of.all}`
  return of.doing === 'confirming' ? ` (at ${share})` : ` (routes counted for ${share})`
}
