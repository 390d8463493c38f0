import type { Node } from 'oxc-parser'
import { type Source, walk } from '#tests/support/source-tree.ts'

const literal = (node: Node | null | undefined): string | null => {
  if (node?.type === 'TSLiteralType') return literal(node.literal)
  return node?.type === 'Literal' && typeof node.value === 'string' ? node.value : null
}

const keyOf = (node: Node): string | null => {
  if (node.type !== 'Property' && node.type !== 'TSPropertySignature') return null
  return node.key.type === 'Identifier' ? node.key.name : literal(node.key)
}

/** The types of the commands that a file declares. */
export const declaredCommands = ({ program }: Source): readonly string[] => {
  const found: string[] = []
  walk(program, (node) => {
    if (node.type !== 'CallExpression' || node.callee.type !== 'Identifier') return
    const [given] = node.arguments
    if (node.callee.name !== 'defineCommand' || given?.type !== 'ObjectExpression') return
    for (const each of given.properties)
      if (keyOf(each) === 'type' && each.type === 'Property') found.push(literal(each.value) ?? '?')
  })
  return found
}

const namesIn = (node: Node): readonly (string | null)[] => {
  switch (node.type) {
    case 'ArrayExpression':
      return node.elements.map((one) => literal(one))
    case 'TSUnionType':
      return node.types.map((one) => literal(one))
    case 'ObjectExpression':
      return node.properties.map(keyOf)
    case 'TSInterfaceBody':
      return node.body.map(keyOf)
    case 'TSTypeLiteral':
      return node.members.map(keyOf)
    case 'SwitchStatement':
      return node.cases.flatMap(({ test }) => (test ? [literal(test)] : []))
    default:
      return []
  }
}

/** Fewer could be anything that shares a word with commands. */
const A_LIST = 4

/** Where a file names one command type after the other, and nothing else. */
export const commandLists = (
  { path, program }: Source,
  types: readonly string[],
): readonly string[] => {
  const found: string[] = []
  walk(program, (node) => {
    const names = namesIn(node)
    if (names.length >= A_LIST && names.every((one) => one !== null && types.includes(one)))
      found.push(`${path} lists ${names.join(', ')}`)
  })
  return found
}
