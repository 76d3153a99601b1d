import type { Depiction } from '../../core/chemistry/drawing.ts'
import { type BottleLabel, bottleLabels, type WasteLabel, wasteLabels } from '../../core/report/bottle-labels.ts'
import { noHazardData } from '../../core/report/cautions.ts'
import { knownText } from '../../core/report/hazard-sheet.ts'
import { nameIn } from '../../core/report/names.ts'
import { type Notice, noticesOf } from '../../core/report/notices.ts'
import { capital, listed, stepsText } from '../../core/report/words.ts'
import { marksOf } from '../map/depict/svg-of.ts'
import { markNode } from '../map/scheme/scheme-svg.tsx'
import { softened } from '../map/softened.ts'
import { Marked } from '../parts/mark.tsx'
import { Formula, Name } from '../parts/words.tsx'
import type { PackProps } from './pack-props.ts'
import { Blank, Leaf, Signs } from './parts.tsx'

/** Labels for every bottle that the plan fills, to be cut out and stuck on. */
export function LabelPage(props: PackProps) {
  const { library, evaluation } = props
  return (
    <Leaf title="Bottle labels" used={bottleLabels(library, evaluation).map(label => label.keepsSure.mark)}>
      <div class="labels">
        {bottleLabels(library, evaluation).map(label => (
          <Bottle {...props} label={label} key={label.step + label.material} />
        ))}
        {wasteLabels(evaluation).map(label => (
          <Waste {...props} label={label} key={label.stream.name} />
        ))}
      </div>
    </Leaf>
  )
}

function Bottle({ plan, depictions, version, label }: PackProps & { readonly label: BottleLabel }) {
  const { hazard } = label
  const known = hazard?.known ?? 'unknown'
  return (
    <article class={`label ${known}`}>
      <div class="lt">
        <div>
          <b class="name">
            <Name text={softened(label.name)} />
          </b>
          <p>
            {label.formula !== null && <Formula text={label.formula} />}
            {label.molarMass !== null && (
              <span data-mark="reckoned">
                {label.formula === null ? '' : ', '}
                {label.molarMass}
              </span>
            )}
          </p>
          <p class="s soft">
            {[plan.title, version === undefined ? '' : `version ${version}`, `step ${label.step}`].filter(part => part !== '').join(', ')}
          </p>
        </div>
        <Structure depiction={depictions.get(label.material)} />
      </div>
      <div class="lh">
        <Signs hazard={hazard} />
        <div>
          {hazard === null || known === 'unknown' ? (
            <p>{noHazardData}</p>
          ) : hazard.codes.length === 0 ? (
            <p>No hazard class assigned.</p>
          ) : (
            <p>
              {hazard.signalWord !== null && hazard.signalWord !== 'none' && <b>{hazard.signalWord} </b>}
              {hazard.codes.map(({ code, statement }) => `${statement} (${code})`).join('. ')}.
            </p>
          )}
          <p class="s soft">Hazards: {hazard === null ? 'unknown: not safe' : knownText(hazard).toLowerCase()}.</p>
        </div>
      </div>
      <p class="lf s">
        <span>
          mass <Blank mm={13} /> g
        </span>
        <span>
          made <Blank mm={14} />
        </span>
        <span>
          keep until <Blank mm={14} />
        </span>
      </p>
      <p class="s soft">
        Keeps: <Marked of={label.keepsSure}>{label.keeps}</Marked>.
      </p>
    </article>
  )
}

/** Wider or higher than this a structure would push the name off its label, px. All are drawn at one bond length, so it is left out. */
const mostWide = 112
const mostHigh = 84

function Structure({ depiction }: { readonly depiction: Depiction | undefined }) {
  if (depiction?.kind !== 'structure') return null
  const { w, h } = depiction.drawing
  if (w > mostWide || h > mostHigh) return null
  return (
    <svg class="mol" width={w} height={h} viewBox={`${-w / 2} ${-h / 2} ${w} ${h}`} aria-hidden="true">
      {marksOf(depiction.drawing).map((mark, at) => markNode(mark, at))}
    </svg>
  )
}

function Waste({ library, plan, version, label }: PackProps & { readonly label: WasteLabel }) {
  const { stream, steps, materials } = label
  return (
    <article class="label waste">
      <div class="lt">
        <div>
          <b class="name">waste: {stream.name.toLowerCase()}</b>
          <p>{capital(stream.container)}</p>
          <p class="s soft">
            {[plan.title, version === undefined ? '' : `version ${version}`, stepsText(steps)].filter(part => part !== '').join(', ')}
          </p>
        </div>
      </div>
      <div class="lh plain">
        <p>{capital(listed(materials.map(nameIn(library))))}.</p>
        {stream.neverWith.length > 0 && (
          <p>
            <b>Never with {listed(stream.neverWith)}.</b>
          </p>
        )}
      </div>
      <p class="lf s">
        <span>
          volume <Blank mm={13} /> mL
        </span>
        <span>
          begun <Blank mm={14} />
        </span>
        <span>
          full <Blank mm={14} />
        </span>
      </p>
    </article>
  )
}

/** Notices for whatever stands or runs with nobody there; hung beside it. */
export function NoticePage({ library, plan, evaluation }: PackProps) {
  const notices = noticesOf(library, evaluation)
  if (notices.length === 0) return null
  return (
    <Leaf title="Notices for what stands or runs alone" used={notices.map(notice => notice.timesSure.mark)}>
      <div class="notices">
        {notices.map((notice, at) => (
          <NoticeBlock notice={notice} bench={plan.settings.bench} key={notice.step + notice.what + at} />
        ))}
      </div>
    </Leaf>
  )
}

const NoticeBlock = ({ notice, bench }: { readonly notice: Notice; readonly bench: string }) => (
  <article class={notice.heated ? 'notice heated' : 'notice'}>
    <h2 class="big">{notice.title}</h2>
    <p>
      <b>
        Step {notice.step}, <Name text={notice.makes} />
      </b>
      : <Marked of={notice.timesSure}>{notice.what}</Marked>
      {notice.when === null ? '' : `, ${notice.when}`}.{bench === '' ? '' : ` ${bench}.`}
    </p>
    <p>In it: {notice.holds}.</p>
    <p class="res">
      {notice.when === null && (
        <span>
          from <Blank mm={26} /> to <Blank mm={26} />
        </span>
      )}
      <span>
        left by <Blank mm={36} />
      </span>
      <span>
        phone <Blank mm={34} />
      </span>
      <span>
        if something is wrong: <Blank mm={notice.heated ? 56 : 36} />
      </span>
    </p>
  </article>
)
