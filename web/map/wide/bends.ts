interface Point {
  readonly x: number
  readonly y: number
}

/** Points of a line as the drawing library wants them: how far along from source to target, and how far beside (left is positive). */
export function alongAndBeside(source: Point, target: Point, points: readonly Point[]): { weights: number[]; distances: number[] } {
  const dx = target.x - source.x
  const dy = target.y - source.y
  const length = Math.hypot(dx, dy) || 1
  return {
    weights: points.map(point => ((point.x - source.x) * dx + (point.y - source.y) * dy) / (length * length)),
    distances: points.map(point => ((point.y - source.y) * dx - (point.x - source.x) * dy) / length),
  }
}
