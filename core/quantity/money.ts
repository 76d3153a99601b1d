import { noBreakSpace } from './print.ts'

/** Currencies whose minor unit is not a hundredth. Source: ISO 4217, list one; from memory. */
const minorDigits = new Map<string, number>([
  ['JPY', 0],
  ['KRW', 0],
  ['ISK', 0],
  ['CLP', 0],
  ['VND', 0],
  ['BHD', 3],
  ['JOD', 3],
  ['KWD', 3],
  ['OMR', 3],
  ['TND', 3],
])
const signs = new Map<string, string>([
  ['EUR', '€'],
  ['GBP', '£'],
  ['USD', '$'],
  ['JPY', '¥'],
])

/** How many decimal places a currency's minor unit is: 2 for EUR, 0 for JPY. */
export const minorDigitsOf = (currency: string): number => minorDigits.get(currency) ?? 2

/**
 * A sum in minor units, printed the same on every machine (no locale is asked): 6230 EUR is "€ 62.30".
 *
 * @param minor     whole number of minor units (cents); a fraction is rounded half away from zero
 * @param currency  ISO 4217 code, e.g. EUR; without a known sign the code itself is printed
 * @throws RangeError for NaN and infinities: our mistake
 */
export function moneyText(minor: number, currency: string): string {
  if (!Number.isFinite(minor)) throw new RangeError(`${minor} ${currency} cannot be printed`)
  const digits = minorDigitsOf(currency)
  const whole = Math.round(Math.abs(minor))
  const padded = String(whole).padStart(digits + 1, '0')
  const major = padded.slice(0, padded.length - digits)
  const grouped = major.length < 5 ? major : major.replace(/\B(?=(\d{3})+$)/g, '\u202f')
  const minus = minor < 0 && whole > 0 ? '\u2212' : ''
  return `${minus}${signs.get(currency) ?? currency}${noBreakSpace}${grouped}${digits === 0 ? '' : `.${padded.slice(padded.length - digits)}`}`
}
