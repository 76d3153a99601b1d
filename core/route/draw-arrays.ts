/** Arrays of draws for reckonings whose draws nobody keeps: the same ones serve one reckoning after the other. */
export class DrawArrays {
  readonly #arrays: Float64Array[] = []
  #used = 0

  /** An array of so many draws; what is in it is what an earlier reckoning left. */
  next(length: number): Float64Array {
    const before = this.#arrays[this.#used]
    const array = before?.length === length ? before : new Float64Array(length)
    this.#arrays[this.#used++] = array
    return array
  }

  /** Everything handed out so far may be written over. */
  startOver(): void {
    this.#used = 0
  }
}
