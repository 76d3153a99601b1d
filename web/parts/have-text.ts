import { parseQuantity, type Quantity } from '../../core/quantity/parse.ts'

/** "24 g of benzoin", "benzoin, 24 g", "benzoin": an amount, where one is written, and the name. */
export interface Have {
  readonly name: string
  readonly amountText: string | null
  /** Null where no amount is written or it cannot be read. */
  readonly amount: Quantity | null
}

const front = /^\s*([+-]?[\d.,]+\s*[^\s\d,]+?\.?)\s+(?:of\s+)?(\S.*)$/u
const back = /^(.*\S?)[\s,:]+([\d.,]+\s*[a-zA-Zµμ]+)\s*$/u
/** A number glued to letters or brackets belongs to the name: "1,3-diphenylacetone", "2-naphthol". */
const amountLike = /^[+-]?\d+(?:[.,]\d+)*\s*[a-zA-Zµμ]+\.?$/u

/**
 * Reads what a person has in hand, as they would say it.
 *
 * @example readHave('24 g benzoin') // { name: 'benzoin', amountText: '24 g', amount: { value: 24, unit: 'g' } }
 */
export function readHave(text: string): Have {
  const before = front.exec(text)
  if (before?.[1] !== undefined && before[2] !== undefined && amountLike.test(before[1].trim())) return have(before[2], before[1])
  const after = back.exec(text)
  if (after?.[1] !== undefined && after[2] !== undefined && readsAsAmount(after[2])) return have(after[1].replace(/[\s,:]+$/, ''), after[2])
  return { name: text.trim(), amountText: null, amount: null }
}

const readsAsAmount = (text: string): boolean => parseQuantity(text, [], { dimensions: ['mass', 'volume', 'amount'] }).ok

function have(name: string, amountText: string): Have {
  const read = parseQuantity(amountText.trim(), ['what I have'], { dimensions: ['mass', 'volume', 'amount'], zero: false })
  return { name: name.trim(), amountText: amountText.trim(), amount: read.ok ? read.value : null }
}
