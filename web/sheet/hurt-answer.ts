import type { HazardList, LabelledMaterial } from '../../core/hazards/hazard-list.ts'
import { capital, counted, listed } from '../parts/words.tsx'

/** The worst that is known, by name, and how many materials nobody has data for. */
export function hurtAnswer(hazards: HazardList, nameOf: (id: string) => string): readonly string[] {
  const unknown = hazards.unknown.length
  const unknownText = unknown === 0 ? '' : `${counted(unknown, 'material')} without hazard data`
  const gravest = hazards.materials.filter(material => material.class === 'gravest')
  const danger = hazards.materials.filter(material => material.class === 'danger')
  const worst = gravest.length > 0 ? gravest : danger
  if (worst.length === 0) {
    if (unknown > 0) return [capital(unknownText)]
    return hazards.materials.some(material => material.class === 'warning')
      ? ['Nothing above a warning']
      : ['No hazard class assigned to anything, with a source']
  }
  const first = capital(listed(named(worst, nameOf)))
  return unknownText === '' ? [first] : [`${first};`, unknownText]
}

/** Two names at the most, and how many more. */
function named(materials: readonly LabelledMaterial[], nameOf: (id: string) => string): readonly string[] {
  const names = materials.map(material => nameOf(material.material).replace(/,.*$/, ''))
  return names.length <= 2
    ? names
    : [
        names[0] ?? '',
        `${counted(names.length - 1, 'other')} of ${materials[0]?.class === 'gravest' ? 'the gravest class' : 'the class Danger'}`,
      ]
}
