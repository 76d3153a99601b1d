import type { Item } from '../map/scheme/types.ts'

/** Text in styles, as the map writes it, in a line of the sheet. */
export const Runs = ({ of }: { readonly of: Item }) => (
  <>
    {of.map((run, at) =>
      run.sub ? <sub key={at}>{run.t}</sub> : run.i ? <i key={at}>{run.t}</i> : run.b ? <b key={at}>{run.t}</b> : run.t,
    )}
  </>
)
