// Leaves out of a library what the page never asks of it. Of a library that comes as one long file a bundler takes nearly
// everything, for it must suppose that each line at the top does something; of the files named to this plugin we know better.

/**
 * A plugin that thins one file of a library, and stops the build when something named here is no longer in it.
 * @param {object} library
 * @param {RegExp} library.file the file
 * @param {string[]} library.wanted the exports that are used; what none of them needs is left out
 * @param {string[]} [library.refused] classes and functions that throw when they are asked all the same, values that become undefined
 * @param {Record<string, string[]>} [library.only] the members that stay of a class, of an object, or of what an object is given later
 * @param {Record<string, string>} [library.instead] values, and the expressions that stand in for them
 * @param {Record<string, number>} [library.about] functions called at the top, and which of their arguments they do something to
 * @param {string[]} [library.uncalled] functions whose calls at the top are left out
 */
export function leavingOut(library) {
  return changing('leaving-out', library.file, (code, parse) => {
    const refusing = withoutParts(code, parse(code), library)
    return reached(refusing, parse(refusing), library)
  })
}

/**
 * A plugin under which nothing that the named files give can be asked for.
 * @param {RegExp} file
 */
export function refusing(file) {
  return changing('refusing', file, (code, parse) =>
    exportsOf(parse(code))
      .map((name) => `export const ${name} = () => { ${refuses(name)} }`)
      .join('\n'),
  )
}

function changing(name, file, change) {
  let found = false
  return {
    name,
    transform(code, id) {
      if (!file.test(id)) return null
      found = true
      return { code: change(code, (text) => this.parse(text).body), map: null }
    },
    buildEnd(fault) {
      if (!found && !fault) throw new Error(`build: a library has changed: there is no ${file} any more`)
    },
  }
}

const exportsOf = (body) =>
  body
    .filter(({ type }) => type === 'ExportNamedDeclaration')
    .flatMap(({ declaration, specifiers }) =>
      declaration ? declared(declaration).map(({ name }) => name) : specifiers.map(({ exported }) => exported.name),
    )

function withoutParts(code, body, { refused = [], only = {}, instead = {}, about = {}, uncalled = [] }) {
  const missing = new Set([...refused, ...Object.keys(only), ...Object.keys(instead), ...uncalled])
  const edits = []
  const change = (name, node, text) => {
    missing.delete(name)
    edits.push({ start: node.start, end: node.end, text })
  }
  for (const statement of body) {
    for (const { name, value } of declared(statement)) {
      if (refused.includes(name)) change(name, value, refusal(name, value))
      if (Object.hasOwn(instead, name)) change(name, value, instead[name])
      if (Object.hasOwn(only, name)) change(name, value, withOnly(code, name, value, only[name]))
    }
    const { object, key } = assignedTo(statement) ?? givenBy(statement, about) ?? {}
    if (Object.hasOwn(only, object ?? '') && !only[object].includes(key)) change(object, statement, '')
    const called = call(statement)?.callee
    if (called && uncalled.includes(nameIn(called))) change(nameIn(called), statement, '')
  }
  if (missing.size > 0) throw new Error(`build: a library has changed: ${[...missing].join(', ')} not found`)
  return edits
    .sort((a, b) => b.start - a.start)
    .reduce((text, edit) => text.slice(0, edit.start) + edit.text + text.slice(edit.end), code)
}

function refusal(name, value) {
  if (/^Class/.test(value.type)) return `class ${value.id?.name ?? ''} { constructor() { ${refuses(name)} } }`
  return /^Function/.test(value.type) ? `function ${name}() { ${refuses(name)} }` : 'undefined'
}

const refuses = (name) => `throw new Error(${JSON.stringify(`${name} is left out of the page`)})`

function withOnly(code, name, value, keys) {
  const isClass = /^Class/.test(value.type)
  const members = isClass ? value.body.body : value.properties
  const keyOf = ({ key }) => key?.name ?? key?.value
  const missing = keys.filter((key) => !members.some((member) => keyOf(member) === key))
  // an object that starts empty is given its members later
  if (members.length > 0 && missing.length > 0)
    throw new Error(`build: a library has changed: ${name} lacks ${missing.join(', ')}`)
  const kept = members.filter((member) => keys.includes(keyOf(member)))
  const inside = kept.map((member) => code.slice(member.start, member.end)).join(isClass ? '\n' : ',\n')
  return isClass ? `${code.slice(value.start, value.body.start)}{ ${inside} }` : `{ ${inside} }`
}

