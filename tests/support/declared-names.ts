/** Names that the sources of the protocol declare. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseSource, root, walk } from '#tests/support/source-tree.ts'

const read = (path: string): string => readFileSync(join(root, path), 'utf8')

/** Values of a field of a file's types, such as every `code` of a union. */
export const literalsOf = (path: string, within: string, field: string): readonly string[] => {
  const found: string[] = []
  walk(parseSource(path, read(path)).program, (node, above) => {
    if (node.type !== 'TSPropertySignature' || node.key.type !== 'Identifier') return
    if (node.key.name !== field) return
    const type = node.typeAnnotation?.typeAnnotation
    const inside = above.some(
      (one) =>
        (one.type === 'TSTypeAliasDeclaration' || one.type === 'TSInterfaceDeclaration') &&
        (within === '' || one.id.name === within),
    )
    if (inside && type?.type === 'TSLiteralType' && type.literal.type === 'Literal')
      found.push(String(type.literal.value))
  })
  return found
}

export const sorted = (names: readonly string[]): readonly string[] => [...names].sort()

/** Of every event of a service. */
export const eventTypes = (): readonly string[] =>
  [
    'lib/service/events/batch-event.ts',
    'lib/service/events/end-event.ts',
    'lib/service/events/event.ts',
    'lib/service/events/food-event.ts',
    'lib/service/events/handed-over-event.ts',
    'lib/service/events/line-event.ts',
    'lib/service/events/plan-event.ts',
    'lib/service/events/prep-event.ts',
    'lib/service/events/shelf-event.ts',
    'lib/service/events/stock-event.ts',
    'lib/service/events/taken-event.ts',
  ].flatMap((path) => literalsOf(path, '', 'type'))
