import { computed, signal } from '@preact/signals'

/** Room of the map pane, px; 0 until it was measured. */
export const paneWidth = signal(0)
/** A phone's width: the scheme stands upright, rows are two lines. */
export const narrow = signal(false)

/** Below this width of the window the page is a phone's. */
export const phoneBelow = 860

/** Columns of a route row beside its staircase, gaps included, px; as in the style sheet. */
const besideStair = 534
const leastStair = 150

export const stairWidth = computed(() =>
  narrow.value ? paneWidth.value : Math.max(leastStair, Math.min(380, paneWidth.value - besideStair)),
)
