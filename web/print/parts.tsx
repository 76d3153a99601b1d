import type { ComponentChildren } from 'preact'
import type { LabelledMaterial } from '../../core/hazards/hazard-list.ts'
import type { Mark } from '../../core/library/mark.ts'
import { MarkLegend } from '../parts/mark.tsx'
import { Pictogram } from '../parts/pictogram.tsx'

/** A blank to write on, so many mm wide; without a width as wide as its cell. */
export const Blank = ({ mm }: { readonly mm?: number }) => <span class="ln" style={mm === undefined ? 'width:100%' : `width:${mm}mm`} />

/** A square to tick. */
export const Tick = () => <i class="box" />

/** A page of its own; what does not fit runs on to the next. `named` chooses another foot. */
export const Leaf = ({
  title,
  of,
  used,
  legend,
  children,
}: {
  readonly title: ComponentChildren
  readonly of?: 'step'
  /** Marks of its figures: what their letters mean stands at its end. */
  readonly used?: Iterable<Mark>
  /** Said after the letters. */
  readonly legend?: string
  readonly children: ComponentChildren
}) => (
  <section class={of === undefined ? 'leaf' : `leaf leaf-${of}`}>
    <h1 data-mark="reckoned">{title}</h1>
    {children}
    {used !== undefined && <MarkLegend used={used}>{legend}</MarkLegend>}
  </section>
)

/** The signs of a label; where nobody knows, a question mark and never an empty place. */
export const Signs = ({ hazard }: { readonly hazard: LabelledMaterial | null }) =>
  hazard === null || hazard.known === 'unknown' ? (
    <span class="pics">
      <span class="q-mark">?</span>
    </span>
  ) : (
    <span class="pics">
      {hazard.pictograms.map(code => (
        <Pictogram code={code} key={code} />
      ))}
    </span>
  )
