import { type ComponentChildren, h, type VNode } from 'preact'
import type { Drawing } from '../../../core/chemistry/drawing.ts'
import type { Mark } from '../mark.ts'
import { neighbour, type Part, readingOf } from './reading.ts'
import { elMarks, pathData, pickMarks } from './scheme-marks.ts'
import type { Box, SchemeIn, SchemeOut } from './types.ts'

export interface SchemeProps {
  readonly input: SchemeIn
  readonly out: SchemeOut
  /** Structures by cell id. */
  readonly drawings: Readonly<Record<string, Drawing>>
  /** What the whole shows: "Scheme: benzoin to lophine and two more". */
  readonly label: string
  /** On paper: nothing answers, nothing is focused. */
  readonly still?: boolean
  readonly onCompound?: (cell: string) => void
  /** A step's arrow, or another way of it. */
  readonly onWay?: (step: string, way: string) => void
  readonly onOtherWays?: (step: string) => void
  readonly onPick?: (cell: string, value: 'buy' | 'make') => void
}

/** A mark as an element of the page. */
export function markNode(mark: Mark | string, key?: number): ComponentChildren {
  if (typeof mark === 'string') return mark
  return h(mark.tag, key === undefined ? mark.attrs : { ...mark.attrs, key }, ...(mark.kids ?? []).map((kid, i) => markNode(kid, i)))
}

const directions: Readonly<Record<string, 'right' | 'left' | 'down' | 'up'>> = {
  ArrowRight: 'right',
  ArrowLeft: 'left',
  ArrowDown: 'down',
  ArrowUp: 'up',
}

const hit = (box: Box): VNode => <rect class="hit" x={box.x} y={box.y} width={box.w} height={box.h} />

/** The scheme: one code for screen and paper. Read in working order; arrow keys follow the arrows. */
export function SchemeSvg(props: SchemeProps): VNode {
  const { input, out, drawings, label, still } = props
  const { parts, loose } = readingOf(input, out)
  const draw = (els: Part['els']) => els.flatMap(el => elMarks(el, cell => drawings[cell])).map((mark, i) => markNode(mark, i))
  const size = { width: out.w, height: out.h, viewBox: `0 0 ${out.w} ${out.h}` }
  if (still) {
    return (
      <svg class="scheme still" {...size} role="img" aria-label={[label, ...parts.map(part => part.label)].join('. ')}>
        {draw(out.els)}
      </svg>
    )
  }
  const act = (part: Part): (() => void) | undefined => {
    if (part.kind === 'compound' && part.cell) return () => props.onCompound?.(part.cell!)
    if (part.kind === 'ways' && part.step) return () => props.onOtherWays?.(part.step!)
    if (part.step && part.way) return () => props.onWay?.(part.step!, part.way!)
    return undefined
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const direction = directions[event.key]
    const root = event.currentTarget as SVGSVGElement
    const own = (event.target as Element).closest('[data-key]')?.getAttribute('data-key')
    if (!direction || !own) return
    const next = neighbour(input, parts, own, direction)
    event.preventDefault()
    if (next === null) return
    for (const node of root.querySelectorAll<SVGElement>('[data-key]')) {
      if (node.getAttribute('data-key') !== next) continue
      ;(node.matches('[role=radiogroup]') ? node.querySelector<SVGElement>('[tabindex="0"]') : node)?.focus()
    }
  }
  return (
    // biome-ignore lint/a11y/useSemanticElements: SVG has no fieldset.
    <svg class="scheme" {...size} role="group" aria-label={label} onKeyDown={onKeyDown}>
      <g>{draw(loose.filter(el => el.cls !== 'legend'))}</g>
      {parts.map(part =>
        part.kind === 'pick' ? (
          <Pick key={part.key} part={part} {...(props.onPick ? { onPick: props.onPick } : {})} />
        ) : (
          <Answering key={part.key} part={part} act={act(part)}>
            {draw(part.els)}
          </Answering>
        ),
      )}
      <g>{draw(loose.filter(el => el.cls === 'legend'))}</g>
    </svg>
  )
}

function Answering({ part, act, children }: { part: Part; act: (() => void) | undefined; children: ComponentChildren }): VNode {
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== ' ') return
    event.preventDefault()
    act?.()
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the button is the rect; a press anywhere on its drawing is meant for it.
    <g class={`part ${part.kind}`} onClick={act}>
      {/* The button holds no text of its own, so that its name is its label and not the letters of a structure. */}
      {/* biome-ignore lint/a11y/useSemanticElements: SVG has no button element. */}
      <rect
        class="hit"
        x={part.box.x}
        y={part.box.y}
        width={part.box.w}
        height={part.box.h}
        data-key={part.key}
        role="button"
        tabindex={0}
        aria-label={part.label}
        onKeyDown={onKeyDown}
      />
      {part.els.map(el => (el.el === 'path' ? <path key={el.id} class="grip" d={pathData(el.pts, el.r)} /> : null))}
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a bare g takes no focus; the label already says what stands in it. */}
      <g aria-hidden="true">{children}</g>
    </g>
  )
}

/** Make or buy: a radio group of two; arrow keys switch. One word alone says what cannot be otherwise. */
function Pick({ part, onPick }: { part: Part; onPick?: (cell: string, value: 'buy' | 'make') => void }): VNode {
  const pick = part.els.find(el => el.el === 'pick')!
  const words = pickMarks(pick)
  const cell = part.cell ?? ''
  if (words.length === 1) {
    return <g class="part pick only">{words[0]!.marks.map((mark, i) => markNode(mark, i))}</g>
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === ' ' || event.key === 'Enter') {
      const value = (event.target as Element).getAttribute('data-value')
      if (value === 'buy' || value === 'make') onPick?.(cell, value)
    } else if (event.key in directions) {
      const value = words.find(word => !word.on)!.value
      onPick?.(cell, value)
      const group = event.currentTarget as SVGElement
      group.querySelector<SVGElement>(`[data-value=${value}]`)?.focus()
    } else return
    event.preventDefault()
    event.stopPropagation()
  }
  return (
    <g class="part pick" data-key={part.key} role="radiogroup" aria-label={part.label} onKeyDown={onKeyDown}>
      {words.map(word => (
        // biome-ignore lint/a11y/useSemanticElements: SVG has no input element.
        <g
          key={word.value}
          class="part"
          role="radio"
          tabindex={word.on ? 0 : -1}
          aria-checked={word.on}
          aria-label={word.value}
          data-value={word.value}
          onClick={() => onPick?.(cell, word.value)}
        >
          {hit({ x: word.x - 2, y: pick.y, w: word.w + 2, h: pick.h })}
          <g>{word.marks.map((mark, i) => markNode(mark, i))}</g>
        </g>
      ))}
    </g>
  )
}
