import { materialWords, type Say, transformationWords } from './field-words.ts'
import type { Transformation } from './transformation.ts'
import { ownBench, trustInYield } from './trust.ts'

type AnyWords = { readonly label: string } & (
  | { readonly told: (value: unknown, say: Say) => string }
  | {
      readonly each: (item: unknown, say: Say) => string
      readonly of?: (item: unknown, say: Say) => string
      readonly gathered?: (list: readonly unknown[]) => readonly unknown[]
    }
)

const notStated = 'not stated'

/**
 * How one field of two records differs, as a chemist reads it: "yield: 80–98 %, typically 90 (several sources) → 61 % (own bench)". Of a
 * list only what goes and what comes is told, and of what stays with another figure both figures.
 *
 * @param key     a field of the library format; one that it does not know is called by its key
 * @param nameOf  name of a material, its id where it is not known
 */
export function differenceText(before: object, now: object, key: string, nameOf: (id: string) => string): string {
  const words = wordsOf(key)
  const of = (record: object): { readonly value: unknown; readonly say: Say } => ({
    value: stated(record, key),
    say: { nameOf, isolation: (record as { kind?: unknown }).kind === 'isolation' },
  })
  const [old, fresh] = [of(before), of(now)]
  if ('told' in words) {
    const told = ({ value, say }: typeof old): string => (value === undefined ? notStated : words.told(value, say))
    return `${words.label}: ${told(old)} → ${told(fresh)}`
  }
  return `${words.label}: ${listText(words, old, fresh)}`
}

function wordsOf(key: string): AnyWords {
  const known = (materialWords as Record<string, unknown>)[key] ?? (transformationWords as Record<string, unknown>)[key]
  return (known ?? { label: key, told: () => 'stated' }) as AnyWords
}

/** Its value; a yield that the bench itself measured says so, also where the record tells it in its sources alone. */
function stated(record: object, key: string): unknown {
  const value = (record as Readonly<Record<string, unknown>>)[key]
  if (key !== 'yieldPercent' || value === undefined) return value
  const step = record as Transformation
  return step.yieldPercent.from === undefined && trustInYield(step) === 'own bench' ? { ...step.yieldPercent, from: ownBench } : value
}

type ListWords = Extract<AnyWords, { each: unknown }>
interface Side {
  readonly value: unknown
  readonly say: Say
}

function listText({ each, of, gathered }: ListWords, before: Side, now: Side): string {
  const items = ({ value, say }: Side) => {
    const list = (value ?? []) as readonly unknown[]
    return (gathered?.(list) ?? list).map(item => ({ of: of?.(item, say) ?? null, text: each(item, say) }))
  }
  const [old, fresh] = [items(before), items(now)]
  const wholes = (some: typeof old): string => some.map(one => (one.of === null ? one.text : `${one.of} ${one.text}`)).join('; ')
  if (old.length === 0 || fresh.length === 0) return `${wholes(old) || none(before)} → ${wholes(fresh) || none(now)}`
  // One for one: a line that stands twice before and once now has gone once.
  const come = [...fresh]
  const taken = (is: (other: (typeof old)[number]) => boolean): (typeof old)[number] | undefined => {
    const at = come.findIndex(is)
    return at < 0 ? undefined : come.splice(at, 1)[0]
  }
  const notKept = old.filter(one => taken(other => other.of === one.of && other.text === one.text) === undefined)
  const turned: string[] = []
  const gone = notKept.filter(one => {
    const other = one.of === null ? undefined : taken(like => like.of === one.of)
    if (other !== undefined) turned.push(`${one.of} ${one.text} → ${other.text}`)
    return other === undefined
  })
  const parts = [...turned, gone.length > 0 && `no longer ${wholes(gone)}`, come.length > 0 && `now also ${wholes(come)}`]
  return parts.filter(Boolean).join('; ') || 'in another order'
}

const none = ({ value }: Side): string => (value === undefined ? notStated : 'none')
