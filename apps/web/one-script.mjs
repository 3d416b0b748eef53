// The page and its workers in one script. What they share is in it once, as functions: the page calls those it needs, and
// starts each worker with the text of those that the worker needs.
import { readFileSync } from 'node:fs'
import { parseAst } from 'vite'

/**
 * @param {object[]} chunks as the bundler gives them, with imports and exports
 * @param {string} page name of the entry that the page itself runs; the other entries are parts for workers
 * @returns the script; in it `scriptOf(part)` is the script of a worker (`src/parts.ts`)
 */
export function oneScript(chunks, page) {
  for (const chunk of chunks) if (!chunk.isEntry) refuseChanging(chunk)
  const number = new Map(chunks.map(({ fileName }, n) => [fileName, n]))
  const entries = chunks.filter(({ isEntry }) => isEntry)
  const steps = (name, text) =>
    inOrder(entries.find((one) => one.name === name)).map(({ fileName, imports }) => {
      const n = number.get(fileName)
      return `const got${n}=${text(`chunk${n}`)}(${imports.map((from) => `got${number.get(from)}`).join(',')});`
    })
  const workers = entries
    .filter(({ name }) => name !== page)
    .map(({ name }) => {
      return `${name}:()=>\`'use strict';${steps(name, (chunk) => `(\${${chunk}})`).join('')}\``
    })
  return [
    ...chunks.map((chunk, n) => `const chunk${n}=${asFunction(chunk)};`),
    `const scriptOf=(part)=>({${workers.join(',')}})[part]();`,
    ...steps(page, (chunk) => chunk),
  ].join('\n')

  /** A chunk behind all that it needs. */
  function inOrder(chunk, found = new Set()) {
    for (const from of chunk.imports) inOrder(chunks[number.get(from)], found)
    return [...found.add(chunk)]
  }
}

/** What a shared chunk gives is taken once: it may not change afterwards, and of a library nobody knows that. */
function refuseChanging({ modules }) {
  for (const file of Object.keys(modules))
    if (file.includes('/node_modules/') || /^export (?:let|var)\b/m.test(readFileSync(file, 'utf8')))
      throw new Error(`build: what ${file} exports may change, so it cannot be shared`)
}

/** A function of what the imported chunks give, in their order; it returns what this one exports. */
function asFunction({ code, imports, fileName }) {
  if (/\bimport\.meta\b/.test(code))
    throw new Error(`build: ${fileName} asks where it is, and the text of a worker is nowhere`)
  const taken = imports.map(() => [])
  const given = []
  let text = code
  for (const node of parseAst(code).body.toReversed()) {
    if (!/^(?:Import|Export)/.test(node.type)) continue
    const from = imports.indexOf(node.source?.value.replace('./', ''))
    if (node.type === 'ImportDeclaration' && from >= 0)
      taken[from].push(...node.specifiers.map(({ imported, local }) => `${imported.name}:${local.name}`))
    else if (node.type === 'ExportNamedDeclaration' && !node.declaration && !node.source)
      given.push(...node.specifiers.map(({ exported, local }) => `${exported.name}:${local.name}`))
    else throw new Error(`build: ${node.type} does not fit into one script`)
    text = text.slice(0, node.start) + text.slice(node.end)
  }
  const inside = `${text.trim()}\nreturn{${given.join(',')}}`
  return `(${taken.map((names) => `{${names.join(',')}}`).join(',')})=>{${inside}}`
}
