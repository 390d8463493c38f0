/** Shelves of made food in the states that they must look right in. */
import type { RunningState } from '#lib/service/state.ts'
import {
  build,
  milkApart,
  plainer,
  type Step,
  send,
  usualBeans,
  usualChicken,
  WITH,
  without,
  work,
} from '#tests/support/scene-steps.ts'

/** Ten tickets' builds, as different as a shelf is: a need kept apart, a need left out, look-alikes, a name. */
export const manyMade: readonly Step[] = [
  send([usualBeans, usualChicken], { paid: true }),
  send([usualChicken], { name: 'Robin' }),
  send([milkApart]),
  send([plainer, build('harbor-tuna', { wishes: { peppers: WITH } })]),
  send([build('bean-and-pepper', { needs: without('sesame') })], { paid: true }),
  send([build('garden-chicken', { base: 'rice' })], { paid: true }),
  send([usualBeans]),
  ...work(1, 'A', 'finish'),
  ...work(1, 'B', 'finish'),
  ...[2, 3, 5, 6, 7].flatMap((ticket) => work(ticket, 'A', 'finish')),
  ...work(4, 'A', 'finish'),
  ...work(4, 'B', 'finish'),
]

export const THREE = ['A', 'B', 'C'] as const

export const shelfScenes = {
  'three-figures': [
    ...Array.from({ length: 124 }, () => [
      send([usualChicken]),
      ({ nextTicket }: RunningState) =>
        ({ type: 'cancel', ticket: nextTicket - 1, letter: 'A' }) as const,
    ]).flat(),
    send([plainer, usualBeans], { name: 'Robin' }),
    send([milkApart]),
    send([usualChicken], { paid: true }),
    ...work(125, 'A', 'finish'),
    ...work(126, 'A', 'finish'),
    ...work(127, 'A', 'finish'),
  ],
  'more-than-fifteen': [
    ...manyMade,
    send([plainer, usualChicken, usualBeans]),
    send([usualBeans, usualBeans, usualBeans]),
    send([usualBeans, usualChicken, usualBeans]),
    ...[8, 9, 10].flatMap((ticket) => THREE.flatMap((letter) => work(ticket, letter, 'finish'))),
  ],
  unpaid: [
    send([usualChicken, usualBeans]),
    send([usualBeans]),
    send([plainer], { paid: true }),
    ...work(1, 'A', 'handOver'),
    ...work(1, 'B', 'finish'),
    ...work(2, 'A', 'handOver'),
    ...work(3, 'A', 'finish'),
  ],
} satisfies Readonly<Record<string, readonly Step[]>>
