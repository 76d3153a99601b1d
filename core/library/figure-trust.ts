import { commonPractice, isAsEntered, namesReadSource, namesSources } from './from-words.ts'
import { type Mark, trustOfMark } from './mark.ts'
import type { Material } from './material.ts'
import { type Physical, type PhysicalFigure, physicalFigures, trustInPhysical } from './physical.ts'
import type { Source } from './source.ts'
import type { ChargeLine, Transformation } from './transformation.ts'
import { isOwnBench, lastWord, ownBench, sourcesFor, type Trust, trustInHazards, trustInYield, trustOf } from './trust.ts'

/** How sure one figure of a record is, and where it comes from. */
export interface FigureTrust {
  readonly figure:
    | 'charges'
    | 'yield'
    | 'range of the yield'
    | 'second product'
    | 'times'
    | 'temperature'
    | 'largest scale'
    | 'smallest scale'
    | 'hold point'
    | 'hazards'
    | Physical
  /** What it comes to, of the four or five words that records are sorted by. */
  readonly trust: Trust
  /** The same more closely: what is told beside the figure. */
  readonly mark: Exclude<Mark, 'reckoned'>
  /** In words; null where nothing speaks for it. */
  readonly source: string | null
  /** Of charges in one: only some of the lines are no surer than that. */
  readonly inPart?: true
}

type Marked = Exclude<Mark, 'reckoned'>

const marked = (figure: FigureTrust['figure'], mark: Marked, source: string | null): FigureTrust => ({
  figure,
  trust: trustOfMark(mark),
  mark,
  source,
})

/** What was read goes before what is remembered, unless the figure itself is only remembered. */
export const citations = (sources: readonly Source[], trust: Trust = 'seen'): string | null => {
  const speaking = sources.filter(source => source.checked === (trust !== 'remembered'))
  const told = [...new Set((speaking.length > 0 ? speaking : sources).map(source => source.citation.replace(/\.$/, '')))]
  return told.length === 0 ? null : told.join('; ')
}

/** Where no source names the figure, that it is a source of the whole record is said. */
const ofRecord = (sources: readonly Source[], trust: Trust = 'seen'): string | null => {
  const told = citations(sources, trust)
  return told === null ? null : `for the whole record: ${told}`
}

/**
 * The figures of a transformation that plans rest on: what is charged, what it gives, how hot, how long and how large it was run.
 *
 * Hours that no source gives are the judgement of whoever wrote the record down, so they count as remembered and say that they are estimates;
 * the ends of a yield range are an allowance unless the record says that the source gives a range.
 */
export function stepFigures(step: Transformation): readonly FigureTrust[] {
  const { sources, timesBasis, temperatureC, coProducts, holdPoint, holdPointBasis } = step
  const yields = trustInYield(step)
  const timed = timesBasis === 'source'
  return [
    chargesFigure(step),
    marked('yield', yields, citations(sourcesFor(sources, 'yield'), yields)),
    ends(step, yields),
    ...(coProducts ?? []).slice(0, 1).map(({ yieldPercent }) => {
      const from = yieldPercent.from ?? ''
      const isYield = from === '' || from.startsWith(ownBench) || namesSources(from, sources)
      return marked('second product', isYield ? yields : 'remembered', from === '' ? ofRecord(sources) : from)
    }),
    timed ? timesFigure(step) : marked('times', 'estimated', 'estimated from the operations'),
    ...(temperatureC === undefined ? [] : [named(step, 'temperature', /\b(temperatures?|conditions)\b/)]),
    ...(step.largestProvenG === undefined ? [] : [named(step, 'largest scale', /\blargest scale\b/)]),
    ...(step.smallestProvenG === undefined ? [] : [named(step, 'smallest scale', /\bsmall(est)? scale\b/)]),
    ...(holdPoint === undefined
      ? []
      : [holdPointBasis === 'source' ? holdPointFigure(step) : marked('hold point', 'remembered', 'common practice')]),
  ]
}

/** What a change of this very figure names; null where nothing changed it. */
const changeOf = (sources: readonly Source[], figure: string): readonly Source[] | null => {
  const own = sources.filter(source => source.for?.includes(figure))
  const last = lastWord(own)
  return last.length > 0 && last !== own ? last : null
}

function timesFigure(step: Transformation): FigureTrust {
  const change = changeOf(step.sources, 'times')
  if (change !== null) return marked('times', 'remembered', citations(change))
  return marked('times', recordTrust(step, sourcesFor(step.sources, 'times')), citations(step.sources))
}

function holdPointFigure(step: Transformation): FigureTrust {
  const change = changeOf(step.sources, 'hold point')
  if (change !== null) return marked('hold point', 'remembered', citations(change))
  return marked('hold point', recordTrust(step, step.sources), ofRecord(step.sources))
}

/** How sure the words and amounts of a record are as its sources speak of them. A bench that overrides a yield alone leaves them as they were. */
export function recordFigure(step: Transformation): FigureTrust {
  const { trust, told, gaps } = asSourced(step)
  return marked('charges', trust, besides(told, gaps))
}

/** What the sources say of the charge; a record that was read in the main may have gaps that were filled otherwise, and says which. */
function asSourced(step: Transformation) {
  const own = sourcesFor(step.sources, 'charge')
  const whole = recordTrust(step, own)
  // Of a record that was read for its yield alone.
  const isRead = own.length === 0 || own.some(source => source.checked)
  const trust = whole === 'seen' && !isRead ? 'remembered' : whole
  const speaking = own.length > 0 ? own : step.sources
  const gaps = trust === 'seen' ? speaking.filter(source => !source.checked).map(source => source.citation) : []
  return { trust, told: citations(speaking, trust), gaps }
}

