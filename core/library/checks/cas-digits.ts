import type { Material } from '../material.ts'
import type { Finding } from './check.ts'

/**
 * A CAS registry number has two to seven digits, two digits and a check digit: the sum of the digits, each times its place from the right,
 * leaves the check digit on division by ten. Source: CAS, "Check Digit Verification of CAS Registry Numbers".
 */
export function casDigits({ cas }: Material): readonly Finding[] {
  if (cas === undefined || isCas(cas)) return []
  return [
    {
      severity: 'error',
      code: 'cas-digits',
      field: ['cas'],
      what: `"${cas}" is not a valid CAS number.`,
      why: 'Regulated lists and hazard tables are searched by this number: a wrong digit finds another substance or none.',
      cure: 'Compare it with the bottle or its data sheet; it reads like 119-53-9, the last digit checking the others. Leave it out where it is not known.',
    },
  ]
}

const isCas = (cas: string): boolean => /^[1-9]\d{1,6}-\d{2}-\d$/.test(cas) && cas.endsWith(`-${casCheckDigit(cas)}`)

/** The digit that the last one of a CAS number must be, from those before it. */
export function casCheckDigit(cas: string): number {
  const others = [...cas.replaceAll('-', '').slice(0, -1)].map(Number).reverse()
  return others.reduce((sum, digit, at) => sum + digit * (at + 1), 0) % 10
}
