import { byNumber } from './model.ts'
import { spoken } from './runs.ts'
import type { Box, Cell, El, Item, SchemeIn, SchemeOut, Step, Way } from './types.ts'

/** One thing on the map that a reader meets: a compound, a step, another way, a pick, a link. */
export interface Part {
  readonly key: string
  readonly kind: 'compound' | 'step' | 'way' | 'pick' | 'ways'
  readonly cell?: string
  /** Product of the step that it belongs to. */
  readonly step?: string
  readonly way?: string
  /** What a screen reader says. */
  readonly label: string
  readonly els: readonly El[]
  readonly box: Box
}

export interface Reading {
  /** In working order: the start, then step by step, other ways after the chosen one. */
  readonly parts: readonly Part[]
  /** Rails, trunks, dots, legend: they belong to nobody. */
  readonly loose: readonly El[]
}

const said = (name: string): string => name.replaceAll('\u00ad', '')
const listed = (items: readonly Item[]): string =>
  items
    .map(spoken)
    .filter(text => text !== '')
    .join(', ')

/** "benzoin, the start, 24.0 g". */
export function compoundSentence(cell: Cell): string {
  const role = { start: ', the start', goal: ', a goal', mid: '', co: ', co-reactant' }[cell.role]
  const amount = cell.amount ? `, ${spoken(cell.amount)}` : ''
  const note = cell.note ? `, ${spoken(cell.note)}` : ''
  return `${said(cell.name)}${role}${amount}${note}${cell.grey ? ', not chosen' : ''}`
}

/** "step 1, benzoin to benzil: NH4NO3 1.35 eq, AcOH; 1.5 h, 91 % (85–95)". */
export function waySentence(input: SchemeIn, step: Step, way: Way, chosen: boolean): string {
  const name = (id: string) => said(input.cells[id]?.name ?? id)
  const together = [step.from, ...step.made, ...step.co].map(name)
  const from = together.length > 1 ? `${together.slice(0, -1).join(', ')} and ${together.at(-1)}` : together[0]
  const head = chosen ? (step.no ? `step ${step.no}, ` : '') : 'another way, '
  const sure = { seen: '', remembered: '; remembered, not seen in a source', unknown: '; unknown' }[way.sure]
  const over = listed(way.over)
  const under = listed(way.under)
  const leaves = chosen ? step.leaves.map(leaver => (leaver.cell ? name(leaver.cell) : spoken(leaver.text ?? []))) : []
  const off = leaves.length > 0 ? `; gives off ${leaves.join(' and ')}` : ''
  return `${head}${from} to ${name(step.to)}${over ? `: ${over}` : ''}${under ? `; ${under}` : ''}${off}${sure}${chosen && step.grey ? '; not chosen' : ''}`
}

/** Room that shows what is under the pointer or in focus: text and structures; a line's own bounds would cover its neighbours. */
function bounds(els: readonly El[]): Box {
  let x1 = Number.POSITIVE_INFINITY
  let y1 = Number.POSITIVE_INFINITY
  let x2 = Number.NEGATIVE_INFINITY
  let y2 = Number.NEGATIVE_INFINITY
  const take = (ax: number, ay: number, bx: number, by: number) => {
    x1 = Math.min(x1, ax)
    y1 = Math.min(y1, ay)
    x2 = Math.max(x2, bx)
    y2 = Math.max(y2, by)
  }
  const bodies = els.filter(el => el.el !== 'path' && el.el !== 'dot')
  for (const el of bodies.length > 0 ? bodies : els) {
    if (el.el === 'mol') take(el.x - el.w / 2, el.y - el.h / 2, el.x + el.w / 2, el.y + el.h / 2)
    else if (el.el === 'text') {
      const touch = Math.max(0, ((el.touch ?? 0) - 16) / 2)
      take(el.x, el.y - 0.8 * el.size - touch, el.x + el.w, el.y + 0.3 * el.size + touch)
    } else if (el.el === 'pick') take(el.x, el.y, el.x + el.w, el.y + el.h)
    else if (el.el === 'path') for (const [x, y] of el.pts) take(x - 2, y - 4, x + 2, y + 4)
    else if (el.el === 'rule2') take(el.x, el.y, el.x + el.w, el.y + 3)
  }
  return x2 < x1 ? { x: 0, y: 0, w: 0, h: 0 } : { x: x1 - 3, y: y1 - 3, w: x2 - x1 + 6, h: y2 - y1 + 6 }
}

