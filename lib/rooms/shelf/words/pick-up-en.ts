/** What the pick-up screen says to guests: numbers and where they are, nothing else. */
import type { PickUpPlace } from '#lib/rooms/shelf/views/pick-up-places.ts'

export const pickUpWords = {
  title: 'Pick-up',
  place: {
    waiting: 'Waiting',
    making: 'Being made',
    made: 'Ready',
    called: 'Please come to the counter',
  } satisfies Record<PickUpPlace, string>,
  more: (count: number) => `+ ${count} more`,
  none: {
    waiting: 'none waiting',
    making: 'none',
    made: 'None yet',
  } satisfies Record<Exclude<PickUpPlace, 'called'>, string>,
  closed: 'Closed now',
  notOpen: 'Not open yet',
} as const
