import { type Block, bottomOf, clearDown, moved, type Rect, type Sheet, topOf } from './block.ts'
import type { Context, Entry, RunWish } from './context.ts'
import { forkOf } from './fork.ts'
import { joinOf } from './join.ts'
import { legendOf } from './legend.ts'
import { margin, pickHeight } from './measures.ts'
import { type Joins, type Model, modelOf, type Tail, type Unit } from './model.ts'
import { nameRuns } from './name-runs.ts'
import { rowsOf } from './rows.ts'
import type { El, Item, Keep, SchemeIn, SchemeOut, Step } from './types.ts'
import { uprightOf } from './upright.ts'

// The least room that is drawn for, px: narrower than any phone.
const leastWidth = 240
// Between two schemes that hang together only in words.
const apart = 30
// The first axis is kept where it was as long as that leaves no more than this much empty room above.
const keptRoom = 80

/**
 * A chosen plan as a textbook scheme: boxes and paths, nothing laid by hand.
 *
 * Pure: the same input gives the same output, in a browser, a worker and the server alike. Never throws on well-formed input; what
 * cannot be drawn as wished is told in `notes`. Hand the `keep` of the last drawing back in, so that what stays, stays where it is.
 */
export function layoutScheme(asked: SchemeIn): SchemeOut {
  // A pane that is away from the page has no width, and its padding is no number.
  const input = Number.isFinite(asked.pane) ? asked : { ...asked, pane: leastWidth + 2 * margin }
  const width = Math.max(input.pane - 2 * margin, leastWidth)
  for (const joins of ['all', 'other roots', 'none'] as const) {
    const made = attempt(input, joins, width)
    if (made) return made
  }
  // Wider than the pane: nothing is lost, the map scrolls, and the notes say so.
  for (let wider = width + 60; ; wider += 60) {
    const made = attempt(input, 'none', wider)
    if (made) return { ...made, notes: [...made.notes, `wider than ${input.pane} px`] }
  }
}

function contextOf(input: SchemeIn, model: Model): Context {
  const keep = input.keep && input.keep.pane === input.pane ? input.keep : null
  const memo = new Map<string, Block | null>()
  const parts = new Map<string, unknown>()
  const numbers = new Map(input.steps.map(step => [step.to, step.no]))
  const words = new Map<string, Item[]>()
  for (const { product, cell } of model.named) {
    const no = numbers.get(cell)
    const item: Item = [
      { t: '+ ' },
      ...nameRuns((input.cells[cell]?.name ?? cell).replaceAll('\u00ad', '')),
      ...(no ? [{ t: ' from ' }, { t: no, b: true }] : []),
    ]
    words.set(product, [...(words.get(product) ?? []), item])
  }
  const remembered = (key: string, make: () => Block | null): Block | null => {
    if (!memo.has(key)) memo.set(key, make())
    return memo.get(key) ?? null
  }
  const runKey = (units: readonly Unit[], tail: Tail) =>
    `${units[0]?.cell ?? ''}>${units.length}>${tail.kind}${tail.kind === 'join' ? tail.step.to : ''}`
  const wishKey = (wish: RunWish) => `${wish.firstCentre ?? ''}/${wish.floor ?? ''}/${wish.exits ? 'x' : ''}`
  const ctx: Context = {
    model,
    cells: input.cells,
    touch: input.touch ?? pickHeight,
    detours: input.form === 'wide',
    keep,
    named: (step: Step) => words.get(step.to) ?? [],
    arrows: new Map(),
    cached: <T>(key: string, make: () => T): T => {
      if (!parts.has(key)) parts.set(key, make())
      return parts.get(key) as T
    },
    run: (units, tail, width: number, entry: Entry, wish: RunWish = {}) =>
      remembered(`run ${runKey(units, tail)} ${width} ${entry} ${wishKey(wish)}`, () => rowsOf(ctx, units, tail, width, entry, wish)),
    fork: (cell, width, place) => remembered(`fork ${cell} ${width} ${place}`, () => forkOf(ctx, cell, width, place)),
    join: (units, tail, width, entry, wish) => joinOf(ctx, units, tail, width, entry, wish),
  }
  return ctx
}

function attempt(input: SchemeIn, joins: Joins, width: number): SchemeOut | null {
  const model = modelOf(input, joins)
  const ctx = contextOf(input, model)
  const blocks: Block[] = []
  for (const root of model.roots) {
    const { units, tail } = model.fromRoot(root)
    const block = input.form === 'upright' ? uprightOf(ctx, units, tail, width) : ctx.run(units, tail, width, 'start')
    if (!block) return null
    blocks.push(block)
  }
  return drawn(input, model, ctx.keep, blocks, width)
}

function drawn(input: SchemeIn, model: Model, keep: Keep | null, blocks: readonly Block[], width: number): SchemeOut {
  const sheet: Sheet = { els: [], straight: {}, starts: [], wrapped: [] }
  const needed = Math.ceil(-topOf(blocks[0]?.boxes ?? [])) + margin
  const axis = keep && keep.axis >= needed && keep.axis - needed <= keptRoom ? keep.axis : needed
  let taken: Rect[] = []
  let y = axis
  blocks.forEach((block, i) => {
    if (i > 0) y = Math.ceil(Math.max(clearDown(taken, moved(block.boxes, margin, 0), apart), bottomOf(taken) + apart - topOf(block.boxes)))
    block.draw(sheet, margin, y)
    taken = [...taken, ...moved(block.boxes, margin, y)]
  })
  const legend = legendOf(input.legend ?? [], width)
  if (legend.h > 0) {
    const at = legend.place(taken)
    legend.draw(sheet, margin, at)
    taken.push([margin, at, margin + legend.w, at + legend.h])
  }
  const notes = model.named.map(
    ({ product, cell }) => `${nameOf(input, cell)} is named, not joined, on the way to ${nameOf(input, product)}`,
  )
  return {
    w: Math.max(input.pane, width + 2 * margin),
    h: Math.ceil(bottomOf(taken)) + margin,
    els: layered(sheet.els),
    keep: {
      pane: input.pane,
      axis,
      straight: sheet.straight,
      known: [...new Set([input.start, ...input.steps.flatMap(step => [step.from, step.to])])],
      starts: sheet.starts,
      wrapped: sheet.wrapped,
    },
    notes,
  }
}

// Where a grey line shares a stretch with an inked one, ink lies over it; structures and text lie over lines.
const layerOf = (el: El): number => (el.el === 'path' ? (el.tone === 'grey' ? 0 : 1) : el.el === 'dot' ? 2 : 3)

const layered = (els: readonly El[]): El[] => [0, 1, 2, 3].flatMap(layer => els.filter(el => layerOf(el) === layer))

const nameOf = (input: SchemeIn, cell: string): string => (input.cells[cell]?.name ?? cell).replaceAll('\u00ad', '')
