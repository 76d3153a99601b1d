import type { Material } from '../material.ts'
import type { Finding } from './check.ts'

/** Osmium, the densest element, has 22.59 g/mL; hydrogen gas, the lightest of all, 0.00008. CRC Handbook, from memory. */
const densest = 22.7
const lightest = 0.00005
/** Absolute zero. BIPM, The International System of Units. */
const coldestC = -273.15

/** Figures that no material has, or that cannot stand side by side. A warning: what it means is for its writer to say. */
export function figuresPlausible({ densityGPerMl, meltingC, boilingC, flashC }: Material): readonly Finding[] {
  const findings: Finding[] = []
  const find = (field: string, what: string, why: string, cure: string) =>
    findings.push({ severity: 'warning', code: 'figures-plausible', field: [field], what, why, cure })
  if (densityGPerMl !== undefined && (densityGPerMl > densest || densityGPerMl < lightest))
    find(
      'densityGPerMl',
      `A density of ${densityGPerMl} g/mL: nothing is as ${densityGPerMl > densest ? 'dense' : 'light'}.`,
      'Volumes and grams are turned into each other with it.',
      densityGPerMl > densest ? `Write it in g/mL: ${densityGPerMl} kg/m³ is ${densityGPerMl / 1000}.` : 'Write it in g/mL.',
    )
  for (const [field, value] of Object.entries({ meltingC, boilingC, flashC }))
    if (value !== undefined && value < coldestC)
      find(field, `${value} °C is below absolute zero.`, 'No material can be so cold.', 'Correct it; it is written in °C.')
  // Over a liquid that boils, the vapour is all there is: it burns long before. Common practice, no source.
  if (flashC !== undefined && boilingC !== undefined && flashC > boilingC)
    find(
      'flashC',
      `It flashes at ${flashC} °C and boils at ${boilingC} °C.`,
      'A liquid gives off enough vapour to burn before it boils, so that one of the two is wrong.',
      'Hold both against the data sheet; they are written in °C.',
    )
  if (meltingC !== undefined && boilingC !== undefined && meltingC > boilingC)
    find(
      'meltingC',
      `It melts at ${meltingC} °C and boils at ${boilingC} °C.`,
      'At one pressure nothing boils before it melts.',
      'Exchange the two or correct them; where it sublimes, leave the boiling point out.',
    )
  return findings
}
