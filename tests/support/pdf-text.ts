import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** Text of each page of a PDF, and its size in points. */
export async function pdfPages(
  bytes: Uint8Array,
): Promise<{ readonly text: string; readonly width: number; readonly height: number; readonly right: number; readonly bottom: number }[]> {
  const document = await getDocument({ data: new Uint8Array(bytes), useSystemFonts: true, verbosity: 0 }).promise
  const pages = []
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number)
    const { width, height } = page.getViewport({ scale: 1 })
    const items = (await page.getTextContent()).items.flatMap(item => ('str' in item && item.str.trim() !== '' ? [item] : []))
    pages.push({
      text: items.map(item => item.str).join(' '),
      width,
      height,
      right: Math.max(0, ...items.map(item => (item.transform[4] as number) + item.width)),
      bottom: Math.min(height, ...items.map(item => item.transform[5] as number)),
    })
  }
  await document.destroy()
  return pages
}
