import type { Depiction, Drawing } from '../../core/chemistry/drawing.ts'
import { massText } from '../../core/quantity/print.ts'
import type { ChargedStep } from '../../core/route/charged.ts'
import { layoutScheme } from '../map/scheme/layout.ts'
import { SchemeSvg } from '../map/scheme/scheme-svg.tsx'
import type { Cell, SchemeIn, Step } from '../map/scheme/types.ts'
import { compoundOfCell } from '../map/scheme-of-plan.ts'

/** Width of the printed field, px of 1/96 inch: 182 mm. */
export const fieldPx = 688

/** Width the scheme of page 1 is laid out in; printed in the field its 13.33 px are 8.6 pt, the small size of the page. */
export const layoutPx = 800

/** A scheme on paper: nothing in it answers, and only what was chosen is drawn. */
export function SchemeFigure({
  input,
  depictions,
  label,
}: {
  readonly input: SchemeIn
  readonly depictions: ReadonlyMap<string, Depiction>
  readonly label: string
}) {
  const out = layoutScheme(input)
  const drawings: Record<string, Drawing> = {}
  for (const cell of Object.keys(input.cells)) {
    const depiction = depictions.get(compoundOfCell(cell))
    if (depiction?.kind === 'structure') drawings[cell] = depiction.drawing
  }
  // What is wider than the field is scaled down rather than cut.
  const width = Math.min(fieldPx, out.w)
  return (
    <figure class="scheme-fig" style={`width:${width}px`}>
      <SchemeSvg input={input} out={out} drawings={drawings} label={label} still />
      {out.notes.map(note => (
        <figcaption class="s soft" key={note}>
          {note}.
        </figcaption>
      ))}
    </figure>
  )
}

/** A plan's scheme as it is printed: chosen steps only, no choice left open, no legend of colours that paper has not. */
export const printed = (scheme: SchemeIn): SchemeIn => {
  const { keep: _keep, ...rest } = scheme
  return {
    ...rest,
    cells: withoutPicks(scheme.cells),
    steps: scheme.steps.filter(step => step.grey !== true).map(step => ({ ...step, alts: [] })),
    legend: [],
  }
}

/** The same scheme in the width, of two that stay readable, in which it comes out lower on paper: page 1 is to hold the days too. */
export function flattest(scheme: SchemeIn): SchemeIn {
  const heightAt = (pane: number): number => {
    const { w, h } = layoutScheme({ ...scheme, pane })
    return h * Math.min(1, fieldPx / w)
  }
  // At the wider one 13.33 px are 8 pt, the least that is read at arm's length; only a clear gain is worth it.
  return heightAt(widestLayoutPx) < 0.85 * heightAt(scheme.pane) ? { ...scheme, pane: widestLayoutPx } : scheme
}
const widestLayoutPx = 860

/** A single step leaves room beside it for what it should give, px. */
const stepPx = 500
/** From this width of both structures on they would part over two lines; what the step gives then stands below, px. */
const wideDrawings = 230
const widePx = 660
/** A formula's width, about so many px a letter. */
const formulaW = (cell: Cell | undefined): number => (cell?.formula ?? []).reduce((sum, run) => sum + run.t.length * 8, 0)

/** One step of a plan's scheme by itself: what it takes at the left, as much of it as is charged, and what it makes at the right. */
export function oneStep(scheme: SchemeIn, charged: ChargedStep): SchemeIn | null {
  const step = scheme.steps.find(one => one.no === charged.number)
  if (step === undefined) return null
  const alone: Step = { ...step, no: '', alts: [], co: [...step.co, ...step.made], made: [] }
  const cells: Record<string, Cell> = {}
  for (const id of [step.from, step.to, ...alone.co, ...step.leaves.flatMap(one => one.cell ?? [])]) {
    const cell = withoutPicks(scheme.cells)[id]
    if (cell === undefined) continue
    const { note: _note, amount, ...rest } = cell
    const isLimiting = id === charged.limiting.compound
    const own =
      id === step.from && isLimiting
        ? [{ t: massText(charged.ofCharge.chargeG) }]
        : id === step.to
          ? [{ t: massText(charged.ofCharge.medianG) }]
          : amount
    cells[id] = {
      ...rest,
      ...(own === undefined ? {} : { amount: own }),
      role: id === step.from ? 'start' : id === step.to ? cell.role : 'co',
    }
  }
  const drawnW = [step.from, step.to].reduce((sum, id) => sum + (cells[id]?.shape?.w ?? formulaW(cells[id])), 0)
  return { pane: drawnW > wideDrawings ? widePx : stepPx, form: 'wide', start: step.from, cells, steps: [alone], legend: [] }
}

const withoutPicks = (cells: SchemeIn['cells']): SchemeIn['cells'] =>
  Object.fromEntries(Object.entries(cells).map(([id, { pick: _pick, ...cell }]) => [id, cell]))
