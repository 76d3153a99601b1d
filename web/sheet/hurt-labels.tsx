import { useState } from 'preact/hooks'
import type { LabelledMaterial } from '../../core/hazards/hazard-list.ts'
import { massText, volumeText } from '../../core/quantity/print.ts'
import { materialInPlace } from '../../core/report/in-place-of.ts'
import { counted, degrees, listed } from '../../core/report/words.ts'
import { openMending } from '../entry/place.ts'
import { Exposure } from '../parts/exposure.tsx'
import { Pictogram } from '../parts/pictogram.tsx'
import { Name } from '../parts/words.tsx'
import { beneathFor } from '../state/facts.ts'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'

export function UnknownRow({ materials }: { readonly materials: readonly LabelledMaterial[] }) {
  return (
    <li class="hz unknown">
      <span class="q-mark" aria-hidden="true">
        ?
      </span>
      <div>
        <b>
          {materials.map((material, at) => (
            <span key={material.material}>
              {at > 0 ? ', ' : ''}
              <Name text={nameOf(material.material)} />
            </span>
          ))}
        </b>
        <p>No hazard data: read its safety data sheet.</p>
        {materials.map(material => (
          <OwnRecord of={material} key={material.material} />
        ))}
        <p class="dos s">
          {materials.map(({ material }) => (
            <button type="button" class="do" key={material} onClick={() => openMending(material)}>
              enter its hazards<span class={materials.length > 1 ? '' : 'unseen'}>: {nameOf(material)}</span>
            </button>
          ))}
        </p>
        <p class="state">Unknown: {counted(materials.length, 'material')}. Unknown is not safe.</p>
      </div>
    </li>
  )
}

/** What an own record of the bench says otherwise than the bundled one. */
function OwnRecord({ of }: { readonly of: LabelledMaterial }) {
  const told = materialInPlace(beneathFor(facts.value), of.material)
  return told === null ? null : <p class="own s">{told}</p>
}

/** The gravest three; the rest behind a figure. */
const codesAtFirst = 3

export function LabelRow({ material, numbers }: { readonly material: LabelledMaterial; readonly numbers: ReadonlyMap<string, string> }) {
  const [all, setAll] = useState(false)
  const codes = all ? material.codes : material.codes.slice(0, codesAtFirst)
  const amount = material.massG === null ? (material.volumeMl === null ? '' : volumeText(material.volumeMl)) : massText(material.massG)
  const steps = material.steps.map(step => numbers.get(step) ?? step)
  const where =
    steps.length === 0
      ? ''
      : ` ${material.as.includes('made') || material.as.includes('product') ? 'made or used in' : material.as.every(as => as === 'by-product') ? 'as a by-product of' : 'in'} step${steps.length > 1 ? 's' : ''} ${listed(steps)}`
  return (
    <li class={`hz ${material.known}`}>
      <span class="pics">
        {material.pictograms.map(code => (
          <Pictogram code={code} key={code} />
        ))}
      </span>
      <div>
        <div class="nm">
          <b>
            <Name text={nameOf(material.material)} />
          </b>
          {material.signalWord !== null && material.signalWord !== 'none' && (
            <span class={`sig ${material.signalWord === 'Danger' ? 'danger' : ''}`}>{material.signalWord}</span>
          )}
        </div>
        <ul class="codes">
          {codes.map(({ code, statement }) => (
            <li key={code}>
              <span>{code}</span>
              <span>{statement}</span>
            </li>
          ))}
        </ul>
        {material.codes.length === 0 && <p>No hazard class assigned.</p>}
        {material.codes.length > codes.length && (
          <button type="button" class="fig" onClick={() => setAll(true)}>
            {counted(material.codes.length - codes.length, 'more', 'more')}
            <span class="unseen"> statements of {nameOf(material.material)}</span>
          </button>
        )}
        <p class="state">
          {material.known === 'seen' ? `Seen: ${material.from ?? 'in a source'}.` : 'Remembered, no source seen.'} {amount}
          {where}
          {material.storedDays === null ? '' : `, kept ${counted(material.storedDays, 'day')}`}
          {amount === '' && where === '' ? '' : '.'} <Exposure library={facts.value.library} of={material} /> {degrees(material.note ?? '')}
        </p>
        <OwnRecord of={material} />
      </div>
    </li>
  )
}
