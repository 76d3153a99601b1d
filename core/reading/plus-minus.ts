import { type CommaRule, numberIn } from '../quantity/number.ts'

const figure = String.raw`\d+(?:[.,]\d+)?`
const unit = '%|percent|kg|mg|g|mmol|mol|m[lL]|[lL]'
const pattern = new RegExp(
  String.raw`(?<![\p{L}\p{N}.,])\(?\s*(?<middle>${figure})\s*(?<own>${unit})?\s*(?:±|\+\s*\/\s*[-−–])\s*(?<off>${figure})\s*\)?\s*(?<unit>${unit})(?![\p{L}\p{N}])`,
  'gu',
)

/**
 * "75 ± 5 %" and "(5.2 +/- 0.3) g" written as the ranges that they are, 70-80 % and 4.9-5.5 g: the middle of each is the figure itself.
 *
 * What has two units that differ, or falls below nothing, stays as it stands.
 */
export const withoutPlusMinus = (text: string, comma: CommaRule): string =>
  text.replace(pattern, (whole, ...rest) => {
    const named = rest.at(-1) as Readonly<Record<'middle' | 'own' | 'off' | 'unit', string | undefined>>
    const [middle, off] = [numberIn(named.middle!, [], comma), numberIn(named.off!, [], comma)]
    if (!middle.ok || !off.ok || off.value > middle.value || (named.own ?? named.unit) !== named.unit) return whole
    // Twelve digits: what a sum of decimal fractions adds behind them is no figure of the text.
    const [low, high] = [middle.value - off.value, middle.value + off.value].map(value => String(Number(value.toPrecision(12))))
    return `${low}-${high} ${named.unit}`
  })