const besides = (told: string | null, gaps: readonly string[]): string | null =>
  told === null || gaps.length === 0 ? told : `${told}; in part ${gaps.map(gap => gap.replace(/\.$/, '')).join('; ')}`

/** Least sure first. What the library reckoned says so at its line and does not count, unless there is nothing else. */
const leastSure = ['remembered', 'own bench', 'seen', 'derived'] as const

/** How sure all amounts that a step's record states are in one: no surer than the least sure of its lines. */
export function chargesFigure(step: Transformation): FigureTrust {
  const whole = recordFigure(step)
  const lines = step.charge.filter(hasAmount).map(line => lineFigure(step, line))
  const mark = leastSure.find(one => lines.some(line => line.mark === one))
  if (mark === undefined) return whole
  const weak = lines.filter(line => line.mark === mark)
  const inPart = mark !== 'derived' && lines.some(line => line.mark !== mark && line.mark !== 'derived')
  const told = mark === whole.mark ? whole.source : [...new Set(weak.flatMap(({ source }) => source ?? []))].join('; ')
  if (!inPart) return marked('charges', mark, told)
  const rest = [...new Set(lines.filter(line => line.mark !== mark && line.mark !== 'derived').flatMap(({ source }) => source ?? []))]
  return { ...marked('charges', mark, [`in part ${told ?? 'without a source'}`, ...rest].join('; ')), inPart }
}

/** How sure one line of a charge is: as it says itself, as the sources of its record say, reckoned by the library, or left open. */
export function lineFigure(step: Transformation, line: ChargeLine): FigureTrust {
  const { from } = line
  if (line.derived) {
    const unprinted = 'the source prints no such amount'
    return marked('charges', 'derived', from === undefined ? unprinted : `${unprinted}; ${from}`)
  }
  if (!hasAmount(line)) return marked('charges', 'unknown', 'the source gives no amount')
  if (from !== undefined) return marked('charges', markOfFrom(step, from), from.replace(/\.$/, ''))
  const { trust, told, gaps } = asSourced(step)
  // A gap that other lines own to is none of this one.
  return marked(
    'charges',
    trust,
    besides(
      told,
      gaps.filter(gap => step.charge.every(one => one.from !== gap)),
    ),
  )
}

const hasAmount = ({ amount, perGramProduct }: ChargeLine): boolean => amount !== null || perGramProduct !== undefined

/** A text that begins with none of the known words was read where it is the citation of a source that was; anything else is somebody's word. */
function markOfFrom({ sources }: Transformation, from: string): Marked {
  if (/^(set here|derived|reckoned)\b/i.test(from)) return 'derived'
  if (from.toLowerCase().startsWith(ownBench)) return 'own bench'
  return namesReadSource(from, sources) ? 'seen' : 'remembered'
}

/** Of the record where nothing names the figure; a bench that overrides another figure alone leaves this one as it was. */
function recordTrust({ sources, confidence }: Transformation, own: readonly Source[]): Trust {
  const others = own.filter(source => !isOwnBench(source))
  if (sources.some(isOwnBench) && others.length === 0) return 'own bench'
  return confidence === 'checked' ? 'seen' : 'remembered'
}

/** By the sources that name the figure, else by the whole record. */
function named(step: Transformation, figure: FigureTrust['figure'], by: RegExp): FigureTrust {
  const own = lastWord(step.sources.filter(source => source.for !== undefined && by.test(source.for)))
  if (own.length > 0) return marked(figure, trustOf(own), citations(own))
  const whole = step.sources.filter(source => source.for === undefined)
  const speaking = whole.length > 0 ? whole : step.sources
  const trust = recordTrust(step, speaking)
  return marked(figure, trust, ofRecord(speaking, trust))
}

function ends({ yieldPercent: { from = '' }, sources }: Transformation, yields: Trust): FigureTrust {
  const read = /\b(range|several)\b/.test(from) && !/\b(allowance|memory)\b/.test(from)
  if (yields !== 'seen') return marked('range of the yield', yields, from === '' ? citations(sourcesFor(sources, 'yield')) : from)
  // Whoever entered the step gave its ends too: the library allows for nothing there.
  if (isAsEntered(from)) return marked('range of the yield', 'seen', citations(sourcesFor(sources, 'yield')))
  return read
    ? marked('range of the yield', 'seen', from)
    : marked('range of the yield', 'derived', 'the ends are an allowance round what the source gives')
}

/** The figures of a material that plans rest on: its hazards, its density where it is poured, and all else that the record states. */
export function materialFigures(material: Material): readonly FigureTrust[] {
  const { sources, hazards, form, densityGPerMl } = material
  const isPoured = form === 'liquid' || form === 'solution'
  const own = sourcesFor(sources, 'hazards')
  const known = trustInHazards(material)
  const missing = isPoured && densityGPerMl === undefined ? [marked('density', trustInPhysical(material, 'density') as Marked, null)] : []
  return [
    marked('hazards', known === 'seen' && commonPractice.test(hazards?.from ?? '') ? 'remembered' : known, hazards?.from ?? citations(own)),
    ...missing,
    ...physicalFigures(material).map(one => marked(one.figure, one.trust, physicalSource(one))),
  ]
}

/** In words; a source of more than the figure says so. */
export function physicalSource({ sources, speakFor }: PhysicalFigure): string | null {
  const told = citations(sources)
  if (told === null) return null
  return speakFor === 'record' ? `for the whole record: ${told}` : speakFor === 'properties' ? `for its properties: ${told}` : told
}
