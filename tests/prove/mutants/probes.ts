/** Which functions of a file a test calls. */
import { below, quoted } from '#tests/prove/mutants/operators.ts'
import { parseSource } from '#tests/support/source-tree.ts'

export interface Probed {
  /** Tells `__hit` the file and the number of each function that is called. */
  readonly text: string
  /** Where each function's body begins and ends in the text as it was; 0 is the whole file. */
  readonly bodies: readonly (readonly [number, number])[]
}

export const probed = (file: string, text: string): Probed => {
  const bodies: (readonly [number, number])[] = [[0, text.length]]
  const puts: { readonly at: number; readonly put: string }[] = []
  below(parseSource(file, text).program, (node) => {
    if (
      node.type !== 'ArrowFunctionExpression' &&
      node.type !== 'FunctionExpression' &&
      node.type !== 'FunctionDeclaration'
    )
      return
    const { body } = node
    if (!body) return
    const call = `__hit(${quoted(file)}, ${bodies.length})`
    bodies.push([body.start, body.end])
    if (body.type === 'BlockStatement') puts.push({ at: body.start + 1, put: `${call};` })
    else puts.push({ at: body.start, put: `(${call}, ` }, { at: body.end, put: ')' })
  })
  // From the end, so that the places before stay.
  const changed = puts
    .sort((one, other) => other.at - one.at)
    .reduce((all, { at, put }) => all.slice(0, at) + put + all.slice(at), text)
  return { text: changed, bodies }
}

/** The innermost function around a place. */
export const bodyAround = ({ bodies }: Probed, place: number): number =>
  bodies.reduce((inner, [start, end], at) => {
    const [from, to] = bodies[inner] ?? [0, Number.POSITIVE_INFINITY]
    return start <= place && place < end && end - start < to - from ? at : inner
  }, 0)
