/** What the lead's screen says where food comes to its end. */

import type { HotSum } from '#lib/rooms/day/facts/ends/hot-food.ts'
import type { CoolEnd, TooLittle } from '#lib/rooms/day/views/cool-end.ts'
import type { DayReading } from '#lib/rooms/day/views/end-step.ts'
import { tasksEn } from '#lib/rooms/prep/words/tasks-en.ts'
import type { CoolingStage } from '#lib/safety/cooling.ts'
import type { End, HowMuch } from '#lib/safety/ends.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import type { PlaceKind } from '#lib/service/events/food-event.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { sayDate } from '#lib/words/day-en.ts'
import { endWords, sayWhy } from '#lib/words/food/ends-en.ts'

const KIND: Readonly<Record<PlaceKind, string>> = {
  pan: ', the pan on the line',
  backup: ', the back-up pan',
  batch: ', the batch',
}

/** Where else there is some of it. */
const ELSEWHERE: Readonly<Record<PlaceKind, string>> = {
  pan: 'in the pan on the line',
  backup: 'in the back-up',
  batch: 'in a batch',
}

const DONE: Readonly<Record<End, string>> = {
  cold: 'set aside cold',
  dry: 'set aside dry',
  cool: 'cooling',
  freeze: 'frozen',
  crew: 'eaten by the crew',
  'throw-out': 'thrown out',
}

type SayTime = (at: number) => string

const figure = ({ to }: CoolingStage, scale: Scale): string => `${to.tenths[scale] / 10} °${scale}`

/** "70 °F by 3:15, 41 °F by 7:15" */
const sayCoolBy = (stages: readonly CoolingStage[], scale: Scale, time: SayTime): string =>
  stages.map((one) => `${figure(one, scale)} by ${time(one.by)}`).join(', ')

const sayThere = (there: CoolEnd['there'], time: SayTime): string => {
  if (there === undefined) return 'Say who stays.'
  return there === null
    ? 'By the plan nobody is there then: say who stays.'
    : `By the plan somebody is there until ${time(there)}.`
}

/** "Read it now, 135 °F or above, and next in the larder by 3:15. By the plan somebody is there until 3:15." */
const sayCoolNext = (
  { stages: [next], isStarted, isStayed, there }: CoolEnd,
  hot: string,
  time: SayTime,
): string => {
  const by = next ? ` by ${time(next.by)}` : ''
  const read = isStarted
    ? `It is read next in the larder${by}.`
    : `Read it now, ${hot}, and next in the larder${by}.`
  return `${read} ${isStayed ? 'Somebody said to be there.' : sayThere(there, time)}`
}

/** "Only 25 min left of its 2 h to 70 °F (3-501.14(A)(1)), counted since 1:20." */
const sayTooLittle = (
  { stage, usedMs, leftMs, needsMs }: TooLittle,
  { scale, now, time }: { readonly scale: Scale; readonly now: number; readonly time: SayTime },
): string => {
  const hours = (ms: number) => tasksEn.hours(Math.max(1, Math.floor(ms / MINUTE_MS)))
  const to = `${hours(stage.within.withinMs)} to ${figure(stage, scale)} (${stage.within.paragraph})`
  if (needsMs !== null && needsMs > stage.within.withinMs)
    return `Here it took ${hours(needsMs)} when it was measured, and has ${to}: too slow.`
  return `Only ${hours(leftMs)} left of its ${to}, counted since ${time(now - usedMs)}.`
}

const MORE: Readonly<Record<End, string>> = {
  cold: 'to its last day',
  dry: 'no temperature binds it',
  cool: 'read it now, then in the larder',
  freeze: 'its days stop here',
  crew: 'now; local code decides',
  'throw-out': 'with your initials',
}

const HOW: Readonly<Record<HowMuch, string>> = {
  'not-checked': 'Not checked',
  weighed: 'Weigh',
  counted: 'Count',
  eye: 'By eye',
}

