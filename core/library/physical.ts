import type { Material } from './material.ts'
import type { Source } from './source.ts'
import { isOwnBench, lastWord, type Trust, trustOf } from './trust.ts'

/** The figures of a material besides its hazards. */
export type Physical = 'density' | 'melting point' | 'boiling point' | 'flash point' | 'strength' | 'exposure limit'

/** What a source calls a figure in its `for`, and how a citation that gives it words it. */
const words: Readonly<Record<Physical, { readonly named: RegExp; readonly told: RegExp }>> = {
  density: { named: /\bdensity\b/i, told: /\bdensity\b|g\/mL|g\/cm/i },
  'melting point': { named: /\bmelting\b/i, told: /\bm\.?p\b|\bmelt/i },
  'boiling point': { named: /\bboiling\b/i, told: /\bb\.?p\b|\bboil/i },
  'flash point': { named: /\bflash\b/i, told: /\bflash/i },
  strength: { named: /\b(strength|content)\b/i, told: /%|\bpercent\b|\bstrength\b|mol\/L/i },
  'exposure limit': { named: /\bexposure\b/i, told: /\b(exposure|OEL|TWA|limit)\b/i },
}

/** One figure of a material with how sure it is. */
export interface PhysicalFigure {
  readonly figure: Physical
  /** As it is printed: "1.049 g/mL", "16.6 °C". */
  readonly value: string
  readonly trust: Trust
  readonly sources: readonly Source[]
  /** What the sources speak for: this very figure, the properties of the material, or its whole record; none = nobody is named. */
  readonly speakFor: 'figure' | 'properties' | 'record' | 'none'
}

/** Every physical figure that a record states, in order of use. */
export function physicalFigures(material: Material): readonly PhysicalFigure[] {
  return (Object.keys(words) as Physical[]).flatMap(figure => {
    const value = printedOf(material, figure)
    return value === null ? [] : [{ figure, value, ...sourcesOf(material, figure) }]
  })
}

/** How sure one physical figure is; unknown where the record does not state it. */
export const trustInPhysical = (material: Material, figure: Physical): Trust =>
  printedOf(material, figure) === null ? 'unknown' : sourcesOf(material, figure).trust

/** Sources that speak for a figure: those that name it, else those of all properties, else those of the whole record. */
function sourcesOf(
  { sources }: Material,
  figure: Physical,
): {
  readonly trust: Trust
  readonly sources: readonly Source[]
  readonly speakFor: PhysicalFigure['speakFor']
} {
  const { named, told } = words[figure]
  const own = lastWord(sources.filter(source => source.for !== undefined && named.test(source.for)))
  if (own.length > 0) return { trust: trustOf(own), sources: own, speakFor: 'figure' }
  const group = sources.filter(source => source.for !== undefined && /\bproperties\b/.test(source.for))
  if (group.length > 0) {
    // Where some properties were read and others are remembered, only a source that tells this one speaks for it as read.
    const mixed = group.some(source => source.checked) && group.some(source => !source.checked)
    const telling = group.filter(source => source.checked && (told.test(source.citation) || told.test(source.detail ?? '')))
    const speaking = !mixed ? group : telling.length > 0 ? telling : group.filter(source => !source.checked)
    const bench = group.filter(isOwnBench)
    const used = bench.length > 0 ? bench : speaking
    return { trust: trustOf(used), sources: used, speakFor: used === telling ? 'figure' : 'properties' }
  }
  const record = sources.filter(source => source.for === undefined)
  return { trust: trustOf(record), sources: record, speakFor: record.length > 0 ? 'record' : 'none' }
}

function printedOf(material: Material, figure: Physical): string | null {
  const { densityGPerMl, meltingC, boilingC, flashC, contains } = material
  const celsius = (value: number | undefined): string | null => (value === undefined ? null : `${String(value).replace('-', '−')}\u00a0°C`)
  switch (figure) {
    case 'density':
      return densityGPerMl === undefined ? null : `${densityGPerMl}\u00a0g/mL`
    case 'melting point':
      return celsius(meltingC)
    case 'boiling point':
      return celsius(boilingC)
    case 'flash point':
      return celsius(flashC)
    case 'strength':
      if (contains?.massFraction !== undefined) return `${Number((contains.massFraction * 100).toPrecision(6))}\u00a0% by mass`
      return contains?.molPerL === undefined ? null : `${contains.molPerL}\u00a0mol/L`
    case 'exposure limit':
      return exposureText(material)
  }
}

/** "2 mg/m3 over 8 h, 6 mg/m3 for 15 min (Ontario)": the limit with whose it is; null where none is stated. */
export function exposureText({ exposureLimit }: Pick<Material, 'exposureLimit'>): string | null {
  if (exposureLimit === undefined) return null
  const { twa, stel, ceiling, notation, basis } = exposureLimit
  const parts = [twa && `${twa} over 8 h`, stel && `${stel} for 15 min`, ceiling && `never above ${ceiling}`, notation]
  return `${parts.filter(Boolean).join(', ')} (${basis})`
}
