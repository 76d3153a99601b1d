import { RouteRows } from './route-rows.tsx'
import { drawing } from './state/view.ts'

/** The map: the scheme with the routes as rows, or the network downstream while one looks at what it can become. */
export const MapPane = () => (
  <section class="map" aria-label="Map">
    {drawing.value === 'scheme' ? <RouteRows /> : null}
  </section>
)
