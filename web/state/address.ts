/** The address carries what one would send to somebody else: the plan's id. */
export function planInAddress(search: string): string | null {
  return new URLSearchParams(search).get('plan')
}

/** The same address with another plan, or none. */
export function addressWith(href: string, id: string | null): string {
  const url = new URL(href)
  if (id === null) url.searchParams.delete('plan')
  else url.searchParams.set('plan', id)
  return url.href
}
