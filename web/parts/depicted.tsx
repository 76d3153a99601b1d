import { marksOf } from '../map/depict/svg-of.ts'
import { markNode } from '../map/scheme/scheme-svg.tsx'
import { facts } from '../state/facts-here.ts'
import { Formula } from './words.tsx'

/** A compound as it stands on the map: its structure, or its formula; nothing where only its name tells of it. */
export function Depicted({ id }: { readonly id: string }) {
  const depiction = facts.value.depictions.get(id)
  if (depiction === undefined || depiction.kind === 'words') return null
  if (depiction.kind === 'formula')
    return (
      <span class="formula">
        <Formula text={depiction.formula} />
      </span>
    )
  const { w, h } = depiction.drawing
  return (
    <svg class="structure" width={w} height={h} viewBox={`${-w / 2} ${-h / 2} ${w} ${h}`} aria-hidden="true">
      {marksOf(depiction.drawing).map((mark, at) => markNode(mark, at))}
    </svg>
  )
}
