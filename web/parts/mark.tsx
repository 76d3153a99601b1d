import type { ComponentChildren } from 'preact'
import type { Mark, Marked as MarkedFigure } from '../../core/library/mark.ts'
import { legendRows, markLetters, markText, markWords, noLetter } from '../../core/report/marks.ts'

/**
 * The letter beside a figure: how sure it is. Drawn by the style sheet, so that an amount that is copied or read out stays an amount; a
 * screen reader is told the word, the pointer the source too.
 */
export const MarkSign = ({ of }: { readonly of: MarkedFigure }) =>
  of.mark === 'reckoned' ? null : (
    <sup
      class={`mk ${of.mark.replace(' ', '-')}`}
      role="img"
      aria-label={markWords[of.mark]}
      title={markText(of)}
      data-letter={markLetters[of.mark]}
    />
  )

/** A figure with its letter. */
export const Marked = ({ of, children }: { readonly of: MarkedFigure; readonly children: ComponentChildren }) => (
  <span data-mark={of.mark}>
    {children}
    <MarkSign of={of} />
  </span>
)

/** Figures that are reckoned from others: they need no letter, and the legend says so. */
export const Reckoned = ({ children }: { readonly children: ComponentChildren }) => <span data-mark="reckoned">{children}</span>

/** What the letters mean that stand above. */
export const MarkLegend = ({ used, children }: { readonly used: Iterable<Mark>; readonly children?: ComponentChildren }) => (
  <p class="s soft mk-legend">
    {legendRows(used).map(({ mark, letter, words }) => (
      <span class="nb" key={mark}>
        <b class="mk-key">{letter}</b> {words}
      </span>
    ))}
    <span>{noLetter}</span>
    {children}
  </p>
)
