import type { Transformation } from '../transformation.ts'
import type { CheckContext, Finding } from './check.ts'

/** What a step gives off as a gas is one in the library, or boils below the temperature of the step; each is named once. */
export function gasesAreGases({ gasEvolved, temperatureC }: Transformation, { library }: CheckContext): readonly Finding[] {
  return gasEvolved.flatMap(({ compound }, index): Finding[] => {
    const { form, boilingC } = library.materials.get(compound) ?? {}
    const stated = gasEvolved.findIndex(gas => gas.compound === compound) < index
    const isVapour = boilingC !== undefined && temperatureC !== undefined && boilingC < temperatureC[1]
    if (!stated && (form === 'gas' || form === undefined || isVapour)) return []
    return [
      {
        severity: 'error',
        code: 'gases-are-gases',
        field: ['gasEvolved', String(index)],
        what: stated ? `"${compound}" stands twice.` : `"${compound}" is a ${form}, and no gas at the temperature of this step.`,
        why: 'The volume that must go up the hood is reckoned from the moles of gas.',
        cure: stated ? 'Add the two figures.' : 'Name the gas, or leave out what only boils over.',
      },
    ]
  })
}
