import type { Overlay } from './partial.ts'

/** Partial routes of a search, one row each: the decision that made it of its parent, what its evaluation found, and the labels it goes by. */
export class PartialTable {
  readonly parent: number[] = []
  readonly node: number[] = []
  readonly choice: number[] = []
  /** The node to decide next; -1 = complete. */
  readonly open: number[] = []
  readonly overlay: (Overlay | null)[] = []
  /** The partial route for which its labels were repaired, itself or one it came from; 0 = they are the network's own. */
  readonly overlayOf: number[] = []
  /** Its labels are exact, or are not to be repaired any more. */
  readonly exact: boolean[] = []
  /** Decisions made. */
  readonly depth: number[] = []
  /** Its completion by best makers was looked at, or is that of the one it comes from. */
  readonly straightened: boolean[] = []

  /**
   * @param parent        -1 for the first, which decides nothing
   * @param isFirstChoice best makers would have decided so
   * @returns number of the row
   */
  add(parent: number, node: number, choice: number, open: number, overlay: Overlay | null, exact: boolean, isFirstChoice: boolean): number {
    this.node.push(node)
    this.choice.push(choice)
    this.open.push(open)
    this.overlay.push(overlay)
    this.overlayOf.push(parent < 0 ? 0 : this.overlayOf[parent]!)
    this.exact.push(exact)
    this.depth.push(parent < 0 ? 0 : this.depth[parent]! + 1)
    this.straightened.push(isFirstChoice && this.straightened[parent]!)
    return this.parent.push(parent) - 1
  }

  clear(): void {
    for (const list of [this.parent, this.node, this.choice, this.open, this.overlay, this.overlayOf]) list.length = 0
    for (const list of [this.exact, this.depth, this.straightened]) list.length = 0
  }

  /** Node, choice, node, choice ... of a partial route. */
  decisionsOf(state: number): number[] {
    const decisions: number[] = []
    for (let s = state; s > 0; s = this.parent[s]!) decisions.push(this.node[s]!, this.choice[s]!)
    return decisions
  }
}
