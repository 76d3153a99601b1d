import type { Transformation } from '../transformation.ts'
import type { CheckContext, Finding } from './check.ts'

/** Every material that a transformation names anywhere, and every transformation a second product's yield is taken from, is there. */
export function idsResolve(transformation: Transformation, { library, meantMaterial, refusedIds }: CheckContext): readonly Finding[] {
  const findings: Finding[] = []
  // Nearly every transformation is in order, and a library may hold a hundred thousand: places are looked up only where one is not.
  if (namesOf(transformation).every(id => library.materials.has(id))) return findings
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

/** Every mention of a material. */
function namesOf({ reactants, products, gasEvolved, coProducts, charge, intendedMeetings }: Transformation): string[] {
  const names: string[] = []
  for (const { compound } of reactants) names.push(compound)
  for (const { compound } of products) names.push(compound)
  for (const { compound } of gasEvolved) names.push(compound)
  for (const { compound } of coProducts ?? []) names.push(compound)
  for (const { material } of charge) names.push(material)
  for (const { materials } of intendedMeetings ?? []) names.push(...materials)
  return names
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
  return namesOf(transformation).every(id => library.materials.has(id))
}
