import { massText, numberText, volumeText } from '../quantity/print.ts'
import type { Quantity } from '../shopping/shopping.ts'

/** An amount of a list in its own unit; what the source leaves open is said in words, never left blank and never zero. */
export const quantityWords = ({ amount, unit }: Quantity, open = 'as needed'): string =>
  amount === null ? open : amount === 0 ? '0' : unit === 'g' ? massText(amount) : volumeText(amount)

/** A pack as its label says it: "100 g", "2.5 L". */
export const packText = (amount: number, unit: string): string => `${String(amount)}\u00a0${unit}`

/** An amount of something in the plan: by volume for what is poured, else by mass; null where neither is known. */
export const amountWords = (massG: number | null, volumeMl: number | null, poured: boolean): string | null => {
  if (poured && volumeMl !== null) return volumeText(volumeMl)
  if (massG !== null) return massText(massG)
  return volumeMl === null ? null : volumeText(volumeMl)
}

/** Millimoles as a charge table shows them, without its unit. */
export const millimolText = (amountMol: number): string => numberText(amountMol * 1000, 4, 1)
