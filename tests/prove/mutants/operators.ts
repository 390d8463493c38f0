/** Every small wrong change of a source text that the tests should notice. */
import type { Node } from 'oxc-parser'
import { parseSource } from '#tests/support/source-tree.ts'

export interface Mutant {
  /** From the repository's root. */
  readonly file: string
  readonly line: number
  /** Where in the text it begins. */
  readonly start: number
  readonly operator: string
  /** The lines that change, on one line each, before and after. */
  readonly before: string
  readonly after: string
  /** The whole text with the change in it. */
  readonly text: string
}

interface Edit {
  readonly start: number
  readonly end: number
  readonly put: string
  readonly operator: string
}

const COMPARISONS: Readonly<Record<string, readonly string[]>> = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
}

const SUMS: Readonly<Record<string, string>> = { '+': '-', '-': '+', '*': '/', '/': '*' }

const ASSIGNMENTS: Readonly<Record<string, string>> = { '+=': '-=', '-=': '+=' }

/** Calls that ask something of each one: answered alike for all. */
const PREDICATES: Readonly<Record<string, readonly string[]>> = {
  filter: ['true', 'false'],
  some: ['true', 'false'],
  every: ['true', 'false'],
  find: ['true'],
  findLast: ['true'],
  findIndex: ['true'],
}

const CALLS: Readonly<Record<string, string>> = {
  some: 'every',
  every: 'some',
  min: 'max',
  max: 'min',
  find: 'findLast',
  findLast: 'find',
}

const SORTS: readonly string[] = ['sort', 'toSorted', 'reverse', 'toReversed']

const isText = (node: Node): boolean =>
  node.type === 'TemplateLiteral' || (node.type === 'Literal' && typeof node.value === 'string')

const isFunction = (node: Node): boolean =>
  node.type === 'ArrowFunctionExpression' || node.type === 'FunctionExpression'

const isPlain = (node: Node): boolean =>
  isFunction(node) ||
  ['Literal', 'ObjectExpression', 'ArrayExpression', 'SpreadElement'].includes(node.type)

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string'

/** Nodes that hold what runs, beside many that only hold types. */
const RUNS = ['TSAsExpression', 'TSSatisfiesExpression', 'TSNonNullExpression']

const childrenThatRun = (node: Node): readonly Node[] => {
  if (RUNS.includes(node.type) && 'expression' in node && isNode(node.expression))
    return [node.expression]
  if (node.type.startsWith('TS') || node.type === 'ImportDeclaration') return []
  if (node.type === 'ExportNamedDeclaration') return node.declaration ? [node.declaration] : []
  if (node.type === 'Property' && !node.computed) return [node.value]
  if (node.type === 'MemberExpression' && !node.computed) return [node.object]
  return Object.values(node)
    .flatMap((value: unknown) => value)
    .filter(isNode)
}

/** An error's sentence tells a developer; nothing hangs on it. */
const isError = (node: Node): boolean =>
  node.type === 'NewExpression' &&
  node.callee.type === 'Identifier' &&
  node.callee.name.endsWith('Error')

/** Calls `visit` for every node that runs. */
export const below = (node: Node, visit: (node: Node) => void): void => {
  if (isError(node)) return
  visit(node)
  for (const child of childrenThatRun(node)) below(child, visit)
}

/** Strings that a file's code holds, each once, in order. */
const codesOf = (program: Node): readonly string[] => {
  const found = new Set<string>()
  below(program, (node) => {
    if (node.type === 'Literal' && typeof node.value === 'string') found.add(node.value)
  })
  return [...found]
}

export const quoted = (text: string): string =>
  `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'").replaceAll('\n', '\\n')}'`

/** Takes one of a list away, with the comma before or after it. */
const dropped = (list: readonly (Node | null)[], at: number, operator: string): readonly Edit[] => {
  const [one, next, last] = [list[at], list[at + 1], list[at - 1]]
  if (!one) return []
  if (next) return [{ start: one.start, end: next.start, put: '', operator }]
  return [{ start: last ? last.end : one.start, end: one.end, put: '', operator }]
}