const READ: Readonly<Record<DayReading['of'], string>> = {
  cooked: 'cooked',
  cooling: 'cooling',
  reheated: 'reheated',
  held: 'read',
}

export const endFormWords = {
  title: (name: string, what: PlaceKind) => `What becomes of it? ${name}${KIND[what]}`,
  left: (portions: number, amount: string) =>
    `${counted(portions, 'portion', 'portions')} here, ${amount}`,
  elsewhere: (places: readonly { readonly what: PlaceKind; readonly portions: number }[]) =>
    places.map((one) => `${one.portions} ${ELSEWHERE[one.what]}`),
  end: endWords,
  endMore: MORE,
  mark: DONE,
  how: 'How much is it?',
  howMuch: HOW,
  ofRead: READ,
  notOffered: 'Not offered',
  because: (ends: readonly End[], why: Parameters<typeof sayWhy>[0], paragraph: string | null) =>
    `${list(
      ends.map((end) => endWords[end]),
      'or',
    )}: ${sayWhy(why, paragraph)}.`,
  tapEnd: 'Tap what it comes to',
  other: 'Another end',
  tapHow: 'Type the weight',
  tapPresent: 'Say until when somebody is there',
  present: 'Somebody is there to read it until',
  presentNot: 'not said',
  day: 'Its first day: prepared, or the pack opened',
  today: 'Today',
  yesterday: 'Yesterday',
  send: (end: End, amount: string) => `${endWords[end]}, ${amount}`,
  next: (name: string, what: PlaceKind) => `then ${name}${KIND[what]}`,
  last: 'the last one',
  done: (name: string, end: End) => `${name}: ${DONE[end]}.`,
  coolBy: sayCoolBy,
  coolNext: sayCoolNext,
  coolLittle: sayTooLittle,
  doneCool: (name: string, time: string) => `${name}: cooling. Read it in the larder by ${time}.`,
  allHot: 'Throw out all hot',
  allHotMore: 'amounts not checked',
  allHotIs: ({ places: { pan, backup, batch }, portions }: HotSum) =>
    `${list(
      [
        ...(pan > 0 ? [counted(pan, 'pan', 'pans')] : []),
        ...(backup > 0 ? [counted(backup, 'back-up', 'back-ups')] : []),
        ...(batch > 0 ? [counted(batch, 'batch', 'batches')] : []),
      ],
      'and',
    )}, ${counted(portions, 'portion', 'portions')}`,
  allHotOf: (names: readonly string[]) => `${list(names, 'and')}: all of it goes.`,
  allHotSend: 'Throw out all that is hot',
  allHotDone: 'All that was hot is thrown out.',
  later: 'Leave it for now',
  gone: 'There is nothing here to answer any more.',
  start: 'Say what each comes to',
  toAnswer: (count: number) => counted(count, 'pan or batch', 'pans and batches'),
  sums: (elsewhere: readonly string[], loaded: number, used: number, wasted: number) =>
    [
      ...elsewhere,
      `in all loaded ${loaded}`,
      `used ${used}`,
      ...(wasted > 0 ? [`thrown out ${wasted}`] : []),
    ].join(' · '),
  byEye: ({ least, most }: { readonly least: number; readonly most: number }) =>
    `by eye ${least} to ${most}`,
  food: (name: string, amount: string) => `${name} ${amount}`,
  thrownSoFar: 'Thrown out so far:',
  nothingThrown: 'nothing.',
  thrown: (foods: readonly string[], money: string | null, isAll: boolean) =>
    `${list(foods, 'and')}${money === null ? '' : `; ${isAll ? '' : 'at least '}${money}`}.`,
  nextTitle: 'Next:',
  nextIs: (on: string, opens: string) => `${sayDate(on)}, doors ${opens}.`,
  nextNone: 'nothing is planned.',
  larderHas: (foods: readonly string[]) =>
    foods.length === 0
      ? 'The larder has nothing of this line.'
      : `The larder has ${list(foods, 'and')}.`,
  decides: 'Local code and the certified person in charge decide.',
}
