import { Heap } from './heap.ts'

/** A drawer with no more entries than this goes into the heap as it is. Measured: with 64 labels took a tenth longer, with 8 no less. */
const smallDrawer = 16
const levels = 8
const none = -1

/**
 * Smallest key first, for a search whose keys hardly ever fall below what came out: entries lie in drawers by the highest hexadecimal digit in
 * which their key differs from the last base, unsorted, and only the nearest drawer goes through a heap, which therefore stays small. Keys
 * below the base are allowed, they go straight into the heap; keys are 0 or more, or equal to -0.
 *
 * Source: Ahuja, Mehlhorn, Orlin, Tarjan, J. ACM 37 (1990) 213 (from memory), with the digits of the upper half of the binary64 form.
 */
export class RadixHeap {
  size = 0
  private readonly near = new Heap(256)
  // One row an entry: its key (with its upper half as an integer beside it), its item, and the next one of the same drawer.
  private keys: Float64Array<ArrayBuffer>
  private halves: Uint32Array
  private items: Int32Array
  private next: Int32Array
  private free = none
  private rows = 0
  /** Drawers by digit and its value: first entry, and how many. */
  private readonly first = new Int32Array(16 * levels).fill(none)
  private readonly count = new Int32Array(16 * levels)
  /** By digit: one bit for each drawer that holds something. */
  private readonly filled = new Uint16Array(levels)
  private base = 0
  private baseKey = 0
  /** Keys that agree with the base in all but so many bits go into the heap. */
  private nearBits = 0

  constructor(capacity = 1024) {
    this.keys = new Float64Array(capacity)
    this.halves = new Uint32Array(this.keys.buffer)
    this.items = new Int32Array(capacity)
    this.next = new Int32Array(capacity)
  }

  push(key: number, item: number): void {
    this.size++
    if (key <= this.baseKey) {
      this.near.push(key, item)
      return
    }
    let row = this.free
    if (row === none) {
      row = this.rows++
      if (row === this.items.length) this.grow()
    } else this.free = this.next[row]!
    this.keys[row] = key
    this.items[row] = item
    this.file(row)
  }

  /** The smallest key; the queue must not be empty. */
  get minKey(): number {
    if (this.near.size === 0) this.refill()
    return this.near.minKey
  }

  /** Takes out the item with the smallest key; the queue must not be empty. */
  pop(): number {
    if (this.near.size === 0) this.refill()
    this.size--
    return this.near.pop()
  }

  private file(row: number): void {
    const half = this.halves[2 * row + upper]!
    const differs = half ^ this.base
    if (differs >>> this.nearBits === 0) {
      this.near.push(this.keys[row]!, this.items[row]!)
      this.next[row] = this.free
      this.free = row
      return
    }
    const level = (31 - Math.clz32(differs)) >> 2
    const digit = (half >>> (4 * level)) & 15
    const drawer = 16 * level + digit
    this.next[row] = this.first[drawer]!
    this.first[drawer] = row
    this.count[drawer]!++
    this.filled[level]! |= 1 << digit
  }

  /** Empties the nearest drawer: into the heap where it is small, else into drawers of lower digits. */
  private refill(): void {
    while (this.near.size === 0) {
      let level = 0
      while (this.filled[level] === 0) level++
      const bits = this.filled[level]!
      const digit = 31 - Math.clz32(bits & -bits)
      this.filled[level] = bits & (bits - 1)
      const drawer = 16 * level + digit
      const shift = 4 * level
      this.base = (((this.base >>> shift) & ~15) | digit) << shift
      halfOf[upper] = this.base
      this.baseKey = asKey[0]!
      this.nearBits = this.count[drawer]! <= smallDrawer ? shift : 0
      this.count[drawer] = 0
      let row = this.first[drawer]!
      this.first[drawer] = none
      while (row !== none) {
        const after = this.next[row]!
        this.file(row)
        row = after
      }
    }
  }

  private grow(): void {
    const keys = new Float64Array(this.keys.length * 2)
    const items = new Int32Array(keys.length)
    const next = new Int32Array(keys.length)
    keys.set(this.keys)
    items.set(this.items)
    next.set(this.next)
    this.keys = keys
    this.halves = new Uint32Array(keys.buffer)
    this.items = items
    this.next = next
  }
}

const asKey = new Float64Array([1, 0]).subarray(0, 1)
const halfOf = new Uint32Array(asKey.buffer)
/** Where the upper half of a binary64 lies: the second word on all machines but the rare big-endian ones. */
const upper = halfOf[1] === 0x3ff00000 ? 1 : 0
asKey[0] = 0
