/** Tells a change of the library that somebody else made from one of this page, by the editions that searches were answered from. */
export class EditionWatch {
  #edition: string | null = null
  /** Searches up to this one were begun before this page's own change; null = no change of this page is waited for. */
  #changedAfter: number | null = null

  /** The edition that is here at first. */
  begin(edition: string | null): void {
    this.#edition ??= edition
  }

  /** @param begun  the newest search that was begun before this page changed the library */
  expect(begun: number): void {
    this.#changedAfter = begun
  }

  /** @returns the library is another than at the answer before, and not by this page's doing */
  answered(search: number, edition: string): boolean {
    const own = this.#changedAfter
    // Begun before our change: it says nothing of what the library is now.
    if (own !== null && search <= own) return false
    const isNew = this.#edition !== null && this.#edition !== edition
    this.#edition = edition
    this.#changedAfter = null
    return isNew && own === null
  }
}
