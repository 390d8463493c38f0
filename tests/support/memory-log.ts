import { createAdvance } from '#server/event-log/advance.ts'
import { checkedAppend } from '#server/event-log/checked-append.ts'
import type { EventLog, LogEntry } from '#server/event-log/port.ts'

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

  return {
    async append(service, after, entries, answers, guards) {
      const checked = checkedAppend(after, entries, answers, guards)
      const stream = streamOf(service)
      const known = checked.answers.some((answer) => stream.answers.has(answer.command))
      if (stream.bodies.length !== after || known) return 'conflict'
      if (checked.guards.some(({ key, expected }) => (versions.get(key) ?? 0) !== expected))
        return 'conflict'
      for (const { key, raisedTo } of checked.guards) versions.set(key, raisedTo)
      const written = checked.entries.length + checked.answers.length + checked.guards.length
      if (written === 0) return 'committed'
      streams.set(service, stream)
      if (after === 0 && checked.entries.length > 0) started.push(service)
      for (const { body } of checked.entries) stream.bodies.push(body)
      for (const { command, ...answer } of checked.answers) stream.answers.set(command, answer)
      commits += 1
      if (checked.entries.length > 0) advance.tell(service, stream.bodies.length)
      return 'committed'
    },
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
        .map((body): Entry => JSON.parse(body))
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
  }
}
