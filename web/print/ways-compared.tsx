import type { ComponentChildren } from 'preact'
import { noHazardData } from '../../core/report/cautions.ts'
import {
  comparisonHeadline,
  type HazardComparison,
  hazardComparison,
  type OwnDanger,
  type WayHazards,
} from '../../core/report/way-hazards.ts'
import { capital, inWords, listed } from '../../core/report/words.ts'
import { softened } from '../map/softened.ts'
import { Name } from '../parts/words.tsx'
import type { PackProps } from './pack-props.ts'
import { Signs } from './parts.tsx'

/** The ways that were compared, side by side by what can hurt: what one has and another has not. */
export function WaysCompared({ library, ways }: PackProps) {
  const comparison = hazardComparison(library, ways ?? [])
  if (comparison === null) return null
  // What is unknown on every way alike is told once, and still told.
  const [first] = comparison.ways
  const alike = comparison.ways.every(way => way.unknown.join() === first?.unknown.join())
  const unknown = alike ? (first?.unknown ?? []) : null
  const others = comparison.shared.filter(name => !unknown?.includes(name))
  return (
    <section class="ways" data-mark="reckoned">
      <h2>{comparisonHeadline(comparison)}</h2>
      <table class="t">
        <thead>
          <tr>
            <th />
            {comparison.ways.map(way => (
              <th class={way.taken ? 'on' : undefined} key={way.name}>
                <b>
                  <Name text={capital(way.name)} />
                </b>
                <span class="block">
                  {[way.taken && 'this plan', way.gentlest && 'the gentlest'].filter(Boolean).join('; ') || 'another way'}
                </span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <Row of={comparison} label="Who may have it" cell={way => <Law way={way} />} />
          <Row of={comparison} label="Materials, by worst class" cell={way => countsText(way)} />
          <Row
            of={comparison}
            label="Only on this way"
            cell={way => (way.own.length === 0 ? 'nothing with a class beyond what all have' : <Owns of={way.own} />)}
          />
          <Row
            of={comparison}
            label="Gas given off, at most"
            cell={way => (way.gases.length === 0 ? 'none by the equations' : <b>{way.gases.join('; ')}</b>)}
          />
          {unknown === null && (
            <Row
              of={comparison}
              label="No hazard data"
              cell={way =>
                way.unknown.length === 0 ? (
                  'of none'
                ) : (
                  <>
                    <b>?</b> {listed(way.unknown)}
                  </>
                )
              }
            />
          )}
        </tbody>
      </table>
      {unknown !== null && unknown.length > 0 && (
        <p class="s">
          <b>
            ? No hazard data, on all of these ways: <Name text={unknown.join('; ')} />.
          </b>{' '}
          Unknown is not safe.
        </p>
      )}
      {others.length > 0 && (
        <p class="s soft">
          On all of these ways too, telling none from another: <Name text={others.join('; ')} />. Gravest: explosive, fatal, or a cause of
          cancer, of mutations or of harm to the unborn.
        </p>
      )}
    </section>
  )
}

const Row = ({
  of,
  label,
  cell,
}: {
  readonly of: HazardComparison
  readonly label: string
  readonly cell: (way: WayHazards) => ComponentChildren
}) => (
  <tr>
    <th scope="row">{label}</th>
    {of.ways.map(way => (
      <td class={way.taken ? 'on' : undefined} key={way.name}>
        {cell(way)}
      </td>
    ))}
  </tr>
)

const Law = ({ way: { barred, law } }: { readonly way: WayHazards }) => (
  <>
    {barred.length > 0 && <b class="block">The public cannot have {listed(barred)}.</b>}
    {law.map(text => (
      <span class="block" key={text}>
        § {text}
      </span>
    ))}
    {barred.length + law.length === 0 && 'no row of the bundled lists'}
  </>
)

/** So many are told; the list is worst first, and says how many of it are left. */
const mostOwn = 4

const Owns = ({ of }: { readonly of: readonly OwnDanger[] }) => (
  <>
    {of.slice(0, mostOwn).map(one => (
      <Own danger={one} key={one.name} />
    ))}
    {of.length > mostOwn && (
      <b class="block">
        And {inWords(of.length - mostOwn)} more: {listed(of.slice(mostOwn).map(one => one.name))}.
      </b>
    )}
  </>
)

const Own = ({ danger: { material, name, statements, more } }: { readonly danger: OwnDanger }) => (
  <div class={`own ${material.known}`}>
    <Signs hazard={material} />
    <b>
      <Name text={softened(capital(name))} />
    </b>
    {material.known === 'unknown' ? (
      `. ${noHazardData}`
    ) : (
      <>
        {material.as.includes('gas') && ', given off'}
        {material.signalWord === null || material.signalWord === 'none' ? '' : `, ${material.signalWord}`}: {statements.join('; ')}
        {more > 0 ? `; ${more} more` : ''}.{material.known === 'remembered' && <i> Remembered, no source seen.</i>}
      </>
    )}
  </div>
)

function countsText({ counts, signalWord }: WayHazards) {
  const parts = (['gravest', 'unknown', 'danger', 'warning'] as const).filter(name => counts[name] > 0)
  return (
    <>
      {parts.map((name, at) => (
        <span key={name}>
          {at > 0 && ', '}
          {name === 'gravest' || name === 'unknown' ? (
            <b>
              {counts[name]} {name}
            </b>
          ) : (
            `${counts[name]} ${name}`
          )}
        </span>
      ))}
      {parts.length === 0 && 'none assigned, with sources'}. Signal word: {signalWord ?? 'unknown'}.
    </>
  )
}
