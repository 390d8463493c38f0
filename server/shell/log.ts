/** Prints the log of a service from its data folder, with no server running. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { isCrew } from '#lib/access/seen/classes.ts'
import { projectState } from '#lib/access/seen/project.ts'
import { isLarderStream } from '#lib/larder/stream.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { ROLES } from '#lib/service/roles.ts'
import { NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { log as words } from '#lib/words/house/shell-en.ts'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'
import { StoreProblem, storeProblemSentence } from '#server/store/store-problem.ts'

const { values } = parseArgs({
  options: {
    data: { type: 'string' },
    service: { type: 'string' },
    fold: { type: 'boolean', default: false },
    upto: { type: 'string' },
    as: { type: 'string' },
  },
})

const giveUp = (sentence: string, code: number): never => {
  console.error(sentence)
  process.exit(code)
}

const open = (path: string) => {
  try {
    return openSqliteLog<Recorded, StoredAnswer>({ path })
  } catch (problem) {
    if (problem instanceof StoreProblem) return giveUp(storeProblemSentence(problem), 1)
    throw problem
  }
}

const print = (value: unknown): void => {
  process.stdout.write(`${JSON.stringify(value)}\n`)
}

/** Position, time, command and type first; then what the event says. */
const lineOf = ({ position, at, command, type, ...rest }: Recorded): object => ({
  position,
  at,
  command,
  type,
  ...rest,
})

/** The last position that is read; all there is when nothing is said. */
const lastPosition = (): number => {
  if (values.upto === undefined) return Number.POSITIVE_INFINITY
  const position = Number(values.upto)
  return Number.isSafeInteger(position) && position > 0 ? position : giveUp(words.usage, 2)
}

/** As the server has it, or as it is sent to a role. */
const hashAs = (): ((state: ServiceState) => string) => {
  if (values.as === undefined) return stateHash
  const role = ROLES.filter(isCrew).find((one) => one === values.as)
  return role ? (state) => stateHash(projectState(role, state)) : giveUp(words.usage, 2)
}

const upto = lastPosition()
const hashed = hashAs()
const folder = values.data ?? giveUp(words.usage, 2)
const path = join(folder, 'log.db')
if (!existsSync(path)) giveUp(words.noLog(folder), 1)
const own = open(path)
const demoPath = join(folder, 'demo', 'log.db')
// Before the first service of an own station the demo's is the newest there is.
const isDemo = (await own.services()).every(isLarderStream) && existsSync(demoPath)
if (isDemo) await own.close()
const events = isDemo ? open(demoPath) : own
const service =
  values.service ?? (await events.services()).filter((one) => !isLarderStream(one)).at(-1)
if (service === undefined) {
  if (values.fold) print({ position: 0, hash: hashed(NOT_OPENED) })
} else {
  const entries = (await events.read(service, 0)).filter(({ position }) => position <= upto)
  if (values.fold)
    print({
      position: entries.at(-1)?.position ?? 0,
      hash: hashed(entries.reduce(evolve, NOT_OPENED)),
    })
  else for (const entry of entries) print(lineOf(entry))
}
await events.close()
