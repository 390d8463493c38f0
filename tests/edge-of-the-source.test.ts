/** What the code itself never does, whatever comes in. */
import { describe, expect, test } from 'vitest'
import { parseSource, readSources, type Source, walk } from '#tests/support/source-tree.ts'

const sources = readSources(['app', 'components', 'lib', 'server'])
const below = (...folders: readonly string[]): readonly Source[] =>
  sources.filter(({ path }) => folders.some((folder) => path.startsWith(`${folder}/`)))

/** Markup or text that is run: what makes one injected string a program. */
const MARKUP = [
  ...['dangerouslySetInnerHTML', 'innerHTML', 'outerHTML', 'insertAdjacentHTML', 'srcdoc'],
  ...['eval', 'Function', 'postMessage', 'createContextualFragment'],
]

const markup = ({ path, program }: Source): readonly string[] => {
  const found: string[] = []
  walk(program, (node, [above]) => {
    const name =
      node.type === 'Identifier' || node.type === 'JSXIdentifier' ? String(node.name) : ''
    const isCalled = above?.type === 'CallExpression' || above?.type === 'NewExpression'
    const isProperty = above?.type === 'MemberExpression' || above?.type === 'JSXAttribute'
    if (MARKUP.includes(name) && (isCalled || isProperty)) found.push(`${path}: ${name}`)
  })
  return found
}

/** A statement with a hole that isn't a constant of the file, named in capitals. */
const putTogether = ({ path, program }: Source): readonly string[] => {
  const found: string[] = []
  walk(program, (node) => {
    if (node.type !== 'CallExpression' || node.callee.type !== 'MemberExpression') return
    const { property } = node.callee
    const name = property.type === 'Identifier' ? property.name : ''
    if (!['prepare', 'exec'].includes(name)) return
    const [text] = node.arguments
    if (text?.type === 'BinaryExpression') found.push(`${path}: ${name}`)
    if (text?.type !== 'TemplateLiteral') return
    const isConstant = text.expressions.every(
      (one) => one.type === 'Identifier' && /^[A-Z_]+$/.test(one.name),
    )
    if (!isConstant) found.push(`${path}: ${name}`)
  })
  return found
}

const calls = (names: readonly string[], { path, program }: Source): readonly string[] => {
  const found: string[] = []
  walk(program, (node) => {
    if (node.type !== 'CallExpression' || node.callee.type !== 'Identifier') return
    if (names.includes(node.callee.name)) found.push(`${path}: ${node.callee.name}`)
  })
  return found
}

/** Programs of the shell and of the start ask the server itself, and npm. */
const serving = below('server').filter(
  ({ path }) => !path.startsWith('server/shell/') && path.endsWith('.ts'),
)

describe('the source', () => {
  test('no file of the screens writes markup or runs text', () => {
    expect(below('app', 'components', 'lib').flatMap(markup)).toEqual([])
  })

  test('no statement for a database is put together from values', () => {
    expect(below('server').flatMap(putTogether)).toEqual([])
  })

  test('the server asks no other address for anything', () => {
    const asking = ['fetch', 'request', 'get', 'connect', 'createConnection']
    expect(serving.flatMap((source) => calls(asking, source))).toEqual([])
  })

  test('the server starts no other program, but asks git once what it is', () => {
    const starting = serving.filter(({ imports }) =>
      imports.some(({ specifier }) => specifier === 'node:child_process'),
    )
    expect(starting.map(({ path }) => path)).toEqual(['server/about.ts'])
  })
})

describe('these checks themselves', () => {
  const at = (text: string): Source => parseSource('components/a.tsx', text)

  test('find markup, text that is run, and a statement with a hole', () => {
    for (const text of [
      'const a = <p dangerouslySetInnerHTML={{ __html: b }} />',
      'a.innerHTML = b',
      'eval(a)',
      'new Function(a)',
      "window.postMessage(a, '*')",
    ])
      expect(markup(at(text)), text).toHaveLength(1)
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the text of a program
    expect(putTogether(at('db.prepare(`SELECT ${a}`)'))).toHaveLength(1)
    expect(putTogether(at("db.exec('SELECT ' + a)"))).toHaveLength(1)
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the text of a program
    expect(putTogether(at('db.prepare(`SELECT ${FIELDS} FROM a WHERE b = ?`)'))).toEqual([])
    expect(calls(['fetch'], at('fetch(a)'))).toHaveLength(1)
  })
})
