/**
 * What the log says of pans and made food, by where events lie in it: no clock is asked, so that one
 * which jumped or stood still moves nothing. Kept beside the state, and not by the code that holds.
 */
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { Taking } from '#lib/service/events/taking.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { buildName, findBuild } from '#lib/service/tickets.ts'
import { type AskedChanges, follow } from '#tests/lib/spine/oracle/asked-changes.ts'
import { mark } from '#tests/lib/spine/oracle/marks.ts'
import { type Probing, probe } from '#tests/lib/spine/oracle/probes.ts'

/** Where something lies in the log, and when it was recorded, epoch milliseconds. */
export interface Where {
  readonly position: number
  readonly at: number
}

export const NOWHERE: Where = { position: 0, at: Number.NEGATIVE_INFINITY }

/** Later in the log and by the clock: what happens in one and the same millisecond comes at once. */
export const isAfter = (one: Where, other: Where): boolean =>
  one.position > other.position && one.at > other.at

/** Where a build was started, and which components came out of back-up pans then. */
export interface Begun {
  readonly position: number
  readonly behind: ReadonlySet<string>
}

/** A mark that is gone: since where it may have been there, and where it went. */
export interface Gone {
  readonly pan: string
  readonly by: string
  readonly from: number
  readonly until: number
}

/** Food that a guest was given. */
export interface Given {
  readonly build: string
  readonly choice: BuildChoice
  readonly took: readonly Taking[]
  /** Where it was finished. */
  readonly made: Where
  /** Where it was begun; unknown where nobody noted it. */
  readonly begun?: Begun
  /** Where it left the shelf. */
  readonly left: Where
}

export interface Ledger {
  /** By pan of the line or behind it: where it was last loaded or changed. */
  readonly loaded: Map<string, Where>
  /** By pan: where what stands there was last read in its limits, or loaded. */
  readonly good: Map<string, Where>
  /** Back-up pans that stand ready as they were filled: no scoop, no label, nothing since. */
  readonly standing: Set<string>
  /** By pan: where in the log, and when as told, it was last read or loaded with a reading. */
  readonly read: Map<string, Where>
  /** By pan: components of which a scoop brought something into it. */
  readonly marks: Map<string, ReadonlySet<string>>
  /** By "pan/component": where in the log a probe brought it, as it was read. */
  readonly probed: Map<string, number>
  /** Every food that a probe was in, oldest first. */
  readonly probings: Probing[]
  /** Marks, and lent scoops as "rice/beans", that were there before. */
  readonly gone: Gone[]
  /** By build: where it was last started. */
  readonly begun: Map<string, Begun>
  /** Where the hot shelf was last read in its limits; null: it is at room temperature. */
  shelf: Where | null
  /** Where its reading was missed, and was last good before; null: it wasn't, or was read since. */
  shelfMissed: { readonly at: Where; readonly good: Where } | null
  /** It was read out of its limits, and nobody has decided. */
  shelfOut: boolean
  /** Where the clock last jumped. */
  jumped: number
  /** By build: where it was last finished. */
  readonly made: Map<string, Where>
  /** By "rice/beans": since where in the log that scoop is lent. */
  readonly lent: Map<string, number>
  /** All that was ever handed over, also what was made again since. */
  readonly given: Given[]
  readonly changes: AskedChanges
}

export const createLedger = (): Ledger => ({
  loaded: new Map(),
  good: new Map(),
  standing: new Set(),
  read: new Map(),
  marks: new Map(),
  probed: new Map(),
  probings: [],
  gone: [],
  begun: new Map(),
  shelf: null,
  shelfMissed: null,
  shelfOut: false,
  jumped: 0,
  made: new Map(),
  lent: new Map(),
  given: [],
  changes: new Map(),
})

interface Fills extends Where {
  readonly reading?: { readonly at: number } | null
}

const filled = (ledger: Ledger, pan: string, { position, at, reading }: Fills): void => {
  ledger.loaded.set(pan, { position, at })
  ledger.good.set(pan, { position, at })
  if (reading) ledger.read.set(pan, { position, at: reading.at })
  else ledger.read.delete(pan)
}

const ofBackup = (
  ledger: Ledger,
  event: Extract<Recorded, { readonly type: 'backupSet' }>,
): void => {
  if (event.backup === undefined) return
  if (!event.ready) {
    ledger.standing.delete(event.backup)
    return
  }
  ledger.standing.add(event.backup)
  filled(ledger, event.backup, event)
}

