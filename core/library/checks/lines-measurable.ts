import { compoundIn } from '../reference-charge.ts'
import type { ChargeLine, Transformation } from '../transformation.ts'
import type { CheckContext, Finding } from './check.ts'

/** Every charge line can be turned into grams and, where its compound reacts, into moles: volumes have a density or mol/L, moles a formula. */
export function linesMeasurable({ charge }: Transformation, { library }: CheckContext): readonly Finding[] {
  const findings: Finding[] = []
  for (const [index, line] of charge.entries()) {
    const find = (key: string, what: string, cure: string) =>
      findings.push({
        severity: 'error',
        code: 'lines-measurable',
        field: ['charge', String(index), key],
        what,
        why: 'Each line is weighed or measured out at another scale than the one in the source.',
        cure,
      })
    const mistake = perGramMistake(line)
    if (mistake !== null)
      find('perGramProduct', mistake, 'Give "perGramProduct" with "amount": null and the unit g or mL, or an amount alone.')

    const material = library.materials.get(line.material)
    if (material === undefined) continue
    const { densityGPerMl: density, contains } = material
    const isMeasured = line.amount !== null || line.perGramProduct !== undefined
    const isVolume = line.unit === 'mL' || line.unit === 'L'
    if (isMeasured && isVolume && density === undefined && contains?.molPerL === undefined)
      find(
        'unit',
        `A volume of ${line.material}, whose density is not known.`,
        `Add "densityGPerMl" to ${line.material}, or give the mass.`,
      )
    if (isMeasured && !isVolume && contains?.molPerL !== undefined && density === undefined)
      find(
        'unit',
        `A mass of ${line.material}, whose strength is known by volume only.`,
        `Add "densityGPerMl" to ${line.material}, or give the volume.`,
      )
    const compound = compoundIn(material)
    const hasFormula = compound !== null && library.materials.get(compound)?.formula !== undefined
    if ((line.unit === 'mol' || line.unit === 'mmol') && !hasFormula)
      find('unit', `Moles of ${line.material}, which has no formula.`, 'Give its mass or volume.')
  }
  return findings
}

function perGramMistake({ perGramProduct, amount, unit }: ChargeLine): string | null {
  if (perGramProduct === undefined) return null
  if (amount !== null) return 'Both an amount and an amount per gram of product.'
  return unit === 'g' || unit === 'mL' ? null : `An amount per gram of product in ${unit}.`
}
