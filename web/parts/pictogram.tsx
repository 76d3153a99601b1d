import { attributesOf, frame, pictogramNames, symbolOf } from './pictogram-shapes.ts'

/**
 * A GHS pictogram: white square on its point, red frame, black symbol; never tinted, on dark pages too. 32 px unless the page's style says
 * otherwise (`.ghs`). Its name is read out.
 *
 * @param code GHS01 to GHS09; anything else draws nothing
 */
export function Pictogram({ code, size = 32 }: { readonly code: string; readonly size?: number | string }) {
  const name = pictogramNames[code]
  if (name === undefined) return null
  return (
    <svg class="ghs" viewBox="0 0 48 48" width={size} height={size} role="img" aria-label={name}>
      <path d={frame.d} fill="#fff" />
      {symbolOf(code).map((shape, index) => (
        <path {...attributesOf(shape)} key={index} />
      ))}
      <path d={frame.d} fill="none" stroke={frame.red} stroke-width={frame.line} />
    </svg>
  )
}
