import type { VNode } from 'preact'
import { textWidth } from './scheme/text-width.ts'

/** What is left after a step, as fractions of the start (0 to 1): the 10th percentile, at typical yields (so that each tread is the one before times its step's yield), the 90th. */
export interface Stair {
  readonly name: string
  readonly p10: number
  readonly expected: number
  readonly p90: number
}

/** One step of the stair: a tread from 0 to what typical yields leave, its spread across the edge. px. */
export interface Tread {
  readonly name: string
  readonly nameX: number
  readonly nameY: number
  /** Where the tread ends: the stair's edge. */
  readonly x: number
  readonly top: number
  readonly bottom: number
  readonly spread: readonly [number, number]
  readonly spreadY: number
  /** In percent, and where it stands: before the spread, behind it on a short tread. */
  readonly figure: string
  readonly figureX: number
  readonly figureY: number
  readonly last: boolean
}

export interface Staircase {
  readonly w: number
  readonly h: number
  readonly treads: readonly Tread[]
  /** The stair's outline from the start's full height down to the last tread. */
  readonly edge: string
  readonly fill: string
  /** x of 0, 25, 50, 75 and 100 %. */
  readonly ticks: readonly number[]
}

const rise = 20
const top = 3
const side = 6
const textSize = 13.33
const air = 4

const n = (value: number): string => String(Math.round(value * 10) / 10 + 0)
const clamp = (value: number): number => Math.max(0, Math.min(1, value))

type Room = readonly [number, number]

/**
 * Where name and figure stand: both before the spread, the figure at its side; on a shorter tread the figure behind it, then the name too.
 * Where even that is too narrow, the name is cut and its row's heading still says it in full.
 */
function beside(name: string, figureW: number, before: Room, behind: Room): { name: string; nameX: number; figureX: number } {
  const nameW = textWidth(name, textSize)
  const gap = 2 * air
  const [left, leftEnd] = before
  const [right, rightEnd] = behind
  const roomLeft = leftEnd - left
  const roomRight = rightEnd - right
  if (nameW + gap + figureW <= roomLeft) return { name, nameX: left, figureX: leftEnd - figureW }
  if (nameW <= roomLeft && figureW <= roomRight) return { name, nameX: left, figureX: right }
  if (nameW + gap + figureW <= roomRight) return { name, nameX: right, figureX: right + nameW + gap }
  if (figureW <= roomLeft && nameW <= roomRight) return { name, nameX: right, figureX: leftEnd - figureW }
  const inLeft = roomLeft >= roomRight
  const cut = shortened(name, (inLeft ? roomLeft : roomRight) - gap - figureW)
  const nameX = inLeft ? left : right
  return { name: cut, nameX, figureX: inLeft ? leftEnd - figureW : nameX + textWidth(cut, textSize) + gap }
}

function shortened(name: string, width: number): string {
  for (let length = name.length - 1; length > 0; length--) {
    const cut = `${name.slice(0, length)}…`
    if (textWidth(cut, textSize) <= width) return cut
  }
  return '…'
}

/**
 * A staircase on its side: each tread is what survives after a step, on an axis of 0 to 100 % of the start.
 *
 * @param stairs in working order, fractions of the start; what is beyond 0..1 is drawn at the axis' end
 * @param width px, axis and its margins of 6
 */
export function staircaseOf(stairs: readonly Stair[], width: number): Staircase {
  const at = (fraction: number) => side + clamp(fraction) * (width - 2 * side)
  const h = top + stairs.length * rise + 2
  const treads = stairs.map((stair, i): Tread => {
    const last = i === stairs.length - 1
    const x = at(stair.expected)
    const from = at(Math.min(stair.p10, stair.expected))
    const to = at(Math.max(stair.p90, stair.expected))
    const y = top + i * rise
    const figure = String(Math.round(stair.expected * 100))
    const figureW = textWidth(figure, textSize, last ? 680 : 460)
    const placed = beside(stair.name.replaceAll('\u00ad', ''), figureW, [side + air, from - air], [to + air + 2, width])
    return {
      name: placed.name,
      nameX: placed.nameX,
      nameY: y + 14,
      x,
      top: y,
      bottom: y + rise,
      spread: [from, to],
      spreadY: y + rise / 2,
      figure,
      figureX: placed.figureX,
      figureY: y + 14,
      last,
    }
  })
  let edge = `M${n(at(1))} ${top}`
  let before = top
  for (const tread of treads) {
    edge += `L${n(tread.x)} ${n(before)}L${n(tread.x)} ${n(tread.bottom)}`
    before = tread.bottom
  }
  edge += `L${side} ${n(before)}`
  const fill = treads.map(tread => `M${side} ${n(tread.top)}H${n(tread.x)}V${n(tread.bottom)}H${side}Z`).join('')
  return { w: width, h, treads, edge, fill, ticks: [0, 0.25, 0.5, 0.75, 1].map(at) }
}

/** "benzil 91 % (85 to 95), lophine 81 % (74 to 88)": what a screen reader says. */
export function staircaseSentence(stairs: readonly Stair[]): string {
  const percent = (fraction: number) => Math.round(fraction * 100)
  const said = stairs.map(
    ({ name, p10, expected, p90 }) => `${name.replaceAll('\u00ad', '')} ${percent(expected)} % (${percent(p10)} to ${percent(p90)})`,
  )
  return `What survives of the start, at typical yields (P10 to P90): ${said.join(', ')}`
}

/** The yield staircase of one route's row. */
export function YieldStaircase({ stairs, chosen, width = 330 }: { stairs: readonly Stair[]; chosen: boolean; width?: number }): VNode {
  const { w, h, treads, edge, fill, ticks } = staircaseOf(stairs, width)
  return (
    <svg
      class={`staircase${chosen ? '' : ' alt'}`}
      width={w}
      height={h}
      viewBox={`0 0 ${w} ${h}`}
      role="img"
      aria-label={staircaseSentence(stairs)}
    >
      <path class="tick" d={ticks.map(x => `M${n(x)} 0V${h}`).join('')} />
      <path class="tread" d={fill} />
      <path class="edge" d={edge} />
      {treads.map(tread => {
        const [from, to] = tread.spread
        const y = n(tread.spreadY)
        const ends = `M${n(from)} ${n(tread.spreadY - 3.5)}v7M${n(to)} ${n(tread.spreadY - 3.5)}v7`
        return (
          <g key={tread.bottom}>
            <path class="halo" d={`M${n(from - 1)} ${y}H${n(to + 1)}`} />
            <path class="spread" d={`M${n(from)} ${y}H${n(to)}${ends}`} />
            <text x={n(tread.nameX)} y={tread.nameY}>
              {tread.name}
            </text>
            <text class={tread.last ? 'figure end' : 'figure'} x={n(tread.figureX)} y={tread.figureY}>
              {tread.figure}
            </text>
          </g>
        )
      })}
    </svg>
  )
}

/** The common axis over the rows: 0, 25, 50, 75, 100 %. */
export function StaircaseAxis({ width = 330 }: { width?: number }): VNode {
  const { ticks } = staircaseOf([], width)
  return (
    <svg class="staircase axis" width={width} height={16} viewBox={`0 0 ${width} 16`} aria-hidden="true">
      {ticks.map((x, i) => (
        <text key={x} x={n(i === 4 ? width : x)} y={12} text-anchor={i === 0 ? 'start' : i === 4 ? 'end' : 'middle'}>
          {i === 4 ? '100 %' : String(i * 25)}
        </text>
      ))}
    </svg>
  )
}
