import type { ShoppingLine } from './shopping.ts'

/** Materials that a step has to wait for: what is to be bought (or may be, its amount being open), and what is made up from such. */
export function materialsToOrder(lines: readonly ShoppingLine[]): ReadonlySet<string> {
  const ordered = new Set(lines.filter(line => line.buy.amount === null || line.buy.amount > 0).map(line => line.material))
  for (const { material, madeUp } of lines)
    if (madeUp !== null && (ordered.has(madeUp.from) || ordered.has(madeUp.with))) ordered.add(material)
  return ordered
}
