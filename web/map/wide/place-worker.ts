import type { Elements } from './elements.ts'
import { place } from './place.ts'

interface Port {
  onmessage: ((event: MessageEvent<{ readonly turn: number; readonly elements: Elements }>) => void) | null
  postMessage(answer: unknown): void
}

const port = self as unknown as Port

port.onmessage = ({ data: { turn, elements } }) => {
  port.postMessage({ turn, placed: place(elements) })
}
