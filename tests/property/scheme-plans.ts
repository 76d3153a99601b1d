import type { Cell, Item, Run, SchemeIn, Step, Way } from '../../web/map/scheme/types.ts'

/** mulberry32, public domain: small, seeded, good enough to make plans with. */
export function chance(seed: number): () => number {
  let a = seed >>> 0
  return () => {
    a = (a + 0x6d2b79f5) >>> 0
    let t = a
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

const syllables = [
  'ben',
  'zo',
  'yl',
  'phen',
  'meth',
  'tetra',
  'cyclo',
  'penta',
  'di',
  'quin',
  'ox',
  'al',
  'ine',
  'hydra',
  'zone',
  'imi',
  'dazole',
]
const conditions = [
  'AcOH',
  'EtOH, reflux',
  'KOH 0.54 eq',
  'Cu(OAc)2 1 %',
  '110–118 °C',
  'H2O',
  'NH4NO3 1.35 eq',
  'propan-1-ol',
  'diphenyl ether',
  '300–303 °C',
]

/**
 * A wild plan: a tree of up to 14 steps, made co-reactants from anywhere (which no bench would do), detours, co-reactants, leavers, grey steps.
 * The same seed gives the same plan.
 */
export function wildPlan(seed: number, pane: number): SchemeIn {
  const random = chance(seed)
  const int = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
  const one = <T>(list: readonly T[]): T => list[int(0, list.length - 1)]!
  const word = () => Array.from({ length: int(2, 5) }, () => one(syllables)).join('\u00ad')
  const name = () => Array.from({ length: random() < 0.7 ? 1 : int(2, 3) }, word).join(' ')
  const text = (t: string): Item => [{ t }]
  const cells: Record<string, Cell> = {}
  const cell = (id: string, role: Cell['role'], grey = false): string => {
    const kind = random()
    const large = random() < 0.08
    const w = large ? int(160, 260) : int(38, 130)
    const h = large ? int(40, 60) : int(14, 110)
    const formula: Run[] = [{ t: 'Cu(NO' }, { t: '3', sub: true }, { t: ')' }, { t: '2', sub: true }]
    cells[id] = {
      id,
      kind: kind < 0.8 ? 'structure' : kind < 0.92 ? 'formula' : 'words',
      ...(kind < 0.8 ? { shape: { w, h, topX: int(-Math.floor(w / 2) + 4, Math.floor(w / 2) - 4), topY: -h / 2 } } : { formula }),
      name: name(),
      role,
      ...(random() < 0.85 ? { amount: [{ t: `${int(1, 99)}.${int(0, 9)} g`, pen: role === 'start' }] } : {}),
      ...(role === 'goal' && random() < 0.5 ? { note: text('3.9 g of the intermediate') } : {}),
      ...(grey ? { grey } : {}),
      ...(role === 'co' && random() < 0.6 ? { pick: random() < 0.2 ? ('make only' as const) : ('buy' as const) } : {}),
    }
    return id
  }
  const way = (id: string): Way => ({
    id,
    over: Array.from({ length: int(0, 4) }, () => text(one(conditions))),
    ...(random() < 0.7 ? { brief: [text(one(conditions))] } : {}),
    under: [
      text(`${int(1, 40)} h`),
      text(`${int(20, 98)} % (${int(10, 50)}–${int(50, 99)})`),
      ...(random() < 0.2 ? [[{ t: 'remembered', i: true }]] : []),
    ],
    sure: one(['seen', 'seen', 'remembered', 'unknown'] as const),
  })
  cell('start', 'start')
  const made: string[] = ['start']
  const greyCells = new Set<string>()
  const steps: Step[] = []
  const count = int(1, 14)
  for (let i = 1; i <= count; i++) {
    // Now and then a line begins with a compound of its own.
    const root = random() < 0.12 ? cell(`root${i}`, 'mid') : undefined
    const from = root ?? (random() < 0.6 ? made.at(-1)! : one(made))
    const grey = greyCells.has(from) || random() < 0.1
    const to = cell(`p${i}`, random() < 0.3 ? 'goal' : 'mid', grey)
    if (grey) greyCells.add(to)
    const co = Array.from({ length: random() < 0.4 ? int(1, 2) : 0 }, (_, k) => cell(`c${i}-${k}`, 'co', grey))
    const others = made.filter(id => id !== from && id !== 'start' && !ancestors(steps, from).has(id))
    const joins = others.length > 0 && random() < 0.3 ? [one(others)] : []
    steps.push({
      ...way(`w${i}`),
      no: grey && random() < 0.5 ? '' : String(i),
      from,
      to,
      co,
      made: joins,
      leaves:
        random() < 0.25 ? [random() < 0.7 ? { text: [{ t: 'NO' }, { t: '2', sub: true }] } : { cell: cell(`l${i}`, 'mid', grey) }] : [],
      alts: Array.from({ length: random() < 0.35 ? int(1, 4) : 0 }, (_, k) => way(`w${i}-${k}`)),
      ...(grey ? { grey } : {}),
    })
    made.push(to)
  }
  return {
    pane,
    form: pane < 400 ? 'upright' : 'wide',
    start: 'start',
    cells,
    steps,
    legend: [text('Ink: chosen. Grey: not chosen.'), text('Solid: seen in a source. Dashed: remembered.')],
    ...(pane < 400 ? { touch: 44 } : {}),
  }
}

function ancestors(steps: readonly Step[], cell: string): Set<string> {
  const found = new Set<string>()
  for (let step = steps.find(s => s.to === cell); step; step = steps.find(s => s.to === step!.from)) found.add(step.from)
  return found
}

/** The same plan after the first alternative of a step was chosen. */
export function flipped(plan: SchemeIn, index: number, to: number): SchemeIn {
  const steps = plan.steps.map((step, i) => {
    if (i !== index) return step
    const { id, over, brief, under, sure } = step
    const chosen = step.alts[to]!
    const old: Way = { id, over, under, sure, ...(brief ? { brief } : {}) }
    const alts = step.alts.map((alt, k) => (k === to ? old : alt))
    const { brief: _, ...rest } = step
    return { ...rest, ...chosen, alts }
  })
  return { ...plan, steps }
}
