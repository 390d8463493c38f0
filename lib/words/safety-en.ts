/** What screens say about cooking, holding, time, cooling and dates: what was read, and who decides. */

import type { TopUpProblem } from '#lib/needs/top-up.ts'
import type { HeatLack } from '#lib/safety/cooking.ts'
import type { CoolingState, CoolingWay } from '#lib/safety/cooling.ts'
import type { HeldBy, ResolveProblem, WayOut } from '#lib/safety/holding.ts'
import type { HeatLimit, SafetyLimits, TemperatureLimit, Written } from '#lib/safety/limits.ts'
import type { LoadProblem } from '#lib/safety/load.ts'
import type { MomentProblem, ReadingLack, ReadingQuestion } from '#lib/safety/readings.ts'
import type { ReheatProblem } from '#lib/safety/reheating.ts'
import type { Scale, Temperature } from '#lib/safety/temperature.ts'
import type { ClockProblem } from '#lib/safety/time-control.ts'
import { counted } from '#lib/words/counted-en.ts'
import { sayDateOver } from '#lib/words/date-problems-en.ts'

/** How a moment is said; each screen knows its time zone. */
export type SayClock = (at: number) => string

const tenths = (value: number): string =>
  value % 10 === 0 ? String(value / 10) : (value / 10).toFixed(1)

const minutes = (ms: number): string => {
  const whole = Math.max(1, Math.round(ms / 60_000))
  return whole < 120 ? `${whole} min` : `${Math.round(whole / 60)} h`
}

const degrees = ({ tenths: value, scale }: Temperature): string => `${tenths(value)} °${scale}`

/** A limit on the scale of the kitchen: "135 °F or above". */
const sayLimit = ({ bound, tenths: both }: TemperatureLimit, scale: Scale): string =>
  `${tenths(both[scale])} °${scale} or ${bound === 'at-least' ? 'above' : 'below'}`

/** Every combination that is enough: "155 °F for 17 s, or 158 °F". */
const sayHeat = ({ combinations, standSeconds }: HeatLimit, scale: Scale): string => {
  const ways = combinations.map(
    (one) =>
      `${tenths(one.tenths[scale])} °${scale}${one.seconds === 0 ? '' : ` for ${one.seconds} s`}`,
  )
  const stand = standSeconds === 0 ? '' : `, then ${standSeconds / 60} min covered`
  return `${ways.join(', or ')}${stand}`
}

const askInCharge = 'Call the person in charge: local code and they decide.'

const heatLack: Readonly<Record<HeatLack, string>> = {
  'no-reading': 'No reading shows what it was cooked to.',
  'too-low': 'The reading is below its limit. Go on heating and read it again.',
  'not-long-enough': 'It wasn’t held there long enough. Hold it, time it, and read it again.',
  'not-stood': 'It has to stand covered first. Time it.',
}

const lack: Readonly<Record<ReadingLack, string>> = {
  'no-temperature': 'That is no temperature. Read it again.',
  'no-probe': 'Say which probe it was read with.',
  'surface-only': 'Only the surface was read. Stir it, and read the middle of the food.',
  'not-initialled': 'The reading has no initials yet.',
}

const sayQuestion = (question: ReadingQuestion, read: Temperature): string => {
  if (question.code === 'cannot-be')
    return `${degrees(read)} can’t be. Check the probe and read it again.`
  const meant = degrees({ tenths: read.tenths, scale: question.scale })
  return question.must
    ? `${degrees(read)} can’t be here. Did you mean °${question.scale}: ${meant}?`
    : `${degrees(read)} is unusual here. Did you mean °${question.scale}: ${meant}?`
}

const sayMoment = (problem: MomentProblem): string =>
  problem.code === 'clock-back'
    ? `The time lies ${minutes(problem.byMs)} before what is recorded already. Check the clock.`
    : `The time lies ${minutes(problem.byMs)} ahead of now. Check the clock.`

const heldWord: Readonly<Record<HeldBy, string>> = {
  hot: 'hot',
  cold: 'cold',
  time: 'on a clock',
  dry: 'dry',
}

const sayWay = (way: WayOut, clock: SayClock): string => {
  switch (way.way) {
    case 'discard':
      return 'Throw it out'
    case 'reheat':
      return `Reheat it on the range by ${clock(way.by)}`
    case 'time-only':
      return `4-hour clock since ${clock(way.startedAt)}: throw out at ${clock(way.throwOutAt)}`
  }
}

const clockProblem: Readonly<Record<ClockProblem, string>> = {
  'no-procedure': `A 4-hour clock needs a written procedure, prepared before. ${askInCharge}`,
  'in-the-future': 'It can’t have left heat or cold later than now.',
  'no-start-reading': 'Read it as it leaves heat or cold: no reading, no clock.',
  'start-out-of-limits': `It was out of its limits when it left: the reading is recorded, and no clock runs. ${askInCharge}`,
  'rule-not-from-there': 'That time doesn’t go with where it comes from.',
  'held-otherwise': 'That isn’t how it was held. Say whether it left heat or cold.',
  'past-throw-out': 'Its time is over already. Throw it out.',
}

