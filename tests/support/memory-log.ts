import { createAdvance } from '#server/event-log/advance.ts'
import { checkedAppend, isOfSomething } from '#server/event-log/checked-append.ts'
import type { Appended, EventLog, Guard, LogEntry, StreamAppend } from '#server/event-log/port.ts'

interface Stream {
  readonly bodies: string[]
  readonly answers: Map<string, { readonly fingerprint: string; readonly body: string }>
}

/** A log that lasts as long as the process: for tests, benches and simulations. */
export const createMemoryLog = <Entry extends LogEntry, Answer>(): EventLog<Entry, Answer> => {
  const streams = new Map<string, Stream>()
  const started: string[] = []
  const versions = new Map<string, number>()
  const advance = createAdvance()
  let commits = 0
  let open = true

  const requireOpen = () => {
    if (!open) throw new Error('The log is closed')
  }

  const streamOf = (service: string): Stream => {
    requireOpen()
    return streams.get(service) ?? { bodies: [], answers: new Map() }
  }

  const appendAll = async (
    appends: readonly StreamAppend<LogEntry, unknown>[],
    given?: readonly Guard[],
  ): Promise<Appended> => {
    const checked = checkedAppend(appends, given)
    for (const { service, after, answers } of checked.streams) {
      const stream = streamOf(service)
      const known = answers.some((answer) => stream.answers.has(answer.command))
      if (stream.bodies.length !== after || known) return 'conflict'
    }
    if (checked.guards.some(({ key, expected }) => (versions.get(key) ?? 0) !== expected))
      return 'conflict'
    if (!isOfSomething(checked)) return 'committed'
    for (const { key, raisedTo } of checked.guards) versions.set(key, raisedTo)
    for (const { service, after, entries, answers } of checked.streams) {
      const stream = streamOf(service)
      streams.set(service, stream)
      if (after === 0 && entries.length > 0) started.push(service)
      for (const { body } of entries) stream.bodies.push(body)
      for (const { command, ...answer } of answers) stream.answers.set(command, answer)
    }
    commits += 1
    for (const { service, entries } of checked.streams)
      if (entries.length > 0) advance.tell(service, streamOf(service).bodies.length)
    return 'committed'
  }

  const log = <Kind extends LogEntry, Told>(): EventLog<Kind, Told> => ({
    append: (service, after, entries, answers, guards) =>
      appendAll([{ service, after, entries, answers }], guards),
    appendAll,
    as: () => log(),
    async guard(key) {
      requireOpen()
      return versions.get(key) ?? 0
    },
    async guards() {
      requireOpen()
      return [...versions.keys()].sort()
    },
    async read(service, after, limit) {
      const end = limit === undefined ? undefined : after + limit
      return streamOf(service)
        .bodies.slice(after, end)
        .map((body): Kind => JSON.parse(body))
    },
    async answerTo(service, command) {
      const found = streamOf(service).answers.get(command)
      if (found === undefined) return null
      return { command, fingerprint: found.fingerprint, answer: JSON.parse(found.body) }
    },
    async head(service) {
      return streamOf(service).bodies.length
    },
    async services() {
      requireOpen()
      return [...started]
    },
    async erase(services) {
      requireOpen()
      for (const service of services) {
        streams.delete(service)
        const at = started.indexOf(service)
        if (at !== -1) started.splice(at, 1)
      }
    },
    onAdvance: advance.onAdvance,
    commits: () => commits,
    async close() {
      open = false
    },
  })
  return log()
}
