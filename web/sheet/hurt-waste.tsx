import type { HazardList } from '../../core/hazards/hazard-list.ts'
import { massText, noBreakSpace, numberText, volumeText } from '../../core/quantity/print.ts'
import { peroxideText, quenchText, roomAssumption, roomText, roomWarnings, wasteByDay } from '../../core/report/air-and-age.ts'
import { capital, listed } from '../../core/report/words.ts'
import { Unknown } from '../parts/words.tsx'
import { facts } from '../state/facts-here.ts'
import { nameOf } from '../state/names.ts'

/** Peroxide formers with their test dates, and what the room could take of a volatile liquid. */
export function AirAndAge({ hazards }: { readonly hazards: HazardList }) {
  const { library } = facts.value
  const { peroxides } = hazards
  const room = roomWarnings(hazards)
  return (
    <>
      {peroxides.length > 0 && (
        <div>
          <h3>Peroxide formers</h3>
          <ul class="plain-list">
            {peroxides.map(line => (
              <li key={line.material}>{peroxideText(library, line)}</li>
            ))}
          </ul>
        </div>
      )}
      {room.length > 0 && (
        <div>
          <h3>Vapour and the room</h3>
          <ul class="plain-list">
            {room.map(line => (
              <li key={line.material}>{roomText(library, line)}</li>
            ))}
          </ul>
          <p class="s soft">{roomAssumption}</p>
        </div>
      )}
    </>
  )
}

export function Gas({ hazards, numbers }: { readonly hazards: HazardList; readonly numbers: ReadonlyMap<string, string> }) {
  if (hazards.gas.length === 0) return null
  return (
    <div>
      <h3>Gas</h3>
      <ul class="plain-list">
        {hazards.gas.map(gas => (
          <li key={`${gas.step} ${gas.compound}`}>
            {numberText(gas.litresPerBatch, 2, 1)}
            {noBreakSpace}L {nameOf(gas.compound)} a batch in step {numbers.get(gas.step) ?? gas.step}
            {gas.freeVesselMl === null ? '' : `, over ${volumeText(gas.freeVesselMl)} of free vessel`}: never in a closed vessel.{' '}
            <span class="soft s">Worst case, full conversion, 25 °C{gas.from === 'equation' ? '; from the equation' : ''}.</span>
          </li>
        ))}
      </ul>
    </div>
  )
}

export function Waste({ hazards, numbers }: { readonly hazards: HazardList; readonly numbers: ReadonlyMap<string, string> }) {
  if (hazards.waste.length === 0) return null
  return (
    <div>
      <h3>Waste</h3>
      <table class="t">
        <thead>
          <tr>
            <th>stream</th>
            <th class="n">amount</th>
          </tr>
        </thead>
        <tbody>
          {hazards.waste.map(waste => (
            <tr key={waste.name}>
              <th scope="row" class="plain">
                {capital(waste.name)}
                <span class="s soft block">
                  {waste.container}
                  {waste.neverWith.length > 0 ? `; never with ${listed(waste.neverWith)}` : ''}
                  {wasteByDay(waste) === '' ? '' : `. By day: ${wasteByDay(waste)}`}
                </span>
                {waste.from.flatMap(part =>
                  (part.first ?? []).map(told => (
                    <span class="s block" key={`${part.step} ${part.what} ${told}`}>
                      Step {numbers.get(part.step) ?? part.step}, {part.what}, first: {told}
                    </span>
                  )),
                )}
              </th>
              <td class="n">
                {waste.massG !== null ? massText(waste.massG) : waste.volumeMl !== null ? volumeText(waste.volumeMl) : <Unknown />}
                {waste.open ? ' +' : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {hazards.quench.length > 0 && (
        <ul class="plain-list">
          {hazards.quench.map(line => (
            <li key={line.step + line.destroys}>{quenchText(facts.value.library, line)}</li>
          ))}
        </ul>
      )}
    </div>
  )
}