/** Also where a label came to food that is in a back-up pan: it isn't said to stand ready any more. */
const write = (ledger: Ledger, event: Recorded, after: ServiceState): void => {
  const { position, at } = event
  const here: Where = { position, at }
  switch (event.type) {
    case 'panLoaded':
    case 'panChanged':
      filled(ledger, event.pan, event)
      if (event.from != null) ledger.standing.delete(event.from)
      break
    case 'backupSet':
      ofBackup(ledger, event)
      break
    case 'labelChanged':
      for (const pan of event.pans) ledger.standing.delete(pan)
      break
    case 'temperatureRead': {
      const stock = event.what === 'pan' ? after.pans[event.id] : after.backupPans[event.id]
      const isGood = event.inLimits && stock?.offSale === null
      if (event.what === 'batch') break
      ledger.read.set(event.id, { position, at: event.reading.at })
      if (isGood) ledger.good.set(event.id, here)
      break
    }
    case 'offSaleResolved':
      if (event.what === 'batch' || event.way === 'discard') break
      ledger.good.set(event.id, here)
      if (event.reading) ledger.read.set(event.id, { position, at: event.reading.at })
      break
    case 'timeClockStarted':
      if (event.what === 'batch') break
      ledger.good.set(event.id, here)
      ledger.read.set(event.id, { position, at: event.reading.at })
      break
    case 'shelfRead':
      // Better ones change nothing while it is out.
      ledger.shelf = event.inLimits && !ledger.shelfOut ? here : null
      ledger.shelfMissed = null
      ledger.shelfOut ||= !event.inLimits
      break
    case 'shelfReadingMissed':
      ledger.shelfMissed = ledger.shelf && { at: here, good: ledger.shelf }
      ledger.shelf = null
      break
    case 'shelfResolved':
      ledger.shelf = null
      ledger.shelfMissed = null
      ledger.shelfOut = false
      break
    case 'clockJumped':
      ledger.jumped = position
      break
    case 'buildFinished':
      ledger.made.set(buildName(event.ticket, event.letter), here)
      break
    case 'buildHandedOver': {
      const build = buildName(event.ticket, event.letter)
      const found = findBuild(after, event.ticket, event.letter)
      const [made, begun] = [ledger.made.get(build), ledger.begun.get(build)]
      if (found && made !== undefined)
        ledger.given.push({
          build,
          choice: found.choice,
          took: found.took,
          made,
          left: here,
          ...(begun ? { begun } : {}),
        })
      break
    }
    case 'scoopMissed':
      for (const by of event.lentBy ?? []) {
        const key = `${event.component}/${by}`
        if (!ledger.lent.has(key)) ledger.lent.set(key, position)
      }
      break
    default:
  }
}

export const copiedLedger = (ledger: Ledger): Ledger => ({
  loaded: new Map(ledger.loaded),
  good: new Map(ledger.good),
  standing: new Set(ledger.standing),
  read: new Map(ledger.read),
  marks: new Map(ledger.marks),
  probed: new Map(ledger.probed),
  probings: [...ledger.probings],
  gone: [...ledger.gone],
  begun: new Map(ledger.begun),
  shelf: ledger.shelf,
  shelfMissed: ledger.shelfMissed,
  shelfOut: ledger.shelfOut,
  jumped: ledger.jumped,
  made: new Map(ledger.made),
  lent: new Map(ledger.lent),
  given: [...ledger.given],
  changes: new Map(ledger.changes),
})

/** What is in no pan any more, or in that of a later load: food of before has met it. */
const noteGone = (ledger: Ledger, earlier: Ledger, until: number): void => {
  for (const [pan, marks] of earlier.marks) {
    const from = earlier.loaded.get(pan)?.position ?? 0
    const isSame = (ledger.loaded.get(pan)?.position ?? 0) === from
    for (const by of marks)
      if (!isSame || !ledger.marks.get(pan)?.has(by)) {
        const key = `${pan}/${by}`
        ledger.gone.push({ pan, by, from: earlier.probed.get(key) ?? from, until })
        if (ledger.probed.get(key) === earlier.probed.get(key)) ledger.probed.delete(key)
      }
  }
}

/** Writes down what happened, once all of it has: `after` is the state that it led to. */
export const writeDown = (
  ledger: Ledger,
  events: readonly Recorded[],
  after: ServiceState,
): void => {
  for (const event of events) {
    const earlier = copiedLedger(ledger)
    write(ledger, event, after)
    mark(ledger.marks, event, after)
    probe(ledger, earlier, event, after)
    noteGone(ledger, earlier, event.position)
    follow(ledger.changes, event)
  }
  for (const [key, from] of ledger.lent) {
    if (after.lent[key]) continue
    ledger.lent.delete(key)
    ledger.gone.push({ pan: key, by: '', from, until: after.position })
  }
}
