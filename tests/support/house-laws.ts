/** What must be true of a house's log, whatever was done: read from its events, over services and larder. */
import type { LarderRecorded } from '#lib/larder/event.ts'
import { evolveLarder } from '#lib/larder/evolve.ts'
import { EMPTY_LARDER, type LarderState } from '#lib/larder/lot.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { HeldFood } from '#lib/service/events/food-event.ts'
import { allStock, componentIn } from '#lib/service/held-stock.ts'
import { isRunning, NOT_OPENED, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { evolve } from '#lib/spine/evolve.ts'
import type { House } from '#tests/support/house-world.ts'
import { held } from '#tests/support/stock-sums.ts'

export interface Lived {
  readonly larder: readonly LarderRecorded[]
  readonly services: Readonly<Record<string, readonly Recorded[]>>
}

export const readHouse = async ({ log, larderLog, stream }: House): Promise<Lived> => {
  const services: Record<string, readonly Recorded[]> = {}
  for (const service of await log.services())
    if (service !== stream) services[service] = await log.read(service, 0)
  return { larder: await larderLog.read(stream, 0), services }
}

type Problems = string[]

const sum = (amounts: readonly number[]): number => amounts.reduce((all, one) => all + one, 0)

/** What each stream says of a lot, in the words of both: `service batch amount`. */
const crossings = ({ larder, services }: Lived): Problems => {
  const problems: Problems = []
  const inServices: string[] = []
  const inLarder: string[] = []
  for (const [service, events] of Object.entries(services))
    for (const event of events) {
      if (event.type === 'foodTaken')
        inServices.push(`taken ${event.lot} ${event.amount} by ${service} as ${event.batch}`)
      if (event.type === 'foodEnded' && event.lot !== undefined && event.amount > 0)
        inServices.push(`set aside ${event.lot} ${event.amount} from ${service}`)
    }
  for (const event of larder) {
    if (event.type === 'lotTaken')
      inLarder.push(
        `taken ${event.lot} ${event.amount} by ${event.by.service} as ${event.by.batch}`,
      )
    if (event.type === 'lotSetAside')
      inLarder.push(`set aside ${event.lot} ${event.amount} from ${event.food.from.service}`)
  }
  const count = (all: readonly string[], one: string) => all.filter((it) => it === one).length
  for (const one of new Set([...inServices, ...inLarder])) {
    const [here, there] = [count(inServices, one), count(inLarder, one)]
    if (here !== 1 || there !== 1)
      problems.push(`${one}: ${here} in services, ${there} in the larder`)
  }
  return problems
}

/** What came into each lot went out of it or is left, counted over the events by hand. */
const lots = ({ larder }: Lived, state: LarderState): Problems => {
  const problems: Problems = []
  const left = new Map<string, number>()
  const went = new Map<string, number>()
  for (const event of larder) {
    if (!('lot' in event)) continue
    const has = left.get(event.lot)
    if (event.type === 'lotSetAside') {
      if (has !== undefined) problems.push(`${event.lot} was set aside twice`)
      left.set(event.lot, event.amount)
    }
    if (event.type === 'lotTaken' || event.type === 'lotThrownOut' || event.type === 'lotGone') {
      if (has === undefined || event.amount > has)
        problems.push(`${event.amount} out of ${event.lot}, which held ${has ?? 'nothing'}`)
      left.set(event.lot, (has ?? 0) - event.amount)
      went.set(event.lot, event.amount)
    }
    if (event.type === 'lotBack') left.set(event.lot, (has ?? 0) + (went.get(event.lot) ?? 0))
  }
  for (const [lot, amount] of left)
    if ((state.lots[lot]?.amount ?? 0) !== amount)
      problems.push(`${lot} holds ${state.lots[lot]?.amount ?? 0}, and by its events ${amount}`)
  return problems
}

/** Nothing is taken past the date that its lot had then, nor what cooled too late or was read too warm. */
const dates = ({ larder }: Lived): Problems => {
  const problems: Problems = []
  const until = new Map<string, number | null>()
  const bad = new Map<string, string>()
  for (const event of larder) {
    // No day passes in the freezer.
    if (event.type === 'lotSetAside')
      until.set(event.lot, event.food.frozen ? null : (event.food.dateMark?.endsAt ?? null))
    if (event.type === 'lotFrozen') until.set(event.lot, null)
    if (event.type === 'lotThawed') until.set(event.lot, event.dateMark.endsAt)
    if (event.type === 'lotCoolingMissed') bad.set(event.lot, 'not cooled in time')
    if (event.type === 'lotRead' && event.result === 'out') bad.set(event.lot, 'read out')
    if (event.type !== 'lotTaken') continue
    const end = until.get(event.lot) ?? null
    if (end !== null && event.at >= end) problems.push(`${event.lot} was taken past its date`)
    const why = bad.get(event.lot)
    if (why) problems.push(`${event.lot} was taken though ${why}`)
  }
  return problems
}

const columns = (service: string, state: RunningState): Problems =>
  Object.entries(state.accounts).flatMap(([component, account]) => {
    const { loaded, corrected, used, wasted, takenAway, setAside = 0 } = account
    const there = held(state, component)
    const out = there + used + wasted + takenAway + setAside
    return loaded + corrected === out
      ? []
      : [`${service}: ${component} ${loaded} + ${corrected} came in, ${out} is there or went`]
  })

/** Out of a batch that came from a lot no more goes than was taken. */
const batches = (service: string, events: readonly Recorded[]): Problems => {
  const taken = new Map<string, number>()
  const out = new Map<string, number>()
  const goes = (batch: string | undefined, amount: number) => {
    if (batch !== undefined && taken.has(batch)) out.set(batch, (out.get(batch) ?? 0) + amount)
  }
  for (const event of events) {
    if (event.type === 'foodTaken') taken.set(event.batch, event.amount)
    if (event.type === 'panLoaded' || event.type === 'panChanged' || event.type === 'panToppedUp')
      goes(event.batch ?? undefined, event.amount)
    if ((event.type === 'foodEnded' || event.type === 'discardSignedOff') && event.what === 'batch')
      goes(event.id, event.amount)
  }
  return [...out].flatMap(([batch, amount]) =>
    amount <= (taken.get(batch) ?? 0)
      ? []
      : [`${service}: ${amount} came out of ${batch}, of which ${taken.get(batch)} was taken`],
  )
}

const endOf = (food: HeldFood | null): number =>
  Math.min(
    food?.dateMark?.endsAt ?? Number.POSITIVE_INFINITY,
    food?.dayEndsAt ?? Number.POSITIVE_INFINITY,
  )

/** Nothing is made of a component whose pans, as far as they hold any, are all past their date. */
const sale = (service: string, before: ServiceState, event: Recorded): Problems => {
  if (event.type !== 'buildStarted' || !isRunning(before)) return []
  const takes = findBuild(before, event.ticket, event.letter)?.takes ?? {}
  return Object.keys(takes).flatMap((component) => {
    const own = allStock(before).filter(
      ({ id, stock }) => stock.amount > 0 && componentIn(before.station, id) === component,
    )
    return own.length > 0 && own.every(({ stock }) => endOf(stock.food) <= event.at)
      ? [`${service}: a build was begun of ${component} that was past its date`]
      : []
  })
}

export interface Judged {
  readonly problems: readonly string[]
  /** How much there was of what the laws are about, so that nothing holds for want of it. */
  readonly seen: Readonly<Record<string, number>>
}

/** All laws over all that a house's log holds. */
export const judgeHouse = (lived: Lived): Judged => {
  const state = lived.larder.reduce(evolveLarder, EMPTY_LARDER)
  const problems = [...crossings(lived), ...lots(lived, state), ...dates(lived)]
  const of = (type: LarderRecorded['type']) => lived.larder.filter((one) => one.type === type)
  let begun = 0
  let loadedOfLots = 0
  for (const [service, events] of Object.entries(lived.services)) {
    let so: ServiceState = NOT_OPENED
    for (const event of events) {
      problems.push(...sale(service, so, event))
      so = evolve(so, event)
      if (event.type === 'buildStarted') begun += 1
      const isLoad = event.type === 'panLoaded' || event.type === 'panChanged'
      if (isLoad && event.batch != null && isRunning(so))
        loadedOfLots += so.batches[event.batch]?.lot === undefined ? 0 : 1
    }
    if (isRunning(so)) problems.push(...columns(service, so), ...batches(service, events))
  }
  const grams = (type: 'lotSetAside' | 'lotTaken') =>
    Math.round(sum(of(type).map((one) => ('amount' in one ? one.amount : 0))) / 1_000)
  return {
    problems,
    seen: {
      services: Object.keys(lived.services).length,
      'builds begun': begun,
      'lots set aside': of('lotSetAside').length,
      'lots taken of': of('lotTaken').length,
      'loads of lots': loadedOfLots,
      'lots past their date': of('lotPastDate').length,
      'coolings missed': of('lotCoolingMissed').length,
      'grams set aside': grams('lotSetAside'),
      'grams taken': grams('lotTaken'),
    },
  }
}
