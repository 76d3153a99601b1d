import { type Mark, trustOfMark } from './mark.ts'
import type { Material } from './material.ts'
import { type Physical, type PhysicalFigure, physicalFigures, trustInPhysical } from './physical.ts'
import type { Source } from './source.ts'
import type { ChargeLine, Transformation } from './transformation.ts'
import { isOwnBench, sourcesFor, type Trust, trustInHazards, trustInYield, trustOf } from './trust.ts'

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
      return marked('second product', /^(from )?memory/i.test(from) ? 'remembered' : yields, from === '' ? ofRecord(sources) : from)
    }),
    timed
      ? marked('times', recordTrust(step, sourcesFor(sources, 'times')), citations(sources))
      : marked('times', 'estimated', 'estimated from the operations'),
    ...(temperatureC === undefined ? [] : [named(step, 'temperature', /\b(temperatures?|conditions)\b/)]),
    ...(step.largestProvenG === undefined ? [] : [named(step, 'largest scale', /\blargest scale\b/)]),
    ...(step.smallestProvenG === undefined ? [] : [named(step, 'smallest scale', /\bsmall(est)? scale\b/)]),
    ...(holdPoint === undefined
      ? []
      : [
          holdPointBasis === 'source'
            ? marked('hold point', recordTrust(step, sources), ofRecord(sources))
            : marked('hold point', 'remembered', 'common practice'),
        ]),
  ]
}

/** How sure what a step charges is, where its source gives it. A bench that overrides a yield alone keeps the charges of the source beneath. */
export function chargesFigure(step: Transformation): FigureTrust {
  const own = sourcesFor(step.sources, 'charge')
  const trust = recordTrust(step, own)
  const speaking = own.length > 0 ? own : step.sources
  const told = citations(speaking, trust)
  // A record that was read in the main may have gaps that were filled from memory: the source says which.
  const beside = trust === 'seen' ? speaking.filter(source => !source.checked).map(source => source.citation.replace(/\.$/, '')) : []
  return marked('charges', trust, told === null || beside.length === 0 ? told : `${told}; in part ${beside.join('; ')}`)
}

/** How sure one line of a charge is: as its source gives it, reckoned by the library, or left open. */
export function lineFigure(step: Transformation, line: ChargeLine): FigureTrust {
  const whole = chargesFigure(step)
  if (line.derived) return marked('charges', 'derived', 'the source prints no such amount')
  if (line.amount === null && line.perGramProduct === undefined) return marked('charges', 'unknown', 'the source gives no amount')
  return whole
}

/** Of the record where nothing names the figure; a bench that overrides another figure alone leaves this one as it was. */
function recordTrust({ sources, confidence }: Transformation, own: readonly Source[]): Trust {
  const others = own.filter(source => !isOwnBench(source))
  if (sources.some(isOwnBench) && others.length === 0) return 'own bench'
  return confidence === 'checked' ? 'seen' : 'remembered'
}

/** By the sources that name the figure, else by the whole record. */
function named(step: Transformation, figure: FigureTrust['figure'], by: RegExp): FigureTrust {
  const own = step.sources.filter(source => source.for !== undefined && by.test(source.for))
  if (own.length > 0) return marked(figure, trustOf(own), citations(own))
  const whole = step.sources.filter(source => source.for === undefined)
  const speaking = whole.length > 0 ? whole : step.sources
  const trust = recordTrust(step, speaking)
  return marked(figure, trust, ofRecord(speaking, trust))
}

function ends({ yieldPercent: { from = '' }, sources }: Transformation, yields: Trust): FigureTrust {
  const read = /\b(range|several)\b/.test(from) && !/\b(allowance|memory)\b/.test(from)
  if (yields !== 'seen') return marked('range of the yield', yields, from === '' ? citations(sourcesFor(sources, 'yield')) : from)
  return read
    ? marked('range of the yield', 'seen', from)
    : marked('range of the yield', 'derived', 'the ends are an allowance round what the source gives')
}

/** The figures of a material that plans rest on: its hazards, its density where it is poured, and all else that the record states. */
export function materialFigures(material: Material): readonly FigureTrust[] {
  const { sources, hazards, form, densityGPerMl } = material
  const isPoured = form === 'liquid' || form === 'solution'
  const own = sourcesFor(sources, 'hazards')
  const missing = isPoured && densityGPerMl === undefined ? [marked('density', trustInPhysical(material, 'density') as Marked, null)] : []
  return [
    marked('hazards', trustInHazards(material), hazards?.from ?? citations(own)),
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
