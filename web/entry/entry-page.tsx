import './entry.css'
import { useEffect, useRef } from 'preact/hooks'
import { atDoor } from '../state/opening.ts'
import { FilePage } from './file-page.tsx'
import { LibraryPage } from './library-page.tsx'
import { typedMaterial } from './material-draft.ts'
import { MaterialPage } from './material-page.tsx'
import { watchNews } from './new-structures.ts'
import { loadOwn } from './own.ts'
import { closeEntry, type EntryPlace, openEntry } from './place.ts'
import { watchWriting } from './reading.ts'
import { WeakPage } from './weak-page.tsx'
import { WritePage } from './write-page.tsx'

const pages: readonly { readonly place: EntryPlace; readonly short: string; readonly title: string }[] = [
  { place: 'write', short: 'a preparation', title: 'Write a preparation down as you read it.' },
  { place: 'material', short: 'a material', title: 'Enter a material by its structure or formula.' },
  { place: 'file', short: 'from a file', title: 'Take records over from a file, or give yours away.' },
  { place: 'library', short: 'the library', title: 'The library: how sure each figure is, and your own.' },
  { place: 'weak', short: 'weak spots', title: 'Where the library is weak.' },
]

/** The entry pages: one stands, the others are a press away; the plan waits behind them. */
export function EntryPage({ place }: { readonly place: EntryPlace }) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    watchWriting()
    watchNews()
    void loadOwn()
  }, [])
  useEffect(() => {
    heading.current?.focus({ preventScroll: true })
  }, [place])
  const found = pages.find(page => page.place === place)!
  const title = place === 'material' && typedMaterial.value.over !== null ? 'Put a material right in your own library.' : found.title
  return (
    <main class="entry" id="start">
      <nav aria-label="Entry" class="entry-nav">
        <button type="button" class="do" onClick={closeEntry}>
          {atDoor.value ? 'Back to the first page' : 'Back to the plan'}
        </button>
        <ul>
          {pages.map(page => (
            <li key={page.place}>
              <button
                type="button"
                class="do"
                aria-current={page.place === place ? 'page' : undefined}
                onClick={() => openEntry(page.place)}
              >
                {page.short}
              </button>
            </li>
          ))}
        </ul>
      </nav>
      <h1 tabIndex={-1} ref={heading}>
        {title}
      </h1>
      {place === 'write' ? (
        <WritePage />
      ) : place === 'material' ? (
        <MaterialPage />
      ) : place === 'file' ? (
        <FilePage />
      ) : place === 'library' ? (
        <LibraryPage />
      ) : (
        <WeakPage />
      )}
    </main>
  )
}
