/** Pieces parted by commas or lines, as typed. */
export const piecesOf = (text: string): readonly string[] =>
  text
    .split(/[,;\n]/)
    .map(piece => piece.trim())
    .filter(Boolean)
