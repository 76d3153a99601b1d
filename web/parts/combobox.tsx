import type { ComponentChildren } from 'preact'
import { useEffect, useId, useRef, useState } from 'preact/hooks'

interface Props<T> {
  readonly label: string
  readonly labelSeen?: boolean
  readonly text: string
  readonly placeholder?: string
  readonly onText: (text: string) => void
  /** Options for what is written; looked for a moment after the last letter. */
  readonly find: (text: string, signal: AbortSignal) => Promise<readonly T[]>
  readonly keyOf: (option: T) => string
  readonly show: (option: T) => ComponentChildren
  readonly onTake: (option: T) => void
  /** Does the option say just what is written? There is nothing to take then, and Enter goes on. */
  readonly says?: (option: T, text: string) => boolean
  /** Enter without a marked option, or with one that says just what is written. */
  readonly onEnter?: () => void
  /** What to say where nothing is found. */
  readonly none: (text: string) => string
  readonly invalid?: boolean
  readonly class?: string
}

/** Letters arrive faster than this, ms; a search a letter would be wasted. */
const restMs = 130
/** A press on a touch screen is over sooner, ms. */
const pressMs = 300

/**
 * A blank with a list under it. Source of roles and keys: WAI-ARIA Authoring Practices 1.2, combobox with list autocomplete and manual
 * selection: arrows mark, Enter takes, Escape closes the list and then empties the blank.
 */
export function Combobox<T>(props: Props<T>) {
  const { label, labelSeen = true, text, onText, find, keyOf, show, onTake } = props
  const id = useId()
  const [options, setOptions] = useState<readonly T[] | null>(null)
  const [open, setOpen] = useState(false)
  const [marked, setMarked] = useState(-1)
  const [silent, setSilent] = useState<string | null>(null)
  const typed = useRef(false)
  const list = useRef<HTMLDivElement>(null)
  const input = useRef<HTMLInputElement>(null)
  // An answer that comes after the person has gone on must not cover what they went to.
  const stillHere = (): boolean => document.activeElement === input.current

  useEffect(() => {
    if (!typed.current) return
    if (text.trim() === '') {
      setOptions(null)
      setOpen(false)
      return
    }
    const stop = new AbortController()
    const timer = setTimeout(() => {
      find(text, stop.signal).then(
        found => {
          setOptions(found)
          setSilent(null)
          setMarked(found.length > 0 ? 0 : -1)
          setOpen(stillHere())
        },
        fault => {
          if (stop.signal.aborted) return
          setOptions([])
          setSilent(fault instanceof Error ? fault.message : String(fault))
          setOpen(stillHere())
        },
      )
    }, restMs)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  }, [text])

  useEffect(() => {
    list.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' })
  }, [marked])

  const take = (option: T): void => {
    typed.current = false
    setOpen(false)
    setOptions(null)
    onTake(option)
  }
  const count = options?.length ?? 0
  /** Where the list stands in the page and covers nothing, it waits for the press that took the focus away: what was pressed must not move. */
  const close = (): void => {
    const inFlow = list.current !== null && getComputedStyle(list.current).position === 'static'
    if (inFlow)
      setTimeout(() => {
        if (!stillHere()) setOpen(false)
      }, pressMs)
    else setOpen(false)
  }
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault()
      if (!open && count > 0) setOpen(true)
      else if (count > 0) setMarked((marked + (event.key === 'ArrowDown' ? 1 : count - 1)) % count)
    } else if (event.key === 'Enter') {
      const option = open ? options?.[marked] : undefined
      if (option !== undefined && !(props.says?.(option, text) && props.onEnter !== undefined)) {
        event.preventDefault()
        take(option)
      } else {
        setOpen(false)
        props.onEnter?.()
      }
    } else if (event.key === 'Escape') {
      if (open) {
        event.stopPropagation()
        setOpen(false)
      } else if (text !== '') {
        event.stopPropagation()
        onText('')
      }
    }
  }
  return (
    <div class={`combo field ${props.class ?? ''}`}>
      <label for={id} class={labelSeen ? '' : 'unseen'}>
        {label}
      </label>
      <input
        id={id}
        ref={input}
        class="blank"
        role="combobox"
        aria-expanded={open}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={open && marked >= 0 ? `${id}-${marked}` : undefined}
        aria-invalid={props.invalid ?? false}
        autocomplete="off"
        spellcheck={false}
        placeholder={props.placeholder}
        value={text}
        onInput={event => {
          typed.current = true
          onText(event.currentTarget.value)
        }}
        onKeyDown={onKeyDown}
        onBlur={close}
        onClick={() => count > 0 && setOpen(true)}
      />
      <div class="options" id={`${id}-list`} role="listbox" aria-label="Found" hidden={!open || count === 0} ref={list}>
        {options?.map((option, at) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are the combobox's own
          <div
            key={keyOf(option)}
            id={`${id}-${at}`}
            role="option"
            tabIndex={-1}
            aria-selected={at === marked}
            onMouseDown={event => event.preventDefault()}
            onClick={() => take(option)}
          >
            {show(option)}
          </div>
        ))}
      </div>
      <div role="status">
        {open && count === 0 && (
          <div class="none">
            <p>{silent ?? props.none(text)}</p>
          </div>
        )}
        {open && count > 0 && <span class="unseen">{count} found</span>}
      </div>
    </div>
  )
}
