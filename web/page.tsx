import { First } from './first.tsx'
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
    {!atDoor.value && (
      <button type="button" class="skip" onClick={() => goTo(1)}>
        To the seven questions
      </button>
    )}
    <Head />
    {atDoor.value ? (
      <First />
    ) : (
      <>
        <SavingTrouble />
        <main class="two">
          <MapPane />
          <Sheet />
        </main>
        <Thumbs />
      </>
    )}
  </>
)
