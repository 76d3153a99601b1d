import type { Problem } from '../problem/problem.ts'
import type { Qualified, Qualifier } from './outcome-qualifier.ts'

/** An outcome line that is not surely read; every quoted line of its cure is one that can be written in its place. */
export const outcomeAsked = (text: string, what: string, cure: string): Problem => ({
  code: 'outcome-unclear',
  where: ['yield', text],
  what: `"${text}": ${what}`,
  why: 'A yield is not guessed: every later amount of a plan rests on it.',
  cure,
})

const examples = '"isolated 5.2 g" or "yield 74 %", or a range, "isolated 5-5.5 g" or "yield 70-80 %"'

export const noFigure = (text: string): Problem =>
  outcomeAsked(text, 'no mass, moles, volume or percentage can be read in it.', `Write one figure with its unit, such as ${examples}.`)

/** Several figures, none of which is told to be that of the pure product; two percentages may be the ends of a range. */
export function severalFigures(text: string, figures: readonly string[]): Problem {
  const [low, high] = figures.map(one => /^([\d.]+)\s*%$/.exec(one)?.[1])
  const range =
    figures.length === 2 && low !== undefined && high !== undefined && Number(low) < Number(high) ? ` or "yield ${low}-${high} %"` : ''
  return outcomeAsked(
    text,
    `it gives several figures, ${figures.join(' and ')}.`,
    `Keep that of the dry, purified product alone: ${figures.map(one => `"${lineOf(one)}"`).join(' or ')}${range}.`,
  )
}

/** Something is left over that may change the figure; null where the figure is itself in doubt. */
export const leftOver = (text: string, rest: string, figure: string | null): Problem =>
  outcomeAsked(
    text,
    `what "${rest}" says of the figure is not read.`,
    figure === null
      ? `Write one figure with its unit, such as ${examples}.`
      : `Write "${lineOf(figure)}" alone; what was charged or done stands in a line of its own.`,
  )

/** "Recovered 2 g": of the product, or of what did not react. */
export const perhapsStart = (text: string, figure: string): Problem =>
  outcomeAsked(
    text,
    'what is recovered may be what did not react.',
    `If it is the product, write "${lineOf(figure)}"; else leave the line out.`,
  )

export const bound = (text: string, sign: string, figure: string): Problem =>
  outcomeAsked(
    text,
    `"${sign}" gives a bound and no figure.`,
    `Write what is usual, "${lineOf(figure)}" if that is near it, or a range such as "${figure.trim().endsWith('%') ? 'yield 70-80 %' : 'isolated 5-5.5 g'}".`,
  )

/** What came out is not the pure, dry product. */
export const notPure = (text: string, state: string, figure: string): Problem => ({
  code: 'outcome-crude',
  where: ['yield', text],
  what: `"${text}" is told to be ${state}: no yield is counted from it.`,
  why: 'What is crude or wet weighs more than the product in it; a plan that rests on it comes out short.',
  cure: `Write what was weighed pure and dry, such as "isolated 4.1 g"; if ${figure} is to count as product all the same, "${lineOf(figure)}".`,
})

export const otherBasis = (text: string, basis: string, limiting: string | null): Problem => ({
  code: 'outcome-basis',
  where: ['yield', text],
  what: `"${text}" is counted on ${basis}${limiting === null ? '' : `; what gives out first in the charges is ${limiting}`}.`,
  why: 'The same product is another percentage on another reactant.',
  cure: 'Write the mass that came out, such as "isolated 5.2 g", or correct the charges so that this reactant gives out first.',
})

export const secondOutcome = (text: string, first: string): Problem =>
  outcomeAsked(
    text,
    `what came out is told already by "${first}".`,
    'Keep the line of this product and this run alone; two runs of the same are written as a range, "isolated 5-5.5 g".',
  )

/** A percentage that is another thing than the yield, and no mass beside it. */
export function qualifiedAsked(text: string, { kind, text: piece, share }: Qualified, figure: string): Problem {
  const own = 'Write the mass that came out, such as "isolated 5.2 g"'
  const cures: Readonly<Record<Qualifier, string>> = {
    excess: `${own}, or the yield as a line of its own, "yield 74 %".`,
    purity: purityCure(figure, share),
    conversion: `${own}, or the yield on all that was charged, "yield 74 %": where ${figure} is on what was converted, times the conversion.`,
    recovered: `${own}, or the yield on all that was charged, "yield 74 %".`,
    steps: `${own}, and the charge of this step, or the yield of this step alone, "yield 74 %".`,
    method: `${own}; if ${figure} is to stand for what is isolated, "${lineOf(figure)}".`,
    literature: `Write what came out here, "isolated 5.2 g" or "yield 74 %"; if the figure of the literature is to be planned on, "${lineOf(share ?? figure)}".`,
  }
  return outcomeAsked(text, `"${piece}" ${words[kind]}.`, cures[kind])
}

const words: Readonly<Record<Qualifier, string>> = {
  excess: 'tells the purity of one hand, not how much came out',
  purity: 'may be by mass or by the area under a peak',
  conversion: 'leaves open whether the yield is on what was charged or on what was converted',
  recovered: 'is a yield on less than was charged',
  steps: 'is not the yield of this step alone',
  method: 'is not what was isolated',
  literature: 'is what another got',
}

/** Times the purity where both are plain figures. */
function purityCure(figure: string, share: string | null): string {
  const [mass, percent] = [/^([\d.]+)\s*(k?g|mg)$/.exec(figure.trim()), /^([\d.]+)\s*%$/.exec(share ?? '')]
  const pure =
    mass === null || percent === null ? null : `${Number(((Number(mass[1]) * Number(percent[1])) / 100).toPrecision(3))} ${mass[2]}`
  return pure === null
    ? `Write what there is of the product by mass, such as "isolated 5.2 g"${figure === '' ? '' : `; if it counts as pure, "${lineOf(figure)}"`}.`
    : `If it is by mass, write "isolated ${pure}"; if it counts as pure, "isolated ${figure.trim()}".`
}

/** The line that says just this figure. */
export const lineOf = (figure: string): string => (/%|percent/.test(figure) ? `yield ${figure.trim()}` : `isolated ${figure.trim()}`)
