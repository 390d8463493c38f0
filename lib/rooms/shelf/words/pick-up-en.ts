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
  /** On a wrap that isn't on the shelf, to who hears the screen. */
  notYet: ' not there yet',
  none: { made: 'None yet' },
  closed: 'Closed now',
  notOpen: 'Not open yet',
} as const
