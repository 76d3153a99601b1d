import { itemWidth, textWidth } from './text-width.ts'
import type { Item, Run } from './types.ts'

export interface Lines {
  readonly lines: readonly Item[]
  readonly w: number
}

const comma: Run = { t: ', ' }

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

function greedy(parts: readonly { item: Item; glue: Run }[], width: number, size: number): Lines {
  const lines: Run[][] = []
  let w = 0
  let line: Run[] = []
  let lineW = 0
  parts.forEach(({ item, glue }, i) => {
    // The comma stays with what it follows, so it counts although a line may end there.
    const tail = i < parts.length - 1 && glue === comma ? [{ t: ',' }] : []
    const own = itemWidth([...item, ...tail], size)
    const before = i > 0 ? parts[i - 1]!.glue : comma
    const joined = before === comma ? itemWidth([{ t: ' ' }], size) : itemWidth([before], size)
    if (line.length > 0 && lineW + joined + own > width) {
      lines.push(line)
      w = Math.max(w, lineW)
      line = []
      lineW = 0
    }
    if (line.length > 0) {
      line.push({ t: ' ' })
      lineW += joined
    }
    line.push(...item, ...tail)
    lineW += own
  })
  if (line.length > 0) lines.push(line)
  return { lines, w: Math.max(w, lineW) }
}

/**
 * Items set into lines, balanced: as few lines as the width allows, then the narrowest width with as many.
 *
 * @param split may an item be parted at its spaces, where it is too long for a line?
 */
export function fill(items: readonly Item[], width: number, size: number, split = false): Lines {
  const parts = items.flatMap((item, i) => {
    const last = i === items.length - 1
    if (!split || itemWidth(item, size) <= width) return [{ item, glue: last ? { t: '' } : comma }]
    const words = pieces(item)
    return words.map((word, k) => ({ item: word, glue: k < words.length - 1 ? { t: ' ' } : last ? { t: '' } : comma }))
  })
  if (parts.length === 0) return { lines: [], w: 0 }
  const widest = greedy(parts, width, size)
  let low = 0
  let high = widest.w
  let best = widest
  // A pixel is fine enough; the loop halves at most 8 times at these widths.
  while (high - low > 1) {
    const middle = (low + high) / 2
    const tried = greedy(parts, middle, size)
    if (tried.lines.length <= widest.lines.length && tried.w <= middle + 1e-9) {
      best = tried
      high = Math.min(middle, tried.w)
    } else low = middle
  }
  return best
}

/** A name parted at spaces, hyphens and soft hyphens: as few lines as the width allows, then the narrowest. */
export function breakName(name: string, width: number, size: number, wght: number): { lines: readonly string[]; w: number } {
  const words = name.split(/(?<=[ \u00ad-])/)
  const widthOf = (line: string) => textWidth(shown(line), size, wght)
  const set = (limit: number): { lines: string[]; w: number } => {
    const lines: string[] = []
    let line = ''
    for (const word of words) {
      if (line !== '' && widthOf(line + word) > limit) {
        lines.push(shown(line))
        line = word
      } else line += word
    }
    lines.push(shown(line))
    return { lines, w: Math.max(...lines.map(text => textWidth(text, size, wght))) }
  }
  const widest = set(width)
  let best = widest
  let low = 0
  let high = widest.w
  while (high - low > 1) {
    const middle = (low + high) / 2
    const tried = set(middle)
    if (tried.lines.length <= widest.lines.length && tried.w <= middle + 1e-9) {
      best = tried
      high = Math.min(middle, tried.w)
    } else low = middle
  }
  return best
}

/** A piece as it stands at the end of a line: a soft hyphen becomes one, those inside vanish. */
function shown(line: string): string {
  const text = line.endsWith('\u00ad') ? `${line.slice(0, -1)}-` : line
  return text.replaceAll('\u00ad', '').trimEnd()
}
