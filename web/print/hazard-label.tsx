import type { LabelledMaterial } from '../../core/hazards/hazard-list.ts'
import type { Beneath } from '../../core/library/beneath.ts'
import type { Library } from '../../core/library/library.ts'
import { trustOf } from '../../core/library/trust.ts'
import { noHazardData } from '../../core/report/cautions.ts'
import { stateText } from '../../core/report/hazard-sheet.ts'
import { materialInPlace } from '../../core/report/in-place-of.ts'
import { nameIn } from '../../core/report/names.ts'
import { softened } from '../map/softened.ts'
import { Exposure } from '../parts/exposure.tsx'
import { Name } from '../parts/words.tsx'
import { Signs } from './parts.tsx'

const SignalWord = ({ word }: { readonly word: LabelledMaterial['signalWord'] }) =>
  word === null || word === 'none' ? null : <span class="sig">{word}</span>

const Statements = ({ material }: { readonly material: LabelledMaterial }) =>
  material.known === 'unknown' ? (
    <p>{noHazardData}</p>
  ) : material.codes.length === 0 ? (
    <p>No hazard class assigned.</p>
  ) : (
    <ul class="codes">
      {material.codes.map(({ code, statement }) => (
        <li key={code}>
          <span>{code}</span>
          <span>{statement}</span>
        </li>
      ))}
    </ul>
  )

/** A material's label in full: state rule, signs, name, signal word, every statement, where it is in the plan. */
export const FullLabel = ({
  library,
  beneath,
  material,
}: {
  readonly library: Library
  readonly beneath: Beneath
  readonly material: LabelledMaterial
}) => (
  <article class={`hz ${material.known}`}>
    <Signs hazard={material} />
    <div>
      <div class="nm">
        <b>
          <Name text={softened(nameIn(library)(material.material))} />
        </b>
        <SignalWord word={material.signalWord} />
      </div>
      <Statements material={material} />
      {material.protection.length > 0 && <p class="s">{material.protection.map(one => one.do).join(' ')}</p>}
      <p class="s soft">
        <span data-mark="reckoned">{stateText(library, material)}</span> <Exposure library={library} of={material} />{' '}
        <span data-mark={trustOf(library.materials.get(material.material)?.sources ?? [])}>{material.note}</span>{' '}
        {materialInPlace(beneath, material.material)}
      </p>
    </div>
  </article>
)

/** The same for a bench sheet: signs at the right, every statement run on after the name; no figures. */
export const SmallLabel = ({
  library,
  material,
  where = '',
}: {
  readonly library: Library
  readonly material: LabelledMaterial
  /** Stands after the name: what it is in this step, where it is not charged. */
  readonly where?: string
}) => (
  <article class={`hz small ${material.known}`}>
    <Signs hazard={material} />
    <p>
      <b>
        <Name text={nameIn(library)(material.material)} />
      </b>
      {where}{' '}
      {material.known === 'unknown' ? (
        noHazardData
      ) : material.codes.length === 0 ? (
        'No hazard class assigned.'
      ) : (
        <>
          <SignalWord word={material.signalWord} />{' '}
          <span class="codes">{material.codes.map(({ code, statement }) => `${code}\u00a0${statement}`).join('; ')}.</span>{' '}
          {material.known === 'remembered' && <span class="soft">Remembered, no source seen.</span>}
        </>
      )}
    </p>
  </article>
)
