import type { CommaRule } from '../quantity/number.ts'
import { type Measure, measuresIn } from './measures.ts'

/** The figures of an outcome line, and what else it says. */
export interface Figures {
  readonly masses: readonly Measure[]
  readonly moles: readonly Measure[]
  readonly volumes: readonly Measure[]
  readonly shares: readonly Measure[]
  /** The one that stands for the line where one is to be shown: a mass before moles, a volume, a percentage; as written. */
  readonly shown: string | null
  /** The line as far as the figures are to be found in it; the places of the measures count in it. */
  readonly line: string
  /** What is called by a name; empty where nothing is. */
  readonly name: string
  /** What stands behind "from"; null where nothing does. */
  readonly origin: string | null
  /** What is left over and may say something of the figure, as written; null = nothing. */
  readonly stray: string | null
  /** It stands behind the figure and tells of what was charged or done: the figure itself is plain. */
  readonly isOfTail: boolean
}

/** Where it came from and what was done to it, told behind the first figure: no part of what came out. */
const tail =
  /(?<!\p{L})(?:(?:starting\s+)?from|after|following|upon|washed|dissolved|(?:re)?crystalli[sz]ed\s+from|dried\s+(?:at|in|over|for|on)|using)(?!\p{L}).*$/isu
/** A figure right behind one of these is what was charged. */
const charged = /(?<!\p{L})(?:from|with|using|in|on)\s*(?:ca\.?|about)?\s*$/iu
const whenOrHowHot = /\d[\d.,]*(?:\s*[-–]\s*\d[\d.,]*)?\s*(?:°\s?C|hours?|hrs?|h|min(?:utes)?|days?)(?!\p{L})/giu
const filler =
  /(?<!\p{L})(?:of theory|(?:the )?title compound|theoretical|der Theorie|theory|th\.|d\. Th\.|yield|crude|raw|wet|moist|damp|pure|purified|dry|dried|white|yellow|colou?rless|pale|crystals?|needles?|plates?|solid|powder|product|about|approx\.?|ca\.?|circa|in (?:two|three|2|3) crops)(?!\p{L})/giu

export function figuresIn(body: string, comma: CommaRule): Figures {
  const first = measuresIn(body, comma).find(isFigure)
  const whence = first === undefined ? '' : (tail.exec(body.slice(first.to))?.[0] ?? '')
  const line = body.slice(0, body.length - whence.length)
  const all = measuresIn(line, comma)
  const figures = all.filter(isFigure)
  const of = (units: readonly string[]): readonly Measure[] => figures.filter(one => units.includes(one.unit))
  const written = (one: Measure): string => line.slice(one.from, one.to).trim()
  const [masses, moles, volumes, shares] = kinds.map(of) as [readonly Measure[], readonly Measure[], readonly Measure[], readonly Measure[]]
  const odd = figures.find(
    one => one.perGram || /\d\s*[/⁄]\s*\d/.test(written(one)) || (one.kind === 'amount' && charged.test(line.slice(0, one.from))),
  )
  let rest = line
  for (const { from, to, kind } of [...all].reverse())
    if (kind === 'time' || kind === 'temperature' || figures.some(one => one.from === from))
      rest = `${rest.slice(0, from)} ${rest.slice(to)}`
  const shown = (masses[0] ?? moles[0] ?? volumes[0] ?? shares[0]) as Measure | undefined
  const name = called(rest)
  const told = whence.replace(whenOrHowHot, ' ')
  const isOfTail = odd === undefined && /[\d%±^<>]/.test(told)
  return {
    masses,
    moles,
    volumes,
    shares,
    shown: shown === undefined ? null : written(shown),
    line,
    name,
    origin: /^(?:starting\s+)?from\s+(?:the\s+)?([^,;()]+)/i.exec(whence)?.[1]?.trim() ?? null,
    stray: odd !== undefined ? written(odd) : isOfTail ? whence.trim() : strayIn(name),
    isOfTail,
  }
}

/** What is left once figures and words that say nothing of how much are taken out. */
function called(rest: string): string {
  const name = rest
    .replace(filler, ' ')
    .replace(/\(\s*[,;:=.~≈]*\s*\)/g, ' ')
    .replace(/[,;:=~≈]+(?!\S)|(?<!\S)[,;:.=~≈]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^(?:(?:of|the|as|in|and|an?)\b\s*)+|\s*\b(?:of|as|the|in|and)$/gi, '')
    .trim()
  const isPaired = (name.match(/\(/g)?.length ?? 0) === (name.match(/\)/g)?.length ?? 0)
  return (isPaired ? name : name.replace(/[()]/g, ' '))
    .replace(/\s+\.|\.$/g, '')
    .replace(/\s+/g, ' ')
    .trim()
}

const kinds = [['g', 'mg', 'kg', 'µg'], ['mol', 'mmol'], ['mL', 'L', 'µL'], ['%']] as const
const isFigure = ({ unit }: Measure): boolean => kinds.some(units => (units as readonly string[]).includes(unit))

const otherThing =
  /(?<!\p{L})(?:starting materials?|unreacted|by-?products?|side[\s-]products?|mother liquors?|filtrate|residue|mixture|solution|slurry|filter\s?cake|(?:first|second|third) crop)(?!\p{L})/iu

/** Digits that belong to a name, "2,3-diphenyl", "C6H6", and the signs of a hand, are taken out; any other digit or sign is told. */
function strayIn(name: string): string | null {
  const rest = name
    .replace(/\((?:\+|[-−–]|±|\+\/[-−])\)-?/g, ' ')
    .replace(/(?<![\p{N}.,])\d+[a-z]?['′]?(?:,\d+[a-z]?['′]?)*-(?=[\p{L}([])/gu, ' ')
    .replace(/\p{L}[\p{L}\d]*/gu, ' ')
  return /[\d%±^/+<>≤≥≦≧]/.test(rest) || otherThing.test(name) ? name : null
}
