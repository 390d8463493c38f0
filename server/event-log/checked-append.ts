import type { Guard, LogEntry, LoggedAnswer } from '#server/event-log/port.ts'

/** What an append writes, as JSON text. */
export interface CheckedAppend {
  readonly entries: readonly { readonly position: number; readonly body: string }[]
  readonly answers: readonly {
    readonly command: string
    readonly fingerprint: string
    readonly body: string
  }[]
  /** A key each. */
  readonly guards: readonly (Guard & { readonly raisedTo: number })[]
}

const encode = (value: unknown): string => {
  const body = JSON.stringify(value)
  if (body === undefined) throw new TypeError('The log keeps JSON only')
  return body
}

const checkedGuards = (guards: readonly Guard[]): CheckedAppend['guards'] => {
  const byKey = new Map<string, CheckedAppend['guards'][number]>()
  for (const { key, expected } of guards) {
    if (!Number.isSafeInteger(expected) || expected < 0)
      throw new RangeError(`A guard ${key} at version ${expected}`)
    const before = byKey.get(key)
    if (before && before.raisedTo !== expected)
      throw new RangeError(`A guard ${key} at ${expected} where ${before.raisedTo} belongs`)
    byKey.set(key, { key, expected: before?.expected ?? expected, raisedTo: expected + 1 })
  }
  return [...byKey.values()]
}

/**
 * Encodes what an append hands over, before anything is written.
 * @throws {RangeError} a position other than `after + 1` onwards, a command id twice, or a guard that
 * is no version or doesn't follow on its own key.
 * @throws {TypeError} what is not JSON.
 */
export const checkedAppend = (
  after: number,
  entries: readonly LogEntry[],
  answers: readonly LoggedAnswer<unknown>[],
  guards: readonly Guard[] = [],
): CheckedAppend => {
  if (!Number.isSafeInteger(after) || after < 0) {
    throw new RangeError(`An append after position ${after}`)
  }
  entries.forEach((entry, index) => {
    if (entry.position !== after + 1 + index) {
      throw new RangeError(`Position ${entry.position} where ${after + 1 + index} belongs`)
    }
  })
  if (new Set(answers.map((answer) => answer.command)).size !== answers.length) {
    throw new RangeError('Two answers to one command in an append')
  }
  return {
    entries: entries.map((entry) => ({ position: entry.position, body: encode(entry) })),
    answers: answers.map(({ command, fingerprint, answer }) => ({
      command,
      fingerprint,
      body: encode(answer),
    })),
    guards: checkedGuards(guards),
  }
}