/** Groups what was laid out by what it belongs to, in the order in which it is read. */
export function readingOf(input: SchemeIn, out: SchemeOut): Reading {
  const groups = new Map<string, El[]>()
  const loose: El[] = []
  const put = (key: string, el: El) => {
    const list = groups.get(key)
    if (list) list.push(el)
    else groups.set(key, [el])
  }
  const chosenWay = new Map(input.steps.map(step => [step.to, step.id]))
  for (const el of out.els) {
    const { cell, step, way } = el.of
    if (el.cls === 'rail' || el.cls === 'dot' || el.cls === 'legend') loose.push(el)
    else if (el.el === 'pick') put(`pick ${step ?? ''} ${cell}`, el)
    else if (el.cls === 'ways') put(`ways ${step}`, el)
    else if (step && way && way !== chosenWay.get(step)) put(`way ${step} ${way}`, el)
    else if (step && cell) put(`in ${step} ${cell}`, el)
    else if (step) put(`step ${step}`, el)
    else if (cell) put(`compound ${cell}`, el)
    else loose.push(el)
  }
  const parts: Part[] = []
  const take = (key: string, part: Omit<Part, 'key' | 'els' | 'box'>) => {
    const els = groups.get(key)
    if (!els) return
    groups.delete(key)
    parts.push({ ...part, key, els, box: bounds(els) })
  }
  const compound = (id: string, step?: string) => {
    const cell = input.cells[id]
    if (!cell) return
    const own = step === undefined ? {} : { step }
    take(step === undefined ? `compound ${id}` : `in ${step} ${id}`, { kind: 'compound', cell: id, ...own, label: compoundSentence(cell) })
    take(`pick ${step ?? ''} ${id}`, { kind: 'pick', cell: id, ...own, label: `${said(cell.name)}: buy or make` })
  }
  compound(input.start)
  for (const step of [...input.steps].sort(byNumber)) {
    compound(step.from)
    take(`step ${step.to}`, { kind: 'step', step: step.to, way: step.id, label: waySentence(input, step, step, true) })
    for (const id of step.co) compound(id, step.to)
    for (const leaver of step.leaves) if (leaver.cell) compound(leaver.cell, step.to)
    for (const alt of step.alts) {
      take(`way ${step.to} ${alt.id}`, { kind: 'way', step: step.to, way: alt.id, label: waySentence(input, step, alt, false) })
    }
    const others = step.alts.map(alt => waySentence(input, step, alt, false)).join('. ')
    take(`ways ${step.to}`, {
      kind: 'ways',
      step: step.to,
      label: `other ways to ${said(input.cells[step.to]?.name ?? step.to)}. ${others}`,
    })
    compound(step.to)
  }
  return { parts, loose: [...loose, ...[...groups.values()].flat()] }
}

/** Where an arrow key leads: right and left along the arrows, down and up in reading order. Null: nowhere. */
export function neighbour(
  input: SchemeIn,
  parts: readonly Part[],
  key: string,
  direction: 'right' | 'left' | 'down' | 'up',
): string | null {
  const at = parts.findIndex(part => part.key === key)
  const part = parts[at]
  if (!part) return null
  if (direction === 'down') return parts[at + 1]?.key ?? null
  if (direction === 'up') return parts[at - 1]?.key ?? null
  const has = (wanted: string) => (parts.some(one => one.key === wanted) ? wanted : null)
  if (part.kind === 'compound' && part.step === undefined) {
    const step = input.steps.find(one => (direction === 'right' ? one.from === part.cell : one.to === part.cell))
    return step ? has(`step ${step.to}`) : null
  }
  const step = input.steps.find(one => one.to === part.step)
  if (!step) return null
  return has(`compound ${direction === 'right' ? step.to : step.from}`)
}
