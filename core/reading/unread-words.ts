/** What is to be said of a charge line that nothing was made of, and lines that it may have been meant as. */
export interface UnreadWords {
  readonly what: string
  readonly cure: string
  readonly offers: readonly string[]
  /** What stands after a measure that has to be weighed once; absent where nothing has. */
  readonly toMeasure?: string
}

const number = String.raw`\d+(?:[.,]\d+)?`

/** Units that are not read, with what one is in a unit that is. Exact: the litre is a cubic decimetre; the pound is 453.59237 g (agreement of 1959). */
const units: readonly { readonly named: RegExp; readonly factor: number; readonly unit: 'g' | 'mL' | 'L' }[] = [
  { named: /^(?:dm3|dm³|dm\^3)$/i, factor: 1, unit: 'L' },
  { named: /^dl$/i, factor: 100, unit: 'mL' },
  { named: /^cl$/i, factor: 10, unit: 'mL' },
  { named: /^lbs?\.?$/i, factor: 453.59237, unit: 'g' },
  { named: /^(?:G|grms?\.?|grams?m?s?\.?)$/, factor: 1, unit: 'g' },
  { named: /^(?:mlt|mltrs?|mil|mils)\.?$/i, factor: 1, unit: 'mL' },
]

/** Numbers in words, before a drop: of other units the figure is written. */
const inWords = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']
const worded = new RegExp(
  String.raw`\b(${inWords.join('|')})\s+(?=(?:drops?|grams?|g|mg|m[lL]|millilit(?:er|re)s?|L|lit(?:er|re)s?)\b)`,
  'i',
)

/** Kitchen measures and ounces: they differ by country, or leave open whether they weigh or measure. */
const unsure = /^(?:cups?|tsps?|teaspoons?|tbsps?|tablespoons?|pints?|quarts?|gallons?|oz|ounces?)\.?$/i

/** Six figures are more than any balance at a bench has. */
const noted = (value: number): string => String(Number(value.toPrecision(6)))

/** One line, as typed, that is neither a charge nor something that is done. */
export function unreadWords(line: string): UnreadWords {
  const power = new RegExp(String.raw`(${number})\s*[x×·*]\s*10\s*\^?\s*([-−–⁻]?)\s*([\d⁰¹²³⁴⁵⁶⁷⁸⁹]+)`).exec(line)
  if (power !== null) {
    const digits = power[3]!.replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, digit => String('⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(digit)))
    const value = Number(`${power[1]!.replace(',', '.')}e${power[2] === '' ? '' : '-'}${digits}`)
    return told(line, 'A power of ten is not read.', 'Write the number out.', [line.replace(power[0], String(value))])
  }
  const fahrenheit = new RegExp(String.raw`(${number})\s*°?\s*F\b`).exec(line)
  if (fahrenheit !== null) {
    const celsius = Math.round(((Number(fahrenheit[1]!.replace(',', '.')) - 32) * 5) / 9)
    return told(line, 'Degrees Fahrenheit are not read.', 'Write degrees Celsius.', [line.replace(fahrenheit[0], `${celsius} °C`)])
  }
  const degrees = new RegExp(String.raw`(${number})\s*°(?!\s*[CF])`).exec(line)
  if (degrees !== null)
    return told(line, 'Degrees of what is not said.', 'Write degrees Celsius.', [line.replace(degrees[0], `${degrees[1]} °C`)])
  const amount = new RegExp(String.raw`(${number})\s*([a-zµ³^]+\d?\.?)(?=\s|$)`, 'i').exec(line)
  const unit = units.find(one => one.named.test(amount?.[2] ?? ''))
  if (amount !== null && unit !== undefined) {
    const value = Number(amount[1]!.replace(',', '.')) * unit.factor
    return told(line, `“${amount[2]}” is no unit that is read.`, `Write it in ${unit.unit}.`, [
      line.replace(amount[0], `${noted(value)} ${unit.unit}`),
    ])
  }
  const word = worded.exec(line)
  if (word !== null)
    return told(line, `“${word[1]}” is not read as a number.`, 'Write the number in figures.', [
      line.replace(word[1]!, String(inWords.indexOf(word[1]!.toLowerCase()) + 1)),
    ])
  if (/^vols?\.?$|^volumes?$/i.test(amount?.[2] ?? ''))
    return told(line, `“${amount![2]}” is counted on something else.`, 'Write how much that is, in mL.', [])
  const kitchen = line.match(/[a-z]+\.?/gi)?.find(word => unsure.test(word))
  if (kitchen !== undefined && /[\d½¼¾⅓⅔⅛]|\b(?:an?|one|two|three|half|quarter)\b/i.test(line)) {
    const of = line
      .slice(line.indexOf(kitchen) + kitchen.length)
      .replace(/^\s*(?:of\s+)?/i, '')
      .trim()
    const what = `“${kitchen}” is no unit that is read: it is not the same everywhere.`
    return { ...told(line, what, 'Weigh or measure it once, and write g or mL.', []), ...(of === '' ? {} : { toMeasure: of }) }
  }
  const bare = new RegExp(String.raw`^(${number})\s+([\p{L}(].*)$`, 'u').exec(line)
  if (bare !== null)
    return told(line, `“${bare[1]}” has no unit that is read.`, 'Say of what unit it is: g, mg, kg, mL, L, mol, mmol, or eq.', [
      `${bare[1]} g ${bare[2]}`,
      `${bare[1]} mL ${bare[2]}`,
    ])
  return told(
    line,
    'It is neither a charge nor something that is done.',
    'Give an amount with a unit and a name (9.2 g benzoin), begin the line with what is done (heat, pour), or remove it.',
    [],
  )
}

const told = (line: string, what: string, cure: string, offers: readonly string[]): UnreadWords => ({
  what: `“${line}” is not read. ${what}`,
  cure,
  offers: offers.filter(one => one !== line),
})
