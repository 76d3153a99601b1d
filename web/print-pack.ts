/** Prints the pack: the browser's own dialog over the print layout. */
export async function printPack(): Promise<void> {
  await document.fonts.ready
  window.print()
}
