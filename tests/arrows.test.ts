import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'

const root = join(import.meta.dirname, '..')

/** Left may import right. Nothing else inside the project. */
const ARROWS: Readonly<Record<string, readonly string[]>> = {
  'packages/units': [],
  'packages/solver': [],
  'packages/pieces': ['units'],
  'packages/planner': ['units', 'pieces', 'solver'],
  'packages/plan-file': ['units', 'pieces', 'planner'],
  'packages/drawing': ['units', 'planner'],
  'packages/pdf': ['drawing'],
  'apps/cli': ['units', 'plan-file', 'planner', 'drawing', 'pdf'],
  'apps/web': ['units', 'plan-file', 'planner', 'drawing', 'pdf'],
}
/** Packages others may use for their types alone. */
const TYPES_ONLY: readonly (readonly [string, string])[] = [
  ['packages/plan-file', 'planner'],
  ['packages/drawing', 'planner'],
]
/** Libraries that have one room each. */
const ROOM_OF: Readonly<Record<string, string>> = {
  zod: 'packages/plan-file',
  yaml: 'packages/plan-file',
  pdfkit: 'packages/pdf',
  'javascript-lp-solver': 'packages/solver',
  'maxrects-packer': 'packages/solver',
  commander: 'apps/cli',
  preact: 'apps/web',
}
const PURE = [
  'packages/units',
  'packages/pieces',
  'packages/solver',
  'packages/planner',
  'packages/plan-file',
  'packages/drawing',
]

interface Import {
  readonly file: string
  readonly from: string
  readonly typeOnly: boolean
}

function sources(folder: string): readonly string[] {
  return readdirSync(join(root, folder, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(folder, 'src', name))
    .filter((name) => statSync(join(root, name)).isFile())
}

function imports(file: string): readonly Import[] {
  const text = readFileSync(join(root, file), 'utf8')
  const atOnce = text.matchAll(/^\s*(?:import|export)\s+(type\s+)?(?:[^'"();]*?\sfrom\s+)?['"]([^'"]+)['"]/gm)
  // what is loaded only when it is needed
  const later = text.matchAll(/\bimport\(['"]([^'"]+)['"]\)/g)
  return [
    ...[...atOnce].map((m) => ({ file, from: m[2] ?? '', typeOnly: m[1] !== undefined })),
    ...[...later].map((m) => ({ file, from: m[1] ?? '', typeOnly: false })),
  ]
}

describe.each(Object.keys(ARROWS))('%s', (folder) => {
  const found = sources(folder).flatMap(imports)

  test('imports only along the arrows, by package name and for types where that is all it may', () => {
    const wrong = found.filter((i) => {
      const name = /^@lengthwise\/([^/]+)(\/.*)?$/.exec(i.from)
      if (name === null) return false
      const target = name[1] ?? ''
      const typesOnly = TYPES_ONLY.some(([from, to]) => from === folder && to === target)
      return name[2] !== undefined || !ARROWS[folder]?.includes(target) || (typesOnly && !i.typeOnly)
    })
    expect(
      wrong,
      `Mend: move the code to the package it belongs to, or pass what is needed as data. Allowed from ${folder}: ${ARROWS[folder]?.join(', ')}`,
    ).toEqual([])
  })

  test('does not climb out of its own folder', () => {
    const wrong = found.filter((i) => i.from.startsWith('.') && !join(i.file, '..', i.from).startsWith(`${folder}/`))
    // the command carries the page inside it, and what is served beside it
    const allowed =
      folder === 'apps/cli'
        ? wrong.filter((i) => !/^\.\.\/\.\.\/web\/(dist\/lengthwise\.html|served\/)/.test(i.from))
        : wrong
    expect(allowed, 'Mend: import the package by its name').toEqual([])
  })

  test('uses each library only in its room', () => {
    const wrong = found.filter((i) => {
      const name = i.from.startsWith('@') ? i.from.split('/').slice(0, 2).join('/') : (i.from.split('/')[0] ?? '')
      return name in ROOM_OF && ROOM_OF[name] !== folder
    })
    expect(wrong, 'Mend: ask the package that owns the library').toEqual([])
  })

  test('declares in its manifest exactly the packages of the project that it imports', () => {
    const manifest = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8')) as {
      dependencies?: Record<string, string>
    }
    const declared = Object.keys(manifest.dependencies ?? {}).filter((d) => d.startsWith('@lengthwise/'))
    const used = [...new Set(found.map((i) => i.from).filter((f) => f.startsWith('@lengthwise/')))]
    expect(declared.toSorted()).toEqual(used.toSorted())
  })
})

describe.each(PURE)('%s', (folder) => {
  test('neither reads a clock, nor a locale, nor chance, nor functions whose last digit depends on the engine (Node and DOM types are not there at all)', () => {
    const forbidden =
      /\b(Date\.now|new Date|performance\.|Math\.(random|log|log2|log10|exp|pow|sin|cos|tan|cbrt|hypot)|toLocale\w+|Intl\.|localeCompare)/
    const wrong = sources(folder).flatMap((file) =>
      readFileSync(join(root, file), 'utf8')
        .split('\n')
        .map((line, i) => ({ at: `${file}:${i + 1}`, line }))
        .filter(({ line }) => forbidden.test(line) && !/^\s*(\/\/|\*|\/\*)/.test(line)),
    )
    expect(wrong, 'Mend: pass the value in as data, or use whole numbers').toEqual([])
  })
})
