import type { Guard, LogEntry, StreamAppend } from '#server/event-log/port.ts'

/** What an append writes, as JSON text. */
export interface CheckedAppend {
  readonly streams: readonly CheckedStream[]
  /** A key each. */
  readonly guards: readonly (Guard & { readonly raisedTo: number })[]
}

export interface CheckedStream {
  readonly service: string
  readonly after: number
  readonly entries: readonly { readonly position: number; readonly body: string }[]
  readonly answers: readonly {
    readonly command: string
    readonly fingerprint: string
    readonly body: string
  }[]
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

const checkedStream = ({
  service,
  after,
  entries,
  answers,
}: StreamAppend<LogEntry, unknown>): CheckedStream => {
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
    service,
    after,
    entries: entries.map((entry) => ({ position: entry.position, body: encode(entry) })),
    answers: answers.map(({ command, fingerprint, answer }) => ({
      command,
      fingerprint,
      body: encode(answer),
    })),
  }
}

/**
 * Encodes what an append hands over, before anything is written.
 * @throws {RangeError} no stream or one twice, a position other than `after + 1` onwards, a command id
 * twice, or a guard that is no version or doesn't follow on its own key.
 * @throws {TypeError} what is not JSON.
 */
export const checkedAppend = (
  streams: readonly StreamAppend<LogEntry, unknown>[],
  guards: readonly Guard[] = [],
): CheckedAppend => {
  const names = new Set(streams.map(({ service }) => service))
  if (names.size === 0 || names.size !== streams.length)
    throw new RangeError('An append to no stream, or to one twice')
  return { streams: streams.map(checkedStream), guards: checkedGuards(guards) }
}

/** Whether anything is written at all. */
export const isOfSomething = ({ streams, guards }: CheckedAppend): boolean =>
  guards.length > 0 ||
  streams.some(({ entries, answers }) => entries.length > 0 || answers.length > 0)
