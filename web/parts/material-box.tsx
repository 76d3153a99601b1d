import { server } from '../api/client.ts'
import type { MaterialHit } from '../api/replies.ts'
import { Combobox } from './combobox.tsx'
import { Formula, Name } from './words.tsx'

interface Props {
  readonly label: string
  readonly labelSeen?: boolean
  readonly text: string
  readonly placeholder?: string
  readonly onText: (text: string) => void
  readonly onTake: (hit: MaterialHit) => void
  readonly onEnter?: () => void
  readonly invalid?: boolean
  readonly class?: string
  /** The words to look for in what is written; an amount before the name is left out. */
  readonly wordsOf?: (text: string) => string
}

const asWritten = (text: string): string => text

/** Looks a material up by name, synonym, formula or CAS number. */
export function MaterialBox({ wordsOf = asWritten, ...props }: Props) {
  const find = async (text: string, signal: AbortSignal): Promise<readonly MaterialHit[]> => {
    const words = wordsOf(text).trim()
    return words === '' ? [] : (await server.materials(words, signal)).materials
  }
  return (
    <Combobox<MaterialHit>
      {...props}
      find={find}
      keyOf={hit => hit.id}
      says={(hit, text) => hit.name.toLowerCase() === wordsOf(text).trim().toLowerCase()}
      none={text => `No material is called “${wordsOf(text).trim()}”. Try a synonym, a formula or a CAS number.`}
      show={hit => (
        <>
          <span>
            <Name text={hit.name} />
          </span>
          <span>{hit.formula ? <Formula text={hit.formula} /> : hit.kind}</span>
          {(hit.cas || hit.matched !== hit.name) && (
            <span class="s">
              {[hit.matched !== hit.name && hit.matched !== hit.cas && hit.matched !== hit.formula ? hit.matched : null, hit.cas]
                .filter(Boolean)
                .join(', ')}
            </span>
          )}
        </>
      )}
    />
  )
}
