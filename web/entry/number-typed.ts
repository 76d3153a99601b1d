/** A number as people type it; null where it is none. */
export function numberTyped(text: string): number | null {
  const plain = text
    .trim()
    .replace(/\s*(%|h|hours?)$/i, '')
    .replace(',', '.')
  if (!/^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(plain)) return null
  return Number(plain)
}
