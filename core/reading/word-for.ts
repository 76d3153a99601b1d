import type { NameIndex } from './names.ts'

/** A name that the reader takes for just this material; with its id in braces where the name alone could mean another. */
export function wordFor(id: string, names: NameIndex): string {
  const name = names.materials.get(id)?.name ?? id
  const found = names.lookUp(name)
  return found.kind === 'material' && found.material === id && found.assumed === null && !/[+>]|->|=/.test(name)
    ? name
    : `${name.replace(/\s*[+>=]\s*/g, ' ')} {${id}}`
}
