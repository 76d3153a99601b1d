import type { PackProps } from './pack-props.ts'

/** So many changes of the library are printed; the sheet tells all of them. */
const mostPrinted = 6

/**
 * Which version this is, and what changed since the one on the reader's shelf: an old print must not be run from by mistake; and what became
 * of the library's figures since the plan was saved.
 */
export function Changes({ plan, version, changed, libraryChanges = [] }: PackProps) {
  const number = version ?? plan.edition?.number
  const told = changed ?? (plan.edition === undefined ? undefined : { since: plan.edition.number - 1, what: plan.edition.changed })
  const further = libraryChanges.length - mostPrinted
  return (
    <>
      {told !== undefined && told.what.length > 0 && (
        <p class="note">
          <b>
            {number === undefined ? 'Not saved under a number yet' : `Version ${number}`}; changed since version {told.since}:
          </b>{' '}
          {told.what.join(' ')} Throw away the older print.
        </p>
      )}
      {libraryChanges.length > 0 && (
        <p class="note">
          <b>
            {plan.keepsRecords
              ? 'This plan keeps the records it was saved with; the library now differs:'
              : 'The library here differs from what this plan was saved with, and the figures here are the new ones:'}
          </b>{' '}
          {libraryChanges.slice(0, mostPrinted).map(change => `${change.what} `)}
          {further > 0 && `And ${further} more.`}
        </p>
      )}
    </>
  )
}
