import type { Transformation } from '../transformation.ts'
import type { CheckContext, Finding } from './check.ts'

/** Every material that a transformation names anywhere, and every transformation a second product's yield is taken from, is there. */
export function idsResolve(transformation: Transformation, { library, meantMaterial, refusedIds }: CheckContext): readonly Finding[] {
  const findings: Finding[] = []
  for (const [id, field] of materialsNamed(transformation)) {
    if (library.materials.has(id) || refusedIds.has(id)) continue
    findings.push({
      severity: 'error',
      code: 'id-unknown',
      field,
      what: `There is no material "${id}".`,
      why: 'Amounts, hazards and shopping are looked up by this id.',
      cure: `${meantMaterial(id)}Correct the id, or add the material to a library file.`,
    })
  }
  return findings
}

/** Every mention of a material, with its place. */
function* materialsNamed(transformation: Transformation): Generator<readonly [string, readonly string[]]> {
  for (const key of ['reactants', 'products', 'gasEvolved', 'coProducts'] as const)
    for (const [index, entry] of (transformation[key] ?? []).entries()) yield [entry.compound, [key, String(index), 'compound']]
  for (const [index, line] of transformation.charge.entries()) yield [line.material, ['charge', String(index), 'material']]
  for (const [index, meeting] of (transformation.intendedMeetings ?? []).entries())
    for (const [side, id] of meeting.materials.entries()) yield [id, ['intendedMeetings', String(index), 'materials', String(side)]]
}

/** All ids resolve: what the rules that reckon need before they start. */
export function allResolve(transformation: Transformation, { library }: CheckContext): boolean {
  for (const [id] of materialsNamed(transformation)) if (!library.materials.has(id)) return false
  return true
}
