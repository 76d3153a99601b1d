import { openEntry } from './place.ts'

/** The way from the sheet to the entry pages. */
export const OwnStep = () => (
  <button type="button" class="do s" onClick={() => openEntry('write')}>
    Write a preparation of your own
  </button>
)
