/** What an order lacks, build by build, and what to do about each. */

import type { LackWay } from '#lib/rooms/orders/views/lacks-told.ts'
import type { NotLeft } from '#lib/service/refusal.ts'
import { list } from '#lib/words/counted-en.ts'
import type { SayClock } from '#lib/words/safety-en.ts'
import { savedForName } from '#lib/words/service-en.ts'

const ways: Readonly<Record<LackWay, string>> = {
  'leave-out': 'Leave it out.',
  'other-base': 'Tap another that it comes in.',
  'other-item': 'Choose another item.',
}

const why = (lack: NotLeft, name: (id: string) => string, clock: SayClock): string => {
  switch (lack.code) {
    case 'sold-out':
      return `${name(lack.component)}: not enough left.`
    case 'off-sale':
      return `${name(lack.component)}: don’t serve it until the person in charge decides.`
    case 'clock-unsure':
      return `${name(lack.component)}: don’t serve it until the lead ${lack.helps === 'read' ? 'reads it' : 'confirms the clock'}.`
    case 'past-throw-out-by-then':
      return lacksWords.ends(name(lack.component), clock(lack.at))
    case 'kept':
      return `${name(lack.component)}: the rest is saved for ${list(
        lack.for.map((one) => savedForName(one, name)),
        'and',
      )}.`
    case 'not-selling':
      return `${name(lack.id)}: not selling.`
  }
}

export const lacksWords = {
  /** Why it isn’t sold though there is some. */
  ends: (name: string, clock: string) =>
    `${name}: its time ends at ${clock}, before this would be made.`,
  lack: (lack: NotLeft, way: LackWay, name: (id: string) => string, clock: SayClock) =>
    way === 'leave-out' && lack.code === 'sold-out'
      ? `${why(lack, name, clock)} Leave it out, or take less.`
      : `${why(lack, name, clock)} ${ways[way]}`,
} as const
