const low =
  'one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ')
const tens = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ')
/** Figures of the number words from one to ninety-nine; of "a" and "an" 1. */
const figures = new Map<string, string>([
  ['a', '1'],
  ['an', '1'],
  ...low.map((word, at) => [word, String(at + 1)] as const),
  ...tens.flatMap((ten, at) => [
    [ten, String((at + 2) * 10)] as const,
    ...low.slice(0, 9).map((one, more) => [`${ten}-${one}`, String((at + 2) * 10 + more + 1)] as const),
  ]),
])
const unit = String.raw`(hour|minute|second|day|week)s?(?!\p{L})`
/** Longest first, so that "twenty-four" is not read as "twenty". */
const word = [...figures.keys()]
  .filter(one => !/^an?$/.test(one))
  .sort((one, other) => other.length - one.length)
  .join('|')
const hour = String.raw`hours?(?!\p{L})`
/** What is written, and the figures that it is, in this order. */
const inFigures: readonly (readonly [RegExp, (...groups: string[]) => string])[] = [
  [/(?<![\d:.,])(\d+):([0-5]\d)\s*(?:h|hrs?|hours?)(?!\p{L})/giu, (h, min) => hoursAndMinutes(h!, min!)],
  [/(?<![\d:.,])(\d+)\s*h\s*([0-5]\d)(?:\s*min(?:utes)?\b)?(?!\d|[.,]\d|\s*[\p{L}%°º])/giu, (h, min) => hoursAndMinutes(h!, min!)],
  // "2-1/2 h" is two and a half, no range.
  [
    /(?<![\d.,/])(\d+)[\s-]+([13])\s*[/⁄]\s*([24])\s*(?=(?:h|hrs?|hours?|min(?:utes)?)(?!\p{L}))/giu,
    (whole, above, below) => `${Number(whole) + Number(above) / Number(below)} `,
  ],
  [new RegExp(String.raw`(?<!\p{L})an?\s+${unit}\s+or\s+two(?!\p{L})`, 'giu'), name => `1-2 ${name}`],
  [new RegExp(String.raw`(?<!\p{L})three[\s-]quarters\s+of\s+an\s+${hour}`, 'giu'), () => '45 min'],
  [new RegExp(String.raw`(?<!\p{L})(?:a\s+)?quarter\s+of\s+an\s+${hour}`, 'giu'), () => '15 min'],
  [
    new RegExp(String.raw`(?<!\p{L})(an?|${word}|\d+)\s+${unit}\s+and\s+(?:a|one)[\s-]+half(?!\p{L})`, 'giu'),
    (count, name) => `${figureOf(count!)}.5 ${name}`,
  ],
  [
    new RegExp(String.raw`(?<!\p{L})(an?|${word}|\d+)\s+and\s+(?:a|one)[\s-]+half\s+${unit}`, 'giu'),
    (count, name) => `${figureOf(count!)}.5 ${name}`,
  ],
  [new RegExp(String.raw`(?<!\p{L})(?:half\s+an?|a\s+half|half)[\s-]+${unit}`, 'giu'), name => `0.5 ${name}`],
  [
    new RegExp(String.raw`(?<!\p{L})(${word}|\d+)\s+(?:to|or)\s+(${word}|\d+)\s+${unit}`, 'giu'),
    (low, high, name) => `${figureOf(low!)}-${figureOf(high!)} ${name}`,
  ],
  [
    new RegExp(
      String.raw`(?<![\p{L}\d.,-])(an?|${word}|\d+(?:[.,]\d+)?)(?:\s+(?:further|more|additional|full|whole|good))?[\s-]+${unit}`,
      'giu',
    ),
    (count, name) => `${figureOf(count!)} ${name}`,
  ],
  [/(?<![\p{L}\d.,])(\d+(?:\.\d+)?)\s*sec(?:ond)?s?(?!\p{L})/giu, count => `${(Number(count) / 60).toFixed(6)} min`],
]

/** Numbers in words before a unit of time, hours with minutes behind them ("1:30 h", "1h30") and seconds, written as figures of one unit. */
export const timesInFigures = (line: string): string =>
  inFigures.reduce((text, [pattern, figures]) => text.replace(pattern, (_all, ...groups) => figures(...(groups as string[]))), line)

const hoursAndMinutes = (hours: string, minutes: string): string => `${(Number(hours) + Number(minutes) / 60).toFixed(6)} h`

const figureOf = (count: string): string => figures.get(count.toLowerCase()) ?? count
