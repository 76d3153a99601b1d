import type { Transformation, YieldPercent } from '../transformation.ts'
import type { Finding } from './check.ts'

const why = 'Low, typical and high are read as the 10th, 50th and 90th percentile of what people isolate, in percent.'

/** 0 <= low <= typical <= high <= 100 and typical above 0, for the product, for second products, and 0 to 100 for each report. */
export function yieldsOrdered(transformation: Transformation): readonly Finding[] {
  const findings: Finding[] = []
  const find = (field: readonly string[], what: string, cure: string) =>
    findings.push({ severity: 'error', code: 'yields-ordered', field, what, why, cure })
  const look = ({ low, typical, high }: YieldPercent, field: readonly string[]) => {
    if (!(0 <= low && low <= typical && typical <= high && high <= 100))
      find(field, `Yields out of order or range: low ${low}, typical ${typical}, high ${high}.`, 'Give 0 <= low <= typical <= high <= 100.')
    else if (typical === 0)
      find([...field, 'typical'], 'A typical yield of 0.', 'Give what is usually isolated, above 0 (low alone may be 0).')
  }
  look(transformation.yieldPercent, ['yieldPercent'])
  for (const [index, product] of (transformation.coProducts ?? []).entries())
    look(product.yieldPercent, ['coProducts', String(index), 'yieldPercent'])
  for (const [index, report] of (transformation.reports ?? []).entries())
    if (report.percent < 0 || report.percent > 100)
      find(
        ['reports', String(index), 'percent'],
        `A reported yield of ${report.percent} %.`,
        'Leave a wet or impossible one out, or correct it.',
      )
  return findings
}
