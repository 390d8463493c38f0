/** What stands behind a pan, in words. */

import type { VesselPicture } from '#lib/rooms/food/views/vessels.ts'
import { counted } from '#lib/words/counted-en.ts'

const portions = (count: number): string => counted(count, 'portion', 'portions')

const called: Readonly<Record<VesselPicture['kind'], string>> = {
  lid: 'back-up pan',
  box: 'box',
  pot: 'batch',
  tub: 'cold batch',
}

export const vesselWords = {
  /** One vessel for people who don't see it drawn. */
  vessel: ({ kind, portions: count, stage }: VesselPicture, at: string): string =>
    [
      called[kind],
      ...(count === null ? [] : [portions(count)]),
      ...(stage === 'empty' ? ['empty'] : []),
      ...(at === '' ? [] : [at]),
    ].join(' '),
} as const
