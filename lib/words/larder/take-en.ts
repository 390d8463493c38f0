/** What the Larder screen says of taking food into a service. */
import type { NotTheOldest } from '#lib/larder/event.ts'

const WHY: Readonly<Record<NotTheOldest, string>> = {
  'not-found': 'Not found',
  'still-cooling': 'It still cools',
  'for-another-day': 'For another day',
}

export const takeWords = {
  title: 'Take it into a service',
  into: (service: string) => `Take it into ${service}`,
  openOne: 'the open service',
  nowhere: 'No service is open or planned to take it into.',
  amount: 'How much',
  all: (amount: string) => `all, ${amount}`,
  pieces: 'pieces',
  much: (amount: string) => amount,
  noAmount: 'That isn’t an amount',
  whyNotFirst: 'Why not the one that goes first?',
  why: WHY,
  /** Over the younger one of the same food. */
  labelFirst: (lastDay: string | null) =>
    `An older one${lastDay === null ? '' : ` (last day ${lastDay})`} goes first, and waits for its label to be read.`,
  toOlder: 'Go to the older one',
  done: (amount: string, name: string, service: string) =>
    `Taken: ${amount} of ${name}, into ${service}. It is a batch there, with its date and readings.`,
  notTaken: (name: string, why: string) => `${name}: not taken. ${why}`,
  unknown: 'The laptop doesn’t answer. Tap it again: it is taken once.',
} as const
