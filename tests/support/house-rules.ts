import type { Node } from 'oxc-parser'
import { type Source, walk } from '#tests/support/source-tree.ts'

/** Pure packages that lib may use. */
const libPackages = [
  ...['zod', 'temporal-polyfill', '@noble/hashes', 'safe-stable-stringify', 'papaparse'],
]

/** Folders whose files each folder may import; others are free. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  lib: ['lib'],
  fixtures: ['fixtures', 'lib'],
  server: ['server', 'lib', 'fixtures'],
  components: ['components', 'lib'],
  app: ['app', 'components', 'lib'],
}

const folderOf = (path: string): string => path.split('/')[0] ?? ''

/** What binds a language: words of a screen, and words made of others. */
const bindsWords =
  /^lib\/(rooms\/[a-z]+\/|editor\/|carry\/|paper\/)?words\/|^components\/([a-z-]+\/)+([a-z-]+-)?words\.tsx?$/

/** Imports of one language's words, types among them, where no language is chosen. */
export const wordsImported = ({ path, imports }: Source): readonly string[] =>
  bindsWords.test(path)
    ? []
    : imports
        .filter(({ file }) =>
          /^lib\/(rooms\/[a-z]+\/|editor\/|carry\/|paper\/)?words\/.*-[a-z]{2}\.m?ts$/.test(
            file ?? '',
          ),
        )
        .map(({ specifier }) => `${path} imports ${specifier}`)

const packageOf = (specifier: string): string =>
  specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/')

/** Imports against the direction of the house, from a parent folder, or of what isn't for it. */
export const wrongImports = ({ path, imports }: Source): readonly string[] => {
  const folder = folderOf(path)
  const allowed = mayImport[folder]
  return imports
    .filter(({ specifier, file }) => {
      if (specifier.startsWith('..')) return true
      if (file !== null) return allowed !== undefined && !allowed.includes(folderOf(file))
      if (folder === 'lib') return !libPackages.includes(packageOf(specifier))
      const ofServer = /^(node:|better-sqlite3$|pino$|socket\.io$)/.test(specifier)
      return (folder === 'components' || folder === 'app') && ofServer
    })
    .map(({ specifier }) => `${path} imports ${specifier}`)
}

const impureNames = new Set([
  ...['process', 'crypto', 'performance', 'fetch', 'require', 'setTimeout', 'setInterval'],
  ...['navigator', 'localStorage', 'indexedDB', 'globalThis', 'console'],
])

const impureMembers = new Set(['Date.now', 'Math.random'])

const memberName = (node: Node): string =>
  node.type === 'MemberExpression' &&
  node.object.type === 'Identifier' &&
  node.property.type === 'Identifier'
    ? `${node.object.name}.${node.property.name}`
    : ''

/** A name that only says which property is meant. */
const namesProperty = (node: Node, parent: Node | undefined): boolean => {
  if (parent === undefined) return false
  if (parent.type === 'MemberExpression') return parent.property === node && !parent.computed
  const keyed = 'key' in parent && parent.key === node && 'computed' in parent && !parent.computed
  return keyed && !('shorthand' in parent && parent.shorthand === true)
}

/** What makes a file of lib depend on when, where or how often it runs. */
export const impurities = ({ path, program }: Source): readonly string[] => {
  const found: string[] = []
  walk(program, (node, above) => {
    const member = memberName(node)
    if (impureMembers.has(member)) found.push(`${path} uses ${member}`)
    if (
      node.type === 'NewExpression' &&
      node.callee.type === 'Identifier' &&
      node.callee.name === 'Date' &&
      node.arguments.length === 0
    ) {
      found.push(`${path} uses new Date()`)
    }
    if (
      node.type === 'Identifier' &&
      impureNames.has(node.name) &&
      !namesProperty(node, above[0])
    ) {
      found.push(`${path} uses ${node.name}`)
    }
  })
  return found
}

const statements = ({ program }: Source): readonly Node[] =>
  program.type === 'Program' ? program.body : []

/** A file that holds nothing of its own and hands on what others export. */
export const barrels = (source: Source): boolean => {
  const all = statements(source).filter(({ type }) => type !== 'ImportDeclaration')
  return (
    all.length > 0 &&
    all.every(
      (node) =>
        node.type === 'ExportAllDeclaration' ||
        (node.type === 'ExportNamedDeclaration' && node.declaration === null),
    )
  )
}

export const defaultExports = (source: Source): boolean =>
  statements(source).some(({ type }) => type === 'ExportDefaultDeclaration')

export const classesThatAreNoErrors = ({ path, program }: Source): readonly string[] => {
  const found: string[] = []
  walk(program, (node) => {
    if (node.type !== 'ClassDeclaration' && node.type !== 'ClassExpression') return
    const above = node.superClass
    if (above?.type === 'Identifier' && above.name.endsWith('Error')) return
    found.push(`${path} has a class that is no error`)
  })
  return found
}

const emptyNames = ['utils', 'util', 'helpers', 'helper', 'misc', 'common', 'types', 'index']

/** A file whose name isn't kebab-case, or says nothing of what it holds. */
export const misnamed = (path: string): boolean => {
  const name = path.split('/').at(-1) ?? ''
  if (/^[A-Z]+\.md$/.test(name) || name === '.gitkeep') return false
  const [stem = '', ...ends] = name.split('.')
  const folders = path.split('/').slice(0, -1)
  const kebab = /^[a-z0-9]+(-[a-z0-9]+)*$/
  return (
    !kebab.test(stem) ||
    ends.some((end) => !kebab.test(end)) ||
    [stem, ...folders].some((part) => emptyNames.includes(part))
  )
}
