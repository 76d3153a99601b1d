import { Heap } from './heap.ts'

/** Digits of the upper half of a binary64, the sign left out: 15 bits tell the drawer, 8 more the compartment in it. */
const drawerShift = 16
const placeShift = 8
const drawers = 1 << (31 - drawerShift)
const compartments = 1 << (drawerShift - placeShift)
/** An entry is one row of four words, so that it lies in one line of the cache: its key in two, its item, and the next row of its place. */
const rowWords = 4

/**
 * Smallest key first, for a search whose keys hardly ever fall below what came out. Entries lie unsorted in drawers by the leading digits of
 * their key, sixteen drawers for each doubling; the nearest drawer is spread over its compartments, and only the nearest compartment goes
 * through a heap, which therefore stays small. Keys below it are allowed, they go straight into the heap; keys are 0 or more, or equal to -0.
 *
 * Source: Ahuja, Mehlhorn, Orlin, Tarjan, J. ACM 37 (1990) 213 (from memory), with two fixed digits of the binary64 form.
 */
export class RadixHeap {
  size = 0
  private readonly near = new Heap(256)
  private words: Int32Array<ArrayBuffer>
  private keys: Float64Array
  private free = 0
  private rows = 1
  /** First row of each place; row 0 stands for none. */
  private readonly drawer = new Int32Array(drawers)
  private readonly compartment = new Int32Array(compartments)
  /** One bit for each drawer, and each compartment, that holds something. */
  private readonly filledDrawers = new Int32Array(drawers / 32)
  private readonly filledCompartments = new Int32Array(compartments / 32)
  /** The open drawer, and the digits down to the nearest compartment: what is not above them goes into the heap. */
  private open = -1
  private nearest = -1

  constructor(capacity = 1024) {
    this.words = new Int32Array(rowWords * capacity)
    this.keys = new Float64Array(this.words.buffer)
  }

  push(key: number, item: number): void {
    this.size++
    let row = this.free
    if (row === 0) {
      row = this.rows++
      if (row * rowWords === this.words.length) this.grow()
    } else this.free = this.words[row * rowWords + 3]!
    this.keys[row * 2] = key === 0 ? 0 : key
    this.words[row * rowWords + 2] = item
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
    const { words } = this
    const at = row * rowWords
    const half = words[at + upper]!
    const place = half >>> placeShift
    if (place <= this.nearest) {
      this.near.push(this.keys[row * 2]!, words[at + 2]!)
      words[at + 3] = this.free
      this.free = row
      return
    }
    const drawer = half >>> drawerShift
    if (drawer === this.open) {
      const compartment = place & (compartments - 1)
      words[at + 3] = this.compartment[compartment]!
      this.compartment[compartment] = row
      this.filledCompartments[compartment >>> 5]! |= 1 << (compartment & 31)
    } else {
      words[at + 3] = this.drawer[drawer]!
      this.drawer[drawer] = row
      this.filledDrawers[drawer >>> 5]! |= 1 << (drawer & 31)
    }
  }

  /** Empties the nearest compartment into the heap; where the open drawer has none left, the next one is opened. */
  private refill(): void {
    for (;;) {
      const compartment = takeLowest(this.filledCompartments, 0)
      if (compartment >= 0) {
        this.nearest = (this.open << (drawerShift - placeShift)) | compartment
        const first = this.compartment[compartment]!
        this.compartment[compartment] = 0
        this.fileAll(first)
        return
      }
      this.open = takeLowest(this.filledDrawers, this.open < 0 ? 0 : this.open >>> 5)
      const first = this.drawer[this.open]!
      this.drawer[this.open] = 0
      this.fileAll(first)
    }
  }

  private fileAll(first: number): void {
    for (let row = first; row !== 0; ) {
      const next = this.words[row * rowWords + 3]!
      this.file(row)
      row = next
    }
  }

  private grow(): void {
    const words = new Int32Array(this.words.length * 2)
    words.set(this.words)
    this.words = words
    this.keys = new Float64Array(words.buffer)
  }
}

/** The lowest bit that is set, from a word on; it is cleared. -1 where none is. */
function takeLowest(bits: Int32Array, from: number): number {
  for (let word = from; word < bits.length; word++) {
    const here = bits[word]!
    if (here === 0) continue
    bits[word] = here & (here - 1)
    return 32 * word + 31 - Math.clz32(here & -here)
  }
  return -1
}

/** Where the upper half of a binary64 lies: the second word on all machines but the rare big-endian ones. */
const upper = new Int32Array(new Float64Array([1]).buffer)[1] === 0x3ff00000 ? 1 : 0
