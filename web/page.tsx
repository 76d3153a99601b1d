import { LazyEntry } from './entry/lazy-entry.tsx'
import { entryPlace } from './entry/place.ts'
import { First } from './first/first.tsx'
import { Head } from './head.tsx'
import { MapPane } from './map-pane.tsx'
import { SavingTrouble } from './saving-trouble.tsx'
import { Sheet } from './sheet/sheet.tsx'
import { atDoor } from './state/opening.ts'
import { goTo } from './state/view.ts'
import { Thumbs } from './thumbs.tsx'

/** The whole page: the first visit, or the map and the sheet. */
export const Page = () => (
  <>
    {!atDoor.value && entryPlace.value === null && (
      <button type="button" class="skip" onClick={() => goTo(1)}>
        To the seven questions
      </button>
    )}
    <Head />
    {entryPlace.value !== null ? (
      <LazyEntry place={entryPlace.value} />
    ) : atDoor.value ? (
      <First />
    ) : (
      <>
        <SavingTrouble />
        <main class="map-and-sheet">
          <MapPane />
          <Sheet />
        </main>
        <Thumbs />
      </>
    )}
  </>
)
