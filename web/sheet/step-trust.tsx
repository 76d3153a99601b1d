import type { FigureTrust } from '../../core/library/figure-trust.ts'
import { trustOfStep } from '../../core/report/trust-words.ts'
import { sentence } from '../../core/report/words.ts'
import type { ChargedStep } from '../../core/route/charged.ts'
import { TrustWord } from '../parts/trust-word.tsx'
import { Name } from '../parts/words.tsx'
import { nameOf } from '../state/names.ts'
import { facts } from '../state/questions.ts'
import { plan } from '../state/store.ts'

/** How sure each figure of a step is; opened, the sources, and its materials one by one. The last row of its table. */
export function StepTrust({ step }: { readonly step: ChargedStep }) {
  const { library } = facts.value
  if (!library.transformations.has(step.transformation)) return null
  const { figures, materials } = trustOfStep(library, plan.value, step)
  const weak = materials.flatMap(({ material, figures: of }) => of.filter(isWeak).map(one => ({ material, ...one })))
  return (
    <tr class="sure">
      <td colSpan={4} class="s">
        <details>
          <summary>
            <span class="soft">How sure:</span>
            {figures.map(one => (
              <Marked of={one} key={one.figure} />
            ))}{' '}
            <span class="soft">
              {weak.length === 0 ? 'densities and hazards seen' : `${weak.length} of its densities and hazards not seen`}
            </span>
            <span class="unseen">, {nameOf(step.makes)}</span>
          </summary>
          <ul class="rows">
            {figures.map(one => (
              <li key={one.figure}>
                <Marked of={one} />
                <span class="soft block">{sentence(one.source ?? 'no source speaks for it')}</span>
              </li>
            ))}
            {materials.map(({ material, figures: of }) => (
              <li key={material}>
                <Name text={nameOf(material)} />
                {of.map(one => (
                  <Marked of={one} key={one.figure} />
                ))}
                <span class="soft block">{sourcesText(of)}</span>
              </li>
            ))}
          </ul>
        </details>
      </td>
    </tr>
  )
}

const isWeak = ({ trust }: FigureTrust): boolean => trust === 'remembered' || trust === 'unknown'

const Marked = ({ of: { figure, trust, source } }: { readonly of: FigureTrust }) => (
  <span class="marked">
    {figure} <TrustWord trust={trust} source={source} />
  </span>
)

/** Each source once, with what it is the source of. */
function sourcesText(figures: readonly FigureTrust[]): string {
  const bySource = new Map<string, string[]>()
  for (const { figure, source } of figures) if (source !== null) bySource.set(source, [...(bySource.get(source) ?? []), figure])
  return bySource.size === 0
    ? 'No source speaks for it.'
    : [...bySource].map(([source, of]) => sentence(`${of.join(' and ')}: ${source}`)).join(' ')
}
