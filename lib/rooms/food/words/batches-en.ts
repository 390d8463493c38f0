/** What the lead's screen says about batches and back-up pans. */

import type { CoolBy } from '#lib/rooms/food/facts/cooling/cool-by.ts'
import type { BatchStep } from '#lib/rooms/food/views/batch-steps.ts'
import type { BatchPicture } from '#lib/rooms/food/views/batch-strip.ts'
import { record } from '#lib/rooms/food/words/reading-en.ts'
import type { CoolingStage } from '#lib/safety/cooling.ts'
import { HOUR_MS, type SafetyLimits, type TemperatureLimit } from '#lib/safety/limits.ts'
import type { ReheatingPlace } from '#lib/safety/reheating.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { counted } from '#lib/words/counted-en.ts'

type SayTime = (at: number) => string

const loads = (count: number): string => counted(count, 'load', 'loads')
const portions = (count: number): string => counted(count, 'portion', 'portions')

/** "2 loads, ready about 11:52" */
const sayStage = (one: BatchPicture, time: SayTime): string => {
  switch (one.stage) {
    case 'throw-out':
      return 'throw it out'
    case 'off-sale':
      return 'don’t serve'
    case 'making':
      return one.at === null
        ? `${loads(one.loads)} under way`
        : one.isLate
          ? `is it done? read it`
          : `${loads(one.loads)}, ${time(one.at)}${one.portions === null ? '' : `; ${portions(one.portions)} ready`}`
    case 'cooked':
      return one.coolAt === null
        ? 'cooked: finish it'
        : `cooked: finish it, cool it by ${time(one.coolAt)}`
    case 'to-cool':
      return one.at === null ? 'cool it' : `cool it by ${time(one.at)}`
    case 'cooling':
      return one.at === null ? 'cooling' : `read by ${time(one.at)}`
    case 'to-read':
      return one.at === null ? 'read it' : `read it by ${time(one.at)}`
    case 'cooled':
      return `cooled, ${portions(one.portions ?? 0)}`
    case 'ready':
      return one.at === null
        ? `ready, ${portions(one.portions ?? 0)}`
        : `${portions(one.portions ?? 0)}, throw out ${time(one.at)}`
  }
}

const step: Readonly<Record<BatchStep, string>> = {
  cook: 'Cooked to',
  finish: 'Finished',
  load: 'Load it',
  read: 'Read what is ready',
  cool: 'Cool it',
  reheat: 'Reheat it',
  clock: 'Start a 4-hour clock',
  resolve: 'What may be done',
  'throw-out': 'Throw it out',
}

const reheatPlace: Readonly<Record<ReheatingPlace, string>> = {
  range: 'On the range',
  oven: 'In the oven',
  microwave: 'In the microwave',
  'hot-well': 'In the hot well',
}

/** "Cool it: 135 to 70 °F by 3:40, then 41 °F by 7:40." */
const sayCoolBy = (
  { first, second, since, isStarted }: CoolBy,
  { coolingFrom, coolingFirstTo, coolingTo }: SafetyLimits,
  scale: Scale,
  time: SayTime,
): string => {
  const figure = ({ tenths }: TemperatureLimit) => `${tenths[scale] / 10}`
  const cold = `${figure(coolingTo)} °${scale} by ${time(second)}`
  if (first === null) return `Cool it on: ${cold}`
  const said = `Cool it: ${figure(coolingFrom)} to ${figure(coolingFirstTo)} °${scale} by ${time(first)}, then ${cold}`
  return isStarted ? said : `${said}. Counted from its reading at ${time(since)}`
}

/** Before it is cooked: by how long each stage takes at most. */
const sayCoolAfter = (
  { coolingFrom, coolingFirstTo, coolingFirstWithin, coolingTo, coolingWithin }: SafetyLimits,
  scale: Scale,
): string => {
  const figure = ({ tenths }: TemperatureLimit) => `${tenths[scale] / 10}`
  const hours = ({ withinMs }: { readonly withinMs: number }) => `${withinMs / HOUR_MS} h`
  return `Then cool it: ${figure(coolingFrom)} to ${figure(coolingFirstTo)} °${scale} within ${hours(coolingFirstWithin)}, ${figure(coolingTo)} °${scale} within ${hours(coolingWithin)} in all`
}

