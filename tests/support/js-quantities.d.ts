/** What the tests use of js-quantities, which ships no types. */
declare module 'js-quantities' {
  interface Quantity {
    readonly scalar: number
    to(unit: string): Quantity
    isCompatible(other: Quantity): boolean
  }
  export default function Qty(value: number, unit: string): Quantity
  export default function Qty(text: string): Quantity
}
