import cytoscape from 'cytoscape'
import { alongAndBeside } from './bends.ts'
import type { Elements } from './elements.ts'
import type { Placed } from './placed.ts'
import { styleOf } from './style.ts'
import { tokensAt } from './tokens.ts'

export interface Canvas {
  show(elements: Elements, placed: Placed): void
  /** Marks a compound and what leads to and from it; null: none. */
  lookAt(id: string | null): void
  zoom(by: number): void
  whole(): void
  close(): void
}

/** Names are 12 px at this zoom, the least that is read; a network that needs a smaller one opens at its start, and "Whole" shows it all. */
const leastZoom = 0.901
/** Air round the network, px. */
const air = 12

/** Smallest at which names can still be guessed, and largest. */
const zooms = { minZoom: 0.2, maxZoom: 2 }

/** The one file that knows the drawing library. */
export function openCanvas(container: HTMLElement, onChoose: (id: string) => void): Canvas {
  const finger = matchMedia('(pointer: coarse)').matches
  const cy = cytoscape({
    container,
    ...zooms,
    autoungrabify: true,
    boxSelectionEnabled: false,
    // A wheel scrolls the page; with Ctrl it zooms, as elsewhere.
    userZoomingEnabled: finger,
    style: styleOf(tokensAt(container)),
  })
  cy.on('tap', 'node.compound', event => onChoose(event.target.id()))
  const onWheel = (event: WheelEvent) => {
    if (!event.ctrlKey && !event.metaKey) return
    event.preventDefault()
    const box = container.getBoundingClientRect()
    const at = { x: event.clientX - box.left, y: event.clientY - box.top }
    cy.zoom({ level: cy.zoom() * 1.0015 ** -event.deltaY, renderedPosition: at })
  }
  container.addEventListener('wheel', onWheel, { passive: false })
  const dark = matchMedia('(prefers-color-scheme: dark)')
  const restyle = () => cy.style(styleOf(tokensAt(container)))
  dark.addEventListener('change', restyle)
  const sized = new ResizeObserver(() => cy.resize())
  sized.observe(container)
  const middle = () => ({ x: container.clientWidth / 2, y: container.clientHeight / 2 })
  const whole = () => {
    cy.fit(undefined, air)
    // Fitting must not blow up a handful of names.
    if (cy.zoom() > 1) {
      cy.zoom(1)
      cy.center()
    }
  }
  return {
    show(elements, placed) {
      // The room has just been made as high as the network.
      cy.resize()
      cy.batch(() => {
        cy.elements().remove()
        cy.add(
          elements.dots.map(dot => ({
            group: 'nodes' as const,
            data: { ...dot },
            position: { ...placed.at[dot.id]! },
            classes: dot.classes,
          })),
        )
        cy.add(
          elements.links.map(link => {
            const points = placed.bends[link.id] ?? []
            const bend = alongAndBeside(placed.at[link.source]!, placed.at[link.target]!, points)
            const classes = [link.sure, link.head ? 'head' : '', link.ways.length > 1 ? 'many' : '', points.length > 0 ? 'bent' : '']
            return { group: 'edges' as const, data: { ...link, ...bend }, classes: classes.filter(Boolean).join(' ') }
          }),
        )
      })
      whole()
      const start = cy.nodes('.start').first()
      if (cy.zoom() >= leastZoom || start.empty()) return
      cy.zoom(leastZoom)
      const { x, y } = start.position()
      const all = cy.elements().boundingBox()
      const fitsUpright = all.h * leastZoom + 2 * air <= container.clientHeight
      const middleY = fitsUpright ? (all.y1 + all.y2) / 2 : y
      cy.pan({ x: air + (start.outerWidth() / 2 - x) * leastZoom, y: container.clientHeight / 2 - middleY * leastZoom })
    },
    lookAt(id) {
      cy.elements('.looked').removeClass('looked')
      if (id === null) return
      const node = cy.getElementById(id)
      node.addClass('looked')
      node.connectedEdges().addClass('looked')
      const box = node.renderedBoundingBox()
      const outside = box.x1 < 0 || box.y1 < 0 || box.x2 > container.clientWidth || box.y2 > container.clientHeight
      if (node.nonempty() && outside) cy.center(node)
    },
    zoom: by => cy.zoom({ level: cy.zoom() * by, renderedPosition: middle() }),
    whole,
    close() {
      container.removeEventListener('wheel', onWheel)
      dark.removeEventListener('change', restyle)
      sized.disconnect()
      cy.destroy()
    },
  }
}