const sayLoad = (problem: LoadProblem, clock: SayClock): string => {
  switch (problem.code) {
    case 'thrown-out':
      return 'This batch was thrown out.'
    case 'off-sale':
      return `Don’t serve this batch. ${askInCharge}`
    case 'not-finished':
      return 'This batch isn’t finished yet.'
    case 'finished-before-started':
      return `It was finished ${minutes(problem.byMs)} before it was started. Check both times.`
    case 'in-the-future':
      return `Its time lies ${minutes(problem.byMs)} ahead of now. Check the clock.`
    case 'to-order-only':
      return 'Cooked like this it is for one order at once, not for a pan.'
    case 'not-cooked':
      return heatLack[problem.why]
    case 'loads-unread':
      return `Each load is read by itself: read ${counted(problem.lacking, 'more load', 'more loads')}, or finish only those that were read.`
    case 'not-cooled':
      return `It isn’t shown to have cooled in time. ${askInCharge}`
    case 'not-reheated':
      return 'Reheat it on the range first: a hot well holds, and doesn’t heat.'
    case 'not-watched':
      return `Nobody read it since ${clock(problem.since)}, so nobody knows how it was held. ${askInCharge}`
    case 'past-throw-out':
      return `Throw it out: its time was over at ${clock(problem.at)}.`
    case 'past-date-mark':
      return sayDateOver(problem.lastDay)
    case 'not-back-to-hot-or-cold':
      return `Its clock runs until ${clock(problem.at)} and it doesn’t go back to heat or cold.`
    case 'needs-clock':
      return 'Start its clock first: a reading and a throw-out time.'
    case 'clock-unsure':
      return 'The clock jumped, and nobody knows how long it has waited. Confirm the clock, or read this batch.'
    case 'no-load-reading':
      return 'Read it before it is loaded: stirred, in the middle.'
    case 'load-out-of-limits':
      return `The reading is out of its limits, so it isn’t loaded. ${askInCharge}`
  }
}

const sayCooling = (
  state: CoolingState,
  limits: SafetyLimits,
  scale: Scale,
  clock: SayClock,
): string => {
  const figure = (limit: TemperatureLimit) => degrees({ tenths: limit.tenths[scale], scale })
  switch (state.state) {
    case 'no-start':
      return state.below
        ? `It was below ${figure(limits.coolingFrom)} before anybody read it. ${askInCharge}`
        : 'Cooling starts with a reading.'
    case 'first-stage':
      return `To ${figure(limits.coolingFirstTo)} by ${clock(state.dueAt)}`
    case 'second-stage':
      return `To ${figure(limits.coolingTo)} by ${clock(state.dueAt)}`
    case 'cooled':
      return `Cooled by ${clock(state.at)}`
    case 'missed':
      return `No reading shows ${figure(state.stage === 1 ? limits.coolingFirstTo : limits.coolingTo)} in time. ${askInCharge}`
    case 'warmed':
      return `It was warmer again at ${clock(state.at)}. ${askInCharge}`
  }
}

const coolingWay: Readonly<Record<CoolingWay, string>> = {
  'take-start-reading': 'Read it now',
  'go-on': 'Go on cooling',
  'reheat-and-cool-again': 'Reheat it on the range now, then cool it once more',
  discard: 'Throw it out',
}

const topUp: Readonly<Record<TopUpProblem, string>> = {
  'not-back-to-hot-or-cold': 'Food on a clock isn’t added to a hot or cold pan.',
  'needs-clock': 'This pan is on a clock: what is added needs its start reading first.',
  'other-holding': 'It isn’t held as this pan is. Change the pan instead.',
  'past-throw-out': 'Its time is over. Throw it out.',
}

const reheat: Readonly<Record<ReheatProblem, string>> = {
  ...heatLack,
  'not-there': 'Not there: reheat it on the range. A hot well holds, and doesn’t heat.',
  'too-late': 'Its time for reheating is over. Throw it out.',
}

const resolve: Readonly<Record<ResolveProblem, string>> = {
  'only-in-charge': 'Only the person in charge resolves this.',
  'way-not-allowed': 'That isn’t among what may be done here.',
}

export const safetyWords = {
  decides: 'The limits are the model code’s. Local code and the certified person in charge decide.',
  askInCharge,
  paragraph: ({ document, paragraph, certainty }: Written) =>
    `${document}, ${paragraph}${certainty === 'memory' ? ' (not read in a copy: check it)' : ''}`,
  degrees,
  limit: sayLimit,
  heat: sayHeat,
  heatLack,
  readHow: 'Middle of the food, stirred',
  lack,
  question: sayQuestion,
  moment: sayMoment,
  held: heldWord,
  readingAsked: (name: string, at: string) => `Read ${name} by ${at}`,
  readingMissed: (name: string, since: string) =>
    `${name}: no reading since ${since}. Don’t serve it until it is read.`,
  outOfLimits: (name: string, read: string) =>
    `${name} is at ${read}. Don’t serve it. ${askInCharge}`,
  way: sayWay,
  resolve,
  clockProblem,
  throwOutAt: (at: string) => `Throw out at ${at}`,
  toThrowOut: (name: string, at: string) =>
    `Throw out ${name}: its time was over at ${at}. Initial it.`,
  thrownOut: (name: string, initials: string) => `${name} thrown out, ${initials}`,
  collectBy: (at: string) => `Collect by ${at}`,
  load: sayLoad,
  cooling: sayCooling,
  coolingWay,
  reheat,
  topUp,
} as const
