import { isBuyable } from '../../core/library/material.ts'
import { compoundIn } from '../../core/library/reference-charge.ts'
import { carrierOf } from '../map/scheme-of-plan.ts'
import { Name } from '../parts/words.tsx'
import { facts } from '../state/facts-here.ts'
import { flipping, makeOrBuy, notFlipped } from '../state/goals.ts'
import { materialHere, nameOf } from '../state/names.ts'
import { plan } from '../state/store.ts'

export interface Pick {
  readonly compound: string
  readonly value: 'buy' | 'make' | 'make only'
}

/**
 * Co-reactants of a goal's route that could be bought or made, in working order: bought ones that the library knows how to make, and made
 * ones off the chain from the start, which may be bought.
 */
export function picksOf(target: string): readonly Pick[] {
  const goal = plan.value.goals.find(one => one.target === target)
  if (goal === undefined) return []
  const { library, makeable } = facts.value
  const made = new Set(goal.route.steps.map(step => step.makes))
  const picks = new Map<string, Pick>()
  for (const step of goal.route.steps) {
    const transformation = library.transformations.get(step.transformation)
    if (transformation === undefined) continue
    const carrier = carrierOf(transformation, goal.route.start, made)
    for (const { compound } of transformation.reactants) {
      if (compound === carrier || compound === goal.route.start || compound === 'water' || compound === 'oxygen') continue
      const material = materialHere(compound)
      if (made.has(compound)) picks.set(compound, { compound, value: material !== null && isBuyable(material) ? 'make' : 'make only' })
      else if (makeable.has(compound) && material !== null && compoundIn(material) === compound)
        picks.set(compound, { compound, value: 'buy' })
    }
  }
  const flip = flipping.value
  return [...picks.values()].map(pick =>
    flip?.compound === pick.compound && pick.value !== 'make only' ? { ...pick, value: flip.to } : pick,
  )
}

/** Two words with a filled and an open dot for each co-reactant that may be made or bought. */
export function MakeOrBuy({ target }: { readonly target: string }) {
  const picks = picksOf(target)
  if (picks.length === 0) return null
  return (
    <div class="lines">
      {notFlipped.value !== null && <p role="status">{notFlipped.value}</p>}
      {picks.map(({ compound, value }) => (
        <fieldset class="line" key={compound}>
          <legend>
            <Name text={nameOf(compound)} />
          </legend>
          {value === 'make only' ? (
            <span class="own">make only</span>
          ) : (
            <div>
              {(['buy', 'make'] as const).map(word => (
                <label class="dot-choice" key={word}>
                  <input
                    type="radio"
                    name={`pick-${compound}`}
                    checked={value === word}
                    onChange={() => makeOrBuy(compound, word, target)}
                  />
                  {word}
                </label>
              ))}
            </div>
          )}
        </fieldset>
      ))}
    </div>
  )
}
