import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { root } from '../support/tree.ts'

// The pack is printed out of the page, so that the page's styles reach it too: a class of the pack that the page lays out in its own way
// came out on paper as a column a word wide.
it('the pack lays out itself every class that the page gives a layout', () => {
  const files = (folder: string, end: string) =>
    readdirSync(`${root}web/${folder}`)
      .filter(name => name.endsWith(end))
      .map(name => readFileSync(`${root}web/${folder}/${name}`, 'utf8'))
  const page = [...files('css', '.css'), ...files('entry', '.css')].join('\n')
  const print = readFileSync(`${root}web/print/print.css`, 'utf8')
  const used = new Set(
    files('print', '.tsx').flatMap(text => [...text.matchAll(/class="([\w -]+)"/g)].flatMap(match => match[1]!.split(' '))),
  )
  const layout = /\b(display:\s*(grid|flex)|grid-template|min-height|position:\s*(absolute|fixed|sticky))/
  const laidOut = [...page.matchAll(/^ *\.([\w-]+) \{([^}]*)\}/gm)].filter(([, name, body]) => used.has(name!) && layout.test(body!))
  const own = (name: string) => new RegExp(String.raw`\.pack \.${name} \{[^}]*display:`).test(print)
  expect(used.size).toBeGreaterThan(50)
  expect(laidOut.map(([, name]) => name!).filter(name => !own(name))).toEqual([])
})