const editsAt = (node: Node, text: string, codes: readonly string[]): readonly Edit[] => {
  const of = (one: Node): string => text.slice(one.start, one.end)
  const instead = (one: Node, put: string, operator: string): Edit => ({
    start: one.start,
    end: one.end,
    put,
    operator,
  })
  const negated = (test: Node): readonly Edit[] =>
    test.type === 'UnaryExpression' ||
    (test.type === 'BinaryExpression' && COMPARISONS[test.operator])
      ? []
      : [instead(test, `!(${of(test)})`, 'condition negated')]
  const between = (left: Node, right: Node, put: string, operator: string): Edit => ({
    start: left.end,
    end: right.start,
    put: ` ${put} `,
    operator,
  })

  switch (node.type) {
    case 'BinaryExpression': {
      const { left, right, operator } = node
      if (left.type === 'PrivateIdentifier') return []
      const sum = isText(left) || isText(right) ? undefined : SUMS[operator]
      return [
        ...(COMPARISONS[operator] ?? []).map((one) => between(left, right, one, 'comparison')),
        ...(sum === undefined ? [] : [between(left, right, sum, 'sum')]),
      ]
    }
    case 'LogicalExpression': {
      const { left, right, operator } = node
      const other = operator === '&&' ? '||' : '&&'
      return [
        ...(operator === '??' ? [] : [between(left, right, other, 'and / or')]),
        instead(node, of(left), 'only the left'),
        instead(node, of(right), 'only the right'),
      ]
    }
    case 'UnaryExpression':
      return node.operator === '!' ? [instead(node, of(node.argument), 'not dropped')] : []
    case 'IfStatement':
      return [...negated(node.test), instead(node.test, 'false', 'case dropped')]
    case 'WhileStatement':
      return negated(node.test)
    case 'ConditionalExpression':
      return [
        instead(node, `(${of(node.consequent)})`, 'always the first'),
        instead(node, `(${of(node.alternate)})`, 'always the second'),
      ]
    case 'SwitchCase':
      return node.test ? [instead(node, '', 'case dropped')] : []
    case 'Literal': {
      if (typeof node.value === 'boolean')
        return [instead(node, String(!node.value), 'true / false')]
      if (typeof node.value === 'number')
        return [instead(node, String(node.value + 1), 'number and one')]
      if (typeof node.value !== 'string') return []
      const next = codes[(codes.indexOf(node.value) + 1) % codes.length]
      return [instead(node, quoted(next === node.value ? '' : (next ?? '')), 'code swapped')]
    }
    case 'ArrayExpression':
      return node.elements.flatMap((_, at) => dropped(node.elements, at, 'entry dropped'))
    case 'ObjectExpression':
      return node.properties.flatMap((_, at) => dropped(node.properties, at, 'field dropped'))
    case 'AssignmentExpression': {
      const other = ASSIGNMENTS[node.operator]
      return other === undefined ? [] : [between(node.left, node.right, other, 'sum')]
    }
    case 'ExpressionStatement':
      return node.expression.type === 'Literal' ? [] : [instead(node, '{}', 'statement dropped')]
    case 'CallExpression': {
      const args = node.arguments
      const unsaid = args
        .filter((one) => args.length > 1 && !isPlain(one))
        .map((one) => instead(one, 'undefined', 'argument dropped'))
      if (node.callee.type !== 'MemberExpression' || node.callee.computed) return unsaid
      const { object, property } = node.callee
      if (property.type !== 'Identifier') return unsaid
      const [first] = args
      const { name } = property
      const other = CALLS[name]
      return [
        ...unsaid,
        ...(first === undefined ? [] : (PREDICATES[name] ?? [])).flatMap((answer) =>
          first ? [instead(first, `() => ${answer}`, `${name} alike for all`)] : [],
        ),
        ...(SORTS.includes(name) ? [instead(node, of(object), 'order dropped')] : []),
        ...(other === undefined ? [] : [instead(property, other, 'call swapped')]),
      ]
    }
    default:
      return []
  }
}

const lineAt = (text: string, place: number): number => text.slice(0, place).split('\n').length

const oneLine = (text: string): string => text.split(/\s+/).join(' ').trim()

/** The lines from the one where `start` is to the one where `end` is. */
const linesAround = (text: string, start: number, end: number): string => {
  const from = text.lastIndexOf('\n', start - 1) + 1
  const to = text.indexOf('\n', Math.max(end, start))
  return oneLine(text.slice(from, to === -1 ? text.length : to))
}

/** All mutants of a file, each text once, in the order of their places. */
export const mutantsOf = (file: string, text: string): readonly Mutant[] => {
  const { program } = parseSource(file, text)
  const codes = codesOf(program)
  const found = new Map<string, Mutant>()
  below(program, (node) => {
    for (const { start, end, put, operator } of editsAt(node, text, codes)) {
      const changed = text.slice(0, start) + put + text.slice(end)
      if (changed === text || found.has(changed)) continue
      found.set(changed, {
        file,
        line: lineAt(text, start),
        start,
        operator,
        before: linesAround(text, start, end),
        after: linesAround(changed, start, start + put.length),
        text: changed,
      })
    }
  })
  return [...found.values()].sort((one, other) => one.start - other.start)
}
