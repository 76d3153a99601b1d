/** JSON with the keys of every object in order, so that equal data are equal text. */
export function canonical(data: unknown): string {
  if (Array.isArray(data)) return `[${data.map(canonical).join(',')}]`
  if (data === null || typeof data !== 'object') return JSON.stringify(data)
  const entries = Object.entries(data as Record<string, unknown>).filter(([, v]) => v !== undefined)
  return `{${entries
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([k, v]) => `${JSON.stringify(k)}:${canonical(v)}`)
    .join(',')}}`
}