/** The statements that the wanted exports need, from one to the next. */
function reached(code, body, { wanted, about = {} }) {
  const kept = new Set()
  const statementsOf = new Map()
  const next = []
  const aliases = new Map(body.flatMap(declared).map(({ name, value }) => [name, value && nameIn(value)]))
  const meant = (name) => (aliases.get(name) ? meant(aliases.get(name)) : name)
  for (const statement of body) {
    const names = namesGiven(statement, about, meant)
    for (const name of names) statementsOf.set(name, [...(statementsOf.get(name) ?? []), statement])
    if (names.length === 0 && statement.type !== 'ExportNamedDeclaration') next.push(statement)
  }
  const exported = body.flatMap(({ type, specifiers }) => (type === 'ExportNamedDeclaration' ? specifiers : []))
  const used = exported.filter((one) => wanted.includes(one.exported.name))
  if (used.length < wanted.length) throw new Error(`build: a library has changed: it lacks one of ${wanted.join(', ')}`)
  const need = (name) => next.push(...(statementsOf.get(name) ?? []))
  for (const one of used) need(one.local.name)
  const names = new Set()
  while (next.length > 0) {
    const statement = next.pop()
    if (kept.has(statement)) continue
    kept.add(statement)
    if (statement.type === 'ImportDeclaration') continue
    for (const name of namesUsed(statement)) {
      names.add(name)
      need(name)
    }
  }
  const text = ({ start, end }) => code.slice(start, end)
  const lines = body.filter((one) => kept.has(one)).map((one) => importOf(one, names) ?? text(one))
  return `${lines.join('\n')}\nexport { ${used.map(text).join(', ')} }\n`

  /** An import of several names with those alone that are used. */
  function importOf({ type, specifiers, source }) {
    if (type !== 'ImportDeclaration' || specifiers.some((one) => one.type !== 'ImportSpecifier')) return null
    const some = specifiers.filter(({ local }) => names.has(local.name))
    return `import { ${some.map(text).join(', ')} } from ${source.raw}`
  }
}

/** What a statement declares, imports, or does something to. */
function namesGiven(statement, about, meant) {
  if (statement.type === 'ImportDeclaration') return statement.specifiers.map(({ local }) => local.name)
  if (assignedTo(statement)) return [meant(assignedTo(statement).object)]
  if (/^For/.test(statement.type)) return [...assignedIn(statement)].map(meant)
  const called = call(statement)
  if (called && Object.hasOwn(about, nameIn(called.callee)))
    return [nameIn(called.arguments[about[nameIn(called.callee)]])]
  return declared(statement).flatMap(({ names }) => names)
}

function declared(statement) {
  if (/^(Class|Function)Declaration$/.test(statement.type))
    return [{ name: statement.id.name, names: [statement.id.name], value: statement }]
  if (statement.type !== 'VariableDeclaration') return []
  return statement.declarations.map(({ id, init }) => ({ name: id.name, names: [...namesUsed(id)], value: init }))
}

/** `object.key = …` */
function assignedTo(statement) {
  const { type, left } = statement.expression ?? {}
  if (type !== 'AssignmentExpression') return null
  return { object: nameIn(left), key: left.property?.name ?? left.property?.value }
}

/** The objects that are given members anywhere in it. */
function assignedIn(node, found = new Set()) {
  if (node.type === 'AssignmentExpression' && node.left.type === 'MemberExpression') found.add(nameIn(node.left))
  for (const inside of nodesIn(node)) assignedIn(inside, found)
  return found
}

/** `define(object, 'key', …)` */
function givenBy(statement, about) {
  const { callee, arguments: given } = call(statement) ?? {}
  const place = callee && about[nameIn(callee)]
  return place === undefined ? null : { object: nameIn(given[place]), key: given[place + 1]?.value }
}

const call = (statement) => (statement.expression?.type === 'CallExpression' ? statement.expression : null)

/** The name that `name`, `name.member` and `(0, name)` begin with or stand for. */
function nameIn(node) {
  if (node?.type === 'MemberExpression') return nameIn(node.object)
  if (node?.type === 'SequenceExpression') return nameIn(node.expressions.at(-1))
  return node?.type === 'ParenthesizedExpression' ? nameIn(node.expression) : node?.name
}

/** Every name that occurs in it, some of which may be meant for something else inside. */
function namesUsed(node, found = new Set()) {
  if (node.type === 'Identifier') found.add(node.name)
  // the key of a member is a word, not a name
  const key = node.computed || node.shorthand ? null : (node.key ?? (node.type === 'MemberExpression' && node.property))
  for (const inside of nodesIn(node)) if (inside !== key) namesUsed(inside, found)
  return found
}

function nodesIn(node) {
  return Object.values(node)
    .flat()
    .filter((one) => typeof one?.type === 'string')
}
