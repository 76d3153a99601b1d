import { render } from 'preact'
import { Pack } from './pack.tsx'
import type { PackProps } from './pack-props.ts'

/**
 * Puts the pack on paper in place of the page, whoever asks for print: the button, the browser's menu or its keys. The pack is drawn when
 * printing begins and taken away afterwards, so that the page carries it at no other time.
 *
 * @param packNow what to print now; null = nothing is planned yet, and the page prints as it stands
 * @returns takes the listeners away
 */
export function printsPack(packNow: () => PackProps | null): () => void {
  const place = document.createElement('div')
  place.id = 'print'
  const show = (): void => {
    const props = packNow()
    if (props === null) return
    document.body.append(place)
    render(<Pack {...props} />, place)
  }
  const hide = (): void => {
    render(null, place)
    place.remove()
  }
  addEventListener('beforeprint', show)
  addEventListener('afterprint', hide)
  return () => {
    removeEventListener('beforeprint', show)
    removeEventListener('afterprint', hide)
    hide()
  }
}
