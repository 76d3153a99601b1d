import type { VNode } from 'preact'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { type Canvas, openCanvas } from './canvas.ts'
import { type Elements, elementsOf } from './elements.ts'
import { extentOf } from './extent.ts'
import { depthsOf, firstDepth, foldedAt, type WideNetwork } from './network.ts'
import type { Placed } from './placed.ts'
import { WideList } from './wide-list.tsx'

export interface WideMapProps {
  readonly network: WideNetwork
  /** Compounds that the plan wants. */
  readonly goals: readonly string[]
  readonly onChoose: (id: string) => void
  /** The same as a list beside it: the keyboard's way in. False where the page shows one already. */
  readonly list?: boolean
}

/** Air round the network, px. */
const besides = 12

/** Places in a worker of its own; only the last question is answered. */
function usePlaces(elements: Elements, room: () => number): Placed | null {
  const [placed, setPlaced] = useState<{ of: Elements; placed: Placed } | null>(null)
  const worker = useRef<Worker | null>(null)
  const turn = useRef(0)
  useEffect(() => {
    worker.current = new Worker(new URL('./place-worker.ts', import.meta.url), { type: 'module' })
    return () => worker.current?.terminate()
  }, [])
  useEffect(() => {
    const asked = ++turn.current
    const port = worker.current
    if (!port) return
    port.onmessage = ({ data }: MessageEvent<{ turn: number; placed: Placed }>) => {
      if (data.turn === asked && asked === turn.current) setPlaced({ of: elements, placed: data.placed })
    }
    port.postMessage({ turn: asked, elements, room: room() })
  }, [elements])
  return placed?.of === elements ? placed.placed : null
}

/** What it can become: the network downstream, folded by distance, panned and zoomed, and the same as a list. */
export default function WideMap({ network, goals, onChoose, list = true }: WideMapProps): VNode {
  const depths = useMemo(() => depthsOf(network), [network])
  const [depth, setDepth] = useState(() => firstDepth(network))
  const [looked, setLooked] = useState<string | null>(null)
  const wanted = goals.join(' ')
  const elements = useMemo(() => elementsOf(foldedAt(network, depth, goals), network.start, goals), [network, depth, wanted])
  const room = useRef<HTMLDivElement>(null)
  const placed = usePlaces(elements, () => (room.current?.clientWidth ?? 0) - 2 * besides)
  const canvas = useRef<Canvas | null>(null)
  const choose = useRef(onChoose)
  choose.current = onChoose
  useEffect(() => {
    canvas.current = openCanvas(room.current!, id => choose.current(id))
    return () => canvas.current?.close()
  }, [])
  useEffect(() => {
    if (placed) canvas.current?.show(elements, placed)
  }, [elements, placed])
  useEffect(() => canvas.current?.lookAt(looked), [looked])
  useEffect(() => setDepth(firstDepth(network)), [network])
  return (
    <div class="wide">
      <div class="wide-tools">
        <fieldset class="wide-depth">
          <legend>Within</legend>
          {depths.map(one => (
            <label key={one}>
              <input type="radio" name="wide-depth" checked={one === depth} onChange={() => setDepth(one)} />
              {one === depths.at(-1) ? `${one} steps: all` : `${one} ${one === 1 ? 'step' : 'steps'}`}
            </label>
          ))}
        </fieldset>
        <button type="button" class="do" onClick={() => canvas.current?.zoom(1.25)}>
          Closer
        </button>
        <button type="button" class="do" onClick={() => canvas.current?.zoom(0.8)}>
          Further
        </button>
        <button type="button" class="do" onClick={() => canvas.current?.whole()}>
          Whole
        </button>
      </div>
      <div class={list ? 'wide-both' : 'wide-both alone'}>
        <div
          class="wide-canvas"
          ref={room}
          style={placed === null ? undefined : { height: `${Math.ceil(extentOf(elements, placed).h + 2 * besides)}px` }}
          role="img"
          aria-label={`Network of ${elements.dots.filter(dot => dot.kind === 'compound').length} compounds; the list says the same`}
          aria-busy={placed === null}
        />
        {list && <WideList network={network} depth={depth} goals={goals} onChoose={onChoose} onLook={setLooked} />}
      </div>
    </div>
  )
}
