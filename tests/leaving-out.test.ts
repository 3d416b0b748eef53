import { parseAst } from 'vite'
import { beforeAll, describe, expect, test } from 'vitest'

/** The page leaves parts of libraries out: what is wanted still works, what is refused says so, and a changed library stops the build. */
interface Plugin {
  transform(code: string, id: string): { readonly code: string } | null
  buildEnd(): void
}
let leavingOut: (library: object) => Plugin
let refusing: (file: RegExp) => Plugin

beforeAll(async () => {
  const file = new URL('../apps/web/leaving-out.mjs', import.meta.url).href
  ;({ leavingOut, refusing } = await import(file))
})

const LIBRARY = `
import { one, two } from 'elsewhere'
const table = {}
table.kept = () => 'kept'
table.other = () => one()
const alias = table
alias.kept.note = 'said through another name'
class Drawing { line() { return table.kept() } picture() { return new Picture() } }
class Picture { constructor() { this.size = HUGE } }
const HUGE = 'x'.repeat(9)
function lonely() { return two() }
const names = { white: 1 }
globalCall(lonely)
mark(Drawing.prototype, 'picture', 1)
export { Drawing, lonely, table }
`
const OUTLINE = {
  file: /library/,
  wanted: ['Drawing', 'table'],
  refused: ['Picture'],
  only: { table: ['kept'], Drawing: ['line'] },
  about: { mark: 0 },
  uncalled: ['globalCall'],
}

const thinned = (changes: object = {}, code = LIBRARY): string => {
  const plugin = leavingOut({ ...OUTLINE, ...changes })
  return plugin.transform.call({ parse: parseAst } as unknown as Plugin, code, 'library.js')?.code ?? ''
}
const run = (code: string) => import(`data:text/javascript,${encodeURIComponent(code)}`)

describe('leaving out', () => {
  test('what is wanted works, what nothing needs is gone', async () => {
    const code = thinned()
    const { Drawing, table } = await run(code)
    expect(new Drawing().line()).toBe('kept')
    expect(table.kept.note).toBe('said through another name')
    expect(Object.keys(table)).toEqual(['kept'])
    for (const gone of ['elsewhere', 'HUGE', 'lonely', 'names', 'globalCall', 'mark']) expect(code).not.toContain(gone)
  })

  test('what is refused says so when it is asked all the same', async () => {
    const { Drawing } = await run(thinned({ only: { table: ['kept'] }, about: {}, uncalled: ['globalCall', 'mark'] }))
    expect(() => new Drawing().picture()).toThrow('Picture is left out of the page')
    const plugin = refusing(/library/)
    const code = plugin.transform.call({ parse: parseAst } as unknown as Plugin, LIBRARY, 'library.js')?.code ?? ''
    const { lonely } = await run(code)
    expect(() => lonely()).toThrow('lonely is left out of the page')
  })

  test('an import keeps those of its names that are used', () => {
    const code = thinned({ only: { Drawing: ['line'] } })
    expect(code).toContain("import { one } from 'elsewhere'")
  })

  test.each([
    ['a class that is refused', { refused: ['Photograph'] }, 'Photograph not found'],
    ['an object that is cut down', { only: { tables: ['kept'] } }, 'tables not found'],
    ['a member that stays', { only: { Drawing: ['line', 'curve'] } }, 'Drawing lacks curve'],
    ['a value with a stand-in', { instead: { colours: '{}' } }, 'colours not found'],
    ['a call that is left out', { uncalled: ['register'] }, 'register not found'],
    ['an export', { wanted: ['Drawing', 'Paper'] }, 'it lacks one of Drawing, Paper'],
  ])('a library without %s stops the build', (_, changes, message) => {
    expect(() => thinned(changes)).toThrow(`a library has changed: ${message}`)
  })

  test('a library whose file is gone stops the build', () => {
    expect(() => leavingOut(OUTLINE).buildEnd()).toThrow('there is no /library/ any more')
  })
})
