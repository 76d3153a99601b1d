import { itemWidth, textWidth } from './text-width.ts'
import type { Item, Run } from './types.ts'

export interface Lines {
  readonly lines: readonly Item[]
  readonly w: number
}

const comma: Run = { t: ',' }
const space: Run = { t: ' ' }
const none: Run = { t: '' }

/** An item in pieces that may stand on lines of their own: at its spaces. */
function pieces(item: Item): Item[] {
  const out: Run[][] = [[]]
  for (const run of item) {
    run.t.split(' ').forEach((word, i) => {
      if (i > 0) out.push([])
      if (word !== '') out.at(-1)!.push({ ...run, t: word })
    })
  }
  return out.filter(piece => piece.length > 0)
}

interface Part {
  readonly item: Item
  readonly glue: Run
  /** Width with its comma, and of the space before it. */
  readonly own: number
  readonly space: number
}

/** First line that each part stands on, for a width. */
function greedy(parts: readonly Part[], width: number): { breaks: number[]; w: number } {
  const breaks = [0]
  let w = 0
  let lineW = 0
  parts.forEach(({ own, space }, i) => {
    if (i > 0 && lineW + space + own > width) {
      breaks.push(i)
      w = Math.max(w, lineW)
      lineW = own
    } else lineW += (i > 0 ? space : 0) + own
  })
  return { breaks, w: Math.max(w, lineW) }
}

/**
 * Items set into lines, balanced: as few lines as the width allows, then the narrowest width with as many.
 *
 * @param split may an item be parted at its spaces, where it is too long for a line?
 */
export function fill(items: readonly Item[], width: number, size: number, split = false): Lines {
  const last = items.length - 1
  const loose = items.flatMap((item, i) => {
    const glue = i === last ? none : comma
    if (!split || itemWidth(item, size) <= width) return [{ item, glue }]
    const words = pieces(item)
    return words.map((word, k) => ({ item: word, glue: k < words.length - 1 ? space : glue }))
  })
  if (loose.length === 0) return { lines: [], w: 0 }
  const spaceW = itemWidth([space], size)
  const parts: Part[] = loose.map(({ item, glue }) => ({
    item,
    glue,
    own: itemWidth(item, size) + (glue === comma ? itemWidth([comma], size) : 0),
    space: spaceW,
  }))
  const widest = greedy(parts, width)
  let low = 0
  let high = widest.w
  let best = widest
  // A pixel is fine enough; the loop halves at most 8 times at these widths.
  while (high - low > 1) {
    const middle = (low + high) / 2
    const tried = greedy(parts, middle)
    if (tried.breaks.length <= widest.breaks.length && tried.w <= middle + 1e-9) {
      best = tried
      high = Math.min(middle, tried.w)
    } else low = middle
  }
  const lines = best.breaks.map((from, n) => {
    const line: Run[] = []
    parts.slice(from, best.breaks[n + 1]).forEach(({ item, glue }, k) => {
      if (k > 0) line.push(space)
      line.push(...item, ...(glue === comma ? [comma] : []))
    })
    return line
  })
  return { lines, w: best.w }
}

/** A locant or a stereodescriptor: (E)-, 2,3-, meso-. */
const prefix = /^(?:[^a-z]*|.*\b(?:cis|trans|meso|tert|sec|endo|exo))-$/

/** Where a name may part: after a space, a hyphen, a soft hyphen, but never between a prefix and what it stands before. */
function piecesOf(name: string): string[] {
  const pieces: string[] = []
  for (const word of name.split(/(?<=[ \u00ad-])/)) {
    const last = pieces.at(-1)
    if (last !== undefined && prefix.test(last)) pieces[pieces.length - 1] = last + word
    else pieces.push(word)
  }
  return pieces
}

/** A name parted at spaces, hyphens and soft hyphens: as few lines as the width allows, then the narrowest. */
export function breakName(name: string, width: number, size: number, wght: number): { lines: readonly string[]; w: number } {
  const words = piecesOf(name)
  const hyphen = textWidth('-', size, wght)
  const spaceW = textWidth(' ', size, wght)
  const widths = words.map(word => textWidth(word, size, wght))
  // What a word adds at the end of a line: a soft hyphen is seen there, a space is not.
  const tails = words.map(word => (word.endsWith('\u00ad') ? hyphen : word.endsWith(' ') ? -spaceW : 0))
  const set = (limit: number): { breaks: number[]; w: number } => {
    const breaks = [0]
    let w = 0
    let lineW = 0
    words.forEach((_, i) => {
      if (i > 0 && lineW + widths[i]! + tails[i]! > limit) {
        w = Math.max(w, lineW + tails[i - 1]!)
        breaks.push(i)
        lineW = 0
      }
      lineW += widths[i]!
    })
    return { breaks, w: Math.max(w, lineW + (tails.at(-1) ?? 0)) }
  }
  const widest = set(width)
  let best = widest
  let low = 0
  let high = widest.w
  while (high - low > 1) {
    const middle = (low + high) / 2
    const tried = set(middle)
    if (tried.breaks.length <= widest.breaks.length && tried.w <= middle + 1e-9) {
      best = tried
      high = Math.min(middle, tried.w)
    } else low = middle
  }
  const lines = best.breaks.map((from, n) => shown(words.slice(from, best.breaks[n + 1]).join('')))
  // Kerning where two pieces meet may add a fraction of a pixel.
  return { lines, w: Math.max(...lines.map(line => textWidth(line, size, wght))) }
}

/** A piece as it stands at the end of a line: a soft hyphen becomes one, those inside vanish. */
function shown(line: string): string {
  const text = line.endsWith('\u00ad') ? `${line.slice(0, -1)}-` : line
  return text.replaceAll('\u00ad', '').trimEnd()
}
