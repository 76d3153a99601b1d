import { useState } from 'preact/hooks'
import type { Settings } from '../../core/plan/settings.ts'
import { inBase } from '../../core/quantity/convert.ts'
import { volumeText } from '../../core/quantity/print.ts'
import { AmountField } from '../parts/amount-field.tsx'

type Vessels = Settings['vessels']
type Kind = Vessels[number]['kind']
const kinds: readonly Kind[] = ['flask', 'beaker', 'pot', 'tube', 'mortar', 'tray', 'other']

/** Vessels owned, a line each; a new one is a kind and a volume. */
export function VesselRow({ vessels, onVessels }: { readonly vessels: Vessels; readonly onVessels: (vessels: Vessels) => void }) {
  const [kind, setKind] = useState<Kind>('flask')
  return (
    <div class="line">
      <span>Vessels</span>
      <div>
        {vessels.length === 0 && <span class="soft">not stated: one batch, its volume told</span>}
        {vessels.map((vessel, at) => (
          <span class="item" key={`${vessel.kind} ${vessel.volumeMl}`}>
            {vessel.kind} {volumeText(vessel.volumeMl)}
            {vessel.count > 1 ? ` × ${vessel.count}` : ''}{' '}
            <button type="button" class="do s" onClick={() => onVessels(vessels.filter((_, other) => other !== at))}>
              drop
              <span class="unseen">
                {' '}
                the {vessel.kind} of {volumeText(vessel.volumeMl)}
              </span>
            </button>
          </span>
        ))}
        <span class="item">
          <select
            class="blank"
            aria-label="kind of a further vessel"
            value={kind}
            onChange={event => setKind(event.currentTarget.value as Kind)}
          >
            {kinds.map(one => (
              <option key={one}>{one}</option>
            ))}
          </select>{' '}
          <AmountField
            key={vessels.length}
            text=""
            label="volume of a further vessel"
            dimensions={['volume']}
            mayBeEmpty
            size={7}
            onWritten={quantity => {
              if (quantity === null) return
              const volumeMl = inBase(quantity)
              const same = vessels.findIndex(vessel => vessel.kind === kind && vessel.volumeMl === volumeMl)
              onVessels(
                same < 0
                  ? [...vessels, { kind, volumeMl, count: 1 }]
                  : vessels.map((vessel, at) => (at === same ? { ...vessel, count: vessel.count + 1 } : vessel)),
              )
            }}
          />
        </span>
      </div>
    </div>
  )
}
