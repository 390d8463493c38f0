import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, posix } from 'node:path'
import { type Node, parseSync } from 'oxc-parser'
import { root as clone } from '#server/clone.mjs'

/** The repository's folder, bundled or not. */
export const root = clone

export interface Import {
  /** As written. */
  readonly specifier: string
  /** A file of this repository, from its root; null for a package or a module of Node. */
  readonly file: string | null
  /** Gone at run time. */
  readonly typeOnly: boolean
}

export interface Source {
  /** From the repository's root, with slashes. */
  readonly path: string
  readonly text: string
  readonly lines: number
  readonly program: Node
  readonly imports: readonly Import[]
}

const codeFile = /\.(ts|tsx|mjs)$/

/** Files below a folder of the repository, with slashes, from its root. */
export const filesBelow = (folder: string): readonly string[] => {
  if (!existsSync(join(root, folder))) return []
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`
    return entry.isDirectory() ? filesBelow(path) : [path]
  })
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string'

/** Calls `visit` for every node below, with the chain of nodes above it, nearest first. */
export const walk = (
  node: Node,
  visit: (node: Node, above: readonly Node[]) => void,
  above: readonly Node[] = [],
): void => {
  visit(node, above)
  const inner = [node, ...above]
  for (const value of Object.values(node)) {
    for (const child of Array.isArray(value) ? value : [value]) {
      if (isNode(child)) walk(child, visit, inner)
    }
  }
}

const fileOf = (specifier: string, from: string): string | null => {
  if (specifier.startsWith('#')) return specifier.slice(1)
  if (specifier.startsWith('.')) return posix.join(dirname(from), specifier)
  return null
}

const readImports = (program: Node, path: string): readonly Import[] => {
  const found: Import[] = []
  const add = (specifier: unknown, typeOnly: boolean): void => {
    if (typeof specifier !== 'string') return
    found.push({ specifier, file: fileOf(specifier, path), typeOnly })
  }
  walk(program, (node) => {
    if (node.type === 'ImportDeclaration') add(node.source.value, node.importKind === 'type')
    if (node.type === 'ExportAllDeclaration') add(node.source.value, node.exportKind === 'type')
    if (node.type === 'ExportNamedDeclaration' && node.source !== null) {
      add(node.source.value, node.exportKind === 'type')
    }
    if (node.type === 'ImportExpression' && node.source.type === 'Literal') {
      add(node.source.value, false)
    }
    if (node.type === 'TSImportType' && 'value' in node.source) add(node.source.value, true)
  })
  return found
}

/** Takes a text apart as if it lay at `path`. */
export const parseSource = (path: string, text: string): Source => {
  const { program, errors } = parseSync(path, text)
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]?.message}`)
  const lines = text.split('\n').length - (text.endsWith('\n') ? 1 : 0)
  return { path, text, lines, program, imports: readImports(program, path) }
}

/** Every code file below the folders. */
export const readSources = (folders: readonly string[]): readonly Source[] =>
  folders
    .flatMap(filesBelow)
    .filter((path) => codeFile.test(path))
    .map((path) => parseSource(path, readFileSync(join(root, path), 'utf8')))

/**
 * What a file reaches at run time: packages, each with one chain of files that leads to it.
 */
export const packagesReached = (
  start: string,
  sources: ReadonlyMap<string, Source>,
): ReadonlyMap<string, readonly string[]> => {
  const reached = new Map<string, readonly string[]>()
  const seen = new Set<string>()
  const visit = (path: string, chain: readonly string[]): void => {
    if (seen.has(path)) return
    seen.add(path)
    for (const { specifier, file, typeOnly } of sources.get(path)?.imports ?? []) {
      if (typeOnly) continue
      if (file !== null) visit(file, [...chain, file])
      else if (!reached.has(specifier)) reached.set(specifier, chain)
    }
  }
  visit(start, [start])
  return reached
}

/** Circles of imports, types among them, each as the files in order. */
export const importCycles = (
  sources: ReadonlyMap<string, Source>,
): readonly (readonly string[])[] => {
  const cycles: (readonly string[])[] = []
  const done = new Set<string>()
  const visit = (path: string, chain: readonly string[]): void => {
    const at = chain.indexOf(path)
    if (at !== -1) {
      cycles.push([...chain.slice(at), path])
      return
    }
    if (done.has(path)) return
    for (const { file } of sources.get(path)?.imports ?? []) {
      if (file !== null) visit(file, [...chain, path])
    }
    done.add(path)
  }
  for (const path of sources.keys()) visit(path, [])
  return cycles
}
