import type { Elements } from './elements.ts'
import { place } from './place.ts'

interface Port {
  onmessage: ((event: MessageEvent<{ readonly turn: number; readonly elements: Elements; readonly room: number }>) => void) | null
  postMessage(answer: unknown): void
}

const port = self as unknown as Port

port.onmessage = ({ data: { turn, elements, room } }) => {
  port.postMessage({ turn, placed: place(elements, room) })
}
