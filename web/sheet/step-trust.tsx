import type { FigureTrust } from '../../core/library/figure-trust.ts'
import { physicalFigures } from '../../core/library/physical.ts'
import { trustOfStep } from '../../core/report/trust-words.ts'
import { sentence } from '../../core/report/words.ts'
import type { ChargedStep } from '../../core/route/charged.ts'
import { MarkedName } from '../parts/trust-word.tsx'
import { Name } from '../parts/words.tsx'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'
import { plan } from '../state/store.ts'

/** How sure each figure of a step is; opened, the sources, and its materials one by one. The last row of its table. */
export function StepTrust({ step }: { readonly step: ChargedStep }) {
  const { library } = facts.value
  if (!library.transformations.has(step.transformation)) return null
  const { figures, materials } = trustOfStep(library, plan.value, step)
  const all = materials.reduce((sum, one) => sum + one.figures.length, 0)
  const weak = materials.flatMap(({ material, figures: of }) => of.filter(isWeak).map(one => ({ material, ...one })))
  return (
    <tr class="sure">
      <td colSpan={4} class="s">
        <details>
          <summary>
            <span class="soft">How sure:</span>
            {figures
              .filter(({ figure }) => atFirst.has(figure))
              .map(one => (
                <MarkedName of={one} key={one.figure} />
              ))}{' '}
            <span class="soft">
              {weak.length === 0 ? 'all that is known of its materials seen' : `${weak.length} of ${all} figures of its materials not seen`}
            </span>
            <span class="unseen">, {nameOf(step.makes)}</span>
          </summary>
          <ul class="rows">
            {figures.map(one => (
              <li key={one.figure}>
                <MarkedName of={one} />
                <span class="soft block cited">{sentence(one.source ?? 'no source speaks for it')}</span>
              </li>
            ))}
            {materials.map(({ material, figures: of }) => (
              <li key={material}>
                <Name text={nameOf(material)} />
                {of.map(one => (
                  <MarkedName of={one} value={valueHere(material, one.figure)} key={one.figure} />
                ))}
                <span class="soft block cited">{sourcesText(of)}</span>
              </li>
            ))}
          </ul>
        </details>
      </td>
    </tr>
  )
}

const isWeak = ({ trust }: FigureTrust): boolean => trust === 'remembered' || trust === 'unknown'

/** What a reader asks about first; the others follow when opened. */
const atFirst: ReadonlySet<FigureTrust['figure']> = new Set(['charges', 'yield', 'times'])

/** As the record states it; hazards are told in question 6. */
function valueHere(id: string, figure: FigureTrust['figure']): string | undefined {
  const material = facts.value.library.materials.get(id)
  return material === undefined ? undefined : physicalFigures(material).find(one => one.figure === figure)?.value
}

/** Each source once, with what it is the source of. */
function sourcesText(figures: readonly FigureTrust[]): string {
  const bySource = new Map<string, string[]>()
  for (const { figure, source } of figures) if (source !== null) bySource.set(source, [...(bySource.get(source) ?? []), figure])
  return bySource.size === 0
    ? 'No source speaks for it.'
    : [...bySource].map(([source, of]) => sentence(`${of.join(' and ')}: ${source}`)).join(' ')
}
