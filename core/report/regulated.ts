import type { HazardList, RegulatedHit } from '../hazards/hazard-list.ts'
import { sentence } from './words.ts'

/** Marked § wherever it is bought or charged: a licence, a declaration or a report belongs to it. */
export const isRegulated = (hazards: HazardList, material: string): boolean =>
  hazards.regulated.some(hit => hit.material === material && hit.action !== 'note')

export const actionWords: Readonly<Record<RegulatedHit['action'], string>> = {
  stop: 'Stop',
  licence: 'Licence or declaration needed',
  reporting: 'Suspicious transactions are reported',
  note: 'Named in a list',
}

/** One hit as a sentence of law: list, category, reason, and who may not have it. */
export const lawText = (hit: RegulatedHit): string =>
  `${actionWords[hit.action]}: ${hit.list}${hit.category === '' ? '' : `, ${hit.category}`}. ${sentence(hit.reason)}${hit.barred ? ' A private person may not have it.' : ''} ${sentence(hit.legal)}`
