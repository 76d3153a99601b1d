import type { PackProps } from './pack-props.ts'

/** Which version this is, and what changed since the one on the reader's shelf: an old print must not be run from by mistake. */
export function Changes({ plan, version, changed }: PackProps) {
  const number = version ?? plan.edition?.number
  const told = changed ?? (plan.edition === undefined ? undefined : { since: plan.edition.number - 1, what: plan.edition.changed })
  if (number === undefined || told === undefined || told.what.length === 0) return null
  return (
    <p class="note">
      <b>
        Version {number}; changed since version {told.since}:
      </b>{' '}
      {told.what.join(' ')} Throw away the older print.
    </p>
  )
}
