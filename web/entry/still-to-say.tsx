import type { Lack } from './record.ts'

/** Leads to the blank that something is to be said in, ready to be typed into. */
function lead(field: string): void {
  const place = document.querySelector<HTMLElement>(`.entry [data-field="${field}"]`)
  const blank = place?.querySelector<HTMLElement>('input, select, textarea, button') ?? place
  blank?.scrollIntoView({ block: 'center' })
  blank?.focus()
}

/** What keeps a record from being saved: each leads to where it is said. */
export const StillToSay = ({ of }: { readonly of: readonly Lack[] }) => (
  <div>
    <p>Still to be said; what is typed stays in this browser meanwhile:</p>
    <ul class="dos still">
      {of.map(({ field, what }) => (
        <li key={`${field} ${what}`}>
          <button type="button" class="do" onClick={() => lead(field)}>
            {what}
          </button>
        </li>
      ))}
    </ul>
  </div>
)