/** "41 °F by 1:05: 4 h from when it was made (3-501.14(B)). It isn’t cooled where nobody stays to read it." */
const sayCoolWhyRoom = ({ to, within, by }: CoolingStage, scale: Scale, time: SayTime): string =>
  `${to.tenths[scale] / 10} °${scale} by ${time(by)}: ${within.withinMs / HOUR_MS} h from when it was made (${within.paragraph}). It isn’t cooled where nobody stays to read it.`

export const batchWords = {
  batches: 'Batches',
  behind: 'Back-ups and batches',
  none: 'No batch under way',
  start: 'Start a batch',
  more: (count: number) => `and ${count} more`,
  stage: sayStage,
  loads,
  portions,
  step,
  startedAt: (at: string, count: string) => `started ${at}, ${count}`,
  cookedAt: (read: string, seconds: number | null, at: string) =>
    `${read}${seconds ? ` for ${seconds} s` : ''} at ${at}`,
  finishedAt: (at: string, amount: string, count: number) =>
    `finished ${at}: ${portions(count)} (${amount})`,
  loaded: (count: number) => `${portions(count)} loaded`,
  earlier: 'It was earlier',
  earlierAt: (at: string, minutes: number) =>
    minutes < 60 ? `${at}, ${minutes} min ago` : `${at}, ${(minutes / 60).toFixed(1)} h ago`,
  whenRead: 'It was read',
  whenStarted: 'It was started',
  whenFinished: 'It was finished',
  cookWhy: 'Without a reading in its limit it isn’t loaded.',
  cookSendNot: (read: string | null) => `${record(read)}: go on cooking`,
  cookDone: (name: string, read: string) => `${name}: cooked to ${read}`,
  cookNotDone: (name: string, read: string) => `${name}: ${read}, not cooked yet`,
  cookWhich: (load: number, of: number) => `Load ${load} of ${of}`,
  finishUnread: 'No load was read to its limit yet.',
  finishHow: 'It gave',
  wasMeasured: 'I weighed or counted it',
  finishHowSoFar: 'It gave so far, in all',
  finishLoads: 'Loads finished',
  finishLoad: (count: number, of: number) => (count === of ? `all ${of}` : `${count}`),
  finishSend: (count: number) => `Finished: ${portions(count)}`,
  finishDone: (name: string, count: number) => `${name}: ${portions(count)} ready`,
  coolWhy:
    'The first reading starts the clock of cooling. It isn’t cooled where nobody stays to read it.',
  coolWhyRoom: sayCoolWhyRoom,
  coolPresent: 'Who reads it stays until',
  coolStays: (until: string) => `somebody stays until ${until}`,
  coolAlone: (until: string) => `nobody said to be there after ${until}`,
  coolPresentLack: 'Say until when somebody stays.',
  coolNow: 'Cool it now',
  /** "Cool it: read 135 °F or above", on the button until it is typed. */
  coolSend: (limit: string) => `Cool it: read ${limit}`,
  coolPot: sayCoolBy,
  /** Of `coolPot`, before it is finished. */
  coolNext: (said: string) => `Then ${said.charAt(0).toLowerCase()}${said.slice(1)}`,
  coolAfter: sayCoolAfter,
  coolDone: (name: string, read: string) => `${name}: ${read}, cooling`,
  reheatWhere: 'Where',
  reheatPlace,
  reheatStarted: 'It left the cold',
  reheatDone: (name: string, read: string) => `${name}: reheated to ${read}`,
  reheatNotDone: (name: string, read: string) => `${name}: ${read}, not reheated yet`,
  ready: 'It is ready. Load it, or take it to a back-up pan.',
  /** Of a service that isn't open yet. */
  waits: 'It waits until the service is open. Then it is loaded.',
} as const
