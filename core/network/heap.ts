/**
 * Smallest key first: a 4-ary heap with the keys in the heap itself. Entries are never moved by hand: a caller that lowers a key pushes
 * again and skips the old entry when it comes out (its key is then above the label).
 */
export class Heap {
  private keys: Float64Array
  private items: Int32Array
  size = 0

  constructor(capacity = 64) {
    this.keys = new Float64Array(capacity)
    this.items = new Int32Array(capacity)
  }

  get minKey(): number {
    return this.size > 0 ? this.keys[0]! : Number.POSITIVE_INFINITY
  }

  push(key: number, item: number): void {
    if (this.size === this.keys.length) this.grow()
    const { keys, items } = this
    let at = this.size++
    while (at > 0) {
      const parent = (at - 1) >> 2
      const above = keys[parent]!
      if (above <= key) break
      keys[at] = above
      items[at] = items[parent]!
      at = parent
    }
    keys[at] = key
    items[at] = item
  }

  /** Takes out the item with the smallest key; the heap must not be empty. */
  pop(): number {
    const { keys, items } = this
    const first = items[0]!
    const last = --this.size
    if (last === 0) return first
    const key = keys[last]!
    const item = items[last]!
    let at = 0
    for (;;) {
      const child = at * 4 + 1
      if (child >= last) break
      let least = child
      let leastKey = keys[child]!
      const end = Math.min(child + 4, last)
      for (let other = child + 1; other < end; other++) {
        const otherKey = keys[other]!
        if (otherKey < leastKey) {
          least = other
          leastKey = otherKey
        }
      }
      if (leastKey >= key) break
      keys[at] = leastKey
      items[at] = items[least]!
      at = least
    }
    keys[at] = key
    items[at] = item
    return first
  }

  clear(): void {
    this.size = 0
  }

  private grow(): void {
    const keys = new Float64Array(this.keys.length * 2)
    const items = new Int32Array(keys.length)
    keys.set(this.keys)
    items.set(this.items)
    this.keys = keys
    this.items = items
  }
}
