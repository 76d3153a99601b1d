import type { Material } from './material.ts'
import type { Source } from './source.ts'
import type { Transformation } from './transformation.ts'
import { densitySources, ownBench, sourcesFor, type Trust, trustInDensity, trustInHazards, trustInYield } from './trust.ts'

/** How sure one figure of a record is, and where it comes from. */
export interface FigureTrust {
  readonly figure: 'charges' | 'yield' | 'times' | 'hazards' | 'density'
  readonly trust: Trust
  /** In words; null where nothing speaks for it. */
  readonly source: string | null
}

const citations = (sources: readonly Source[]): string | null => {
  const seen = sources.filter(source => source.checked)
  const told = [...new Set((seen.length > 0 ? seen : sources).map(source => source.citation.replace(/\.$/, '')))]
  return told.length === 0 ? null : told.join('; ')
}

/**
 * The figures of a transformation that plans rest on: what is charged, what it gives, how long it takes.
 *
 * Hours that no source gives are the judgement of whoever wrote the record down, so they count as remembered and say that they are estimates.
 */
export function stepFigures(step: Transformation): readonly FigureTrust[] {
  const trust = trustInYield(step)
  const timed = step.timesBasis === 'source'
  const charges = sourcesFor(step.sources, 'charge')
  return [
    { figure: 'charges', trust: chargesOf(step, trust), source: citations(charges.length > 0 ? charges : step.sources) },
    { figure: 'yield', trust, source: citations(sourcesFor(step.sources, 'yield')) },
    { figure: 'times', trust: timed ? trust : 'remembered', source: timed ? citations(step.sources) : 'estimated from the operations' },
  ]
}

/** A bench that overrides a yield alone keeps the charges of the source beneath. */
function chargesOf({ sources, confidence }: Transformation, whole: Trust): Trust {
  const others = sourcesFor(sources, 'charge').filter(source => !source.citation.toLowerCase().startsWith(ownBench))
  if (whole !== 'own bench' || others.length === 0) return whole
  return confidence === 'checked' ? 'seen' : 'remembered'
}

/** The figures of a material that plans rest on: its hazards, and its density where it is poured. */
export function materialFigures(material: Material): readonly FigureTrust[] {
  const { sources, hazards, form, densityGPerMl } = material
  const isPoured = form === 'liquid' || form === 'solution'
  const own = sourcesFor(sources, 'hazards')
  return [
    { figure: 'hazards', trust: trustInHazards(material), source: hazards?.from ?? citations(own) },
    ...(isPoured
      ? [
          {
            figure: 'density' as const,
            trust: trustInDensity(material),
            source: densityGPerMl === undefined ? null : citations(densitySources(sources)),
          },
        ]
      : []),
  ]
}
